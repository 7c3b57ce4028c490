package check

import (
	"go/token"
	"go/types"
	"strings"

	"lode/engine/dim"
	"lode/engine/library"
)

// World knows which types are quantities, and makes types for products that have none.
type World struct {
	lib     *library.Library
	byType  map[*types.Named]Quantity
	derived map[product]*types.Named
}

// Quantity is a quantity type as the checker sees it. Base is the type that stands for it
// in running code: nil for a product without a name, which runs as a float64.
type Quantity struct {
	library.Quantity
	Base    *types.Named
	Complex bool // runs as a complex128
}

func newWorld(lib *library.Library) *World {
	w := &World{lib, map[*types.Named]Quantity{}, map[product]*types.Named{}}
	for _, q := range lib.Quantities {
		w.byType[q.Type] = Quantity{q, q.Type, isComplex(q.Type)}
	}
	return w
}

// Quantity returns what is known of a quantity type.
func (w *World) Quantity(t types.Type) (Quantity, bool) {
	n, ok := types.Unalias(t).(*types.Named)
	if !ok {
		return Quantity{}, false
	}
	q, ok := w.byType[n]
	return q, ok
}

// ofVector returns the type of a product of dimension v: the named quantity, or one made
// for it, which stands for the named quantity that differs only by an invisible angle.
func (w *World) ofVector(v dim.Vector) types.Type { return w.typeOf(product{v, false}) }

// product is what a type is made for: a dimension, of real or of complex numbers.
type product struct {
	vector  dim.Vector
	complex bool
}

func (w *World) typeOf(p product) types.Type {
	number := types.Typ[types.Float64]
	if p.complex {
		number = types.Typ[types.Complex128]
	}
	if p.vector.Number() {
		return number
	}
	primary, ok := w.primaryOf(p)
	if ok && primary.Vector == p.vector {
		return primary.Type
	}
	if t, ok := w.derived[p]; ok {
		return t
	}
	q := Quantity{library.Quantity{Name: w.lib.UnitText(p.vector), Vector: p.vector}, primary.Type, p.complex}
	label := q.Name
	if ok {
		label, q.Name = primary.Type.Obj().Name(), primary.Name
	} else if p.complex {
		q.Name = "complex " + q.Name
	}
	q.Type = types.NewNamed(types.NewTypeName(token.NoPos, w.lib.Quantity, label, nil), number, nil)
	w.derived[p], w.byType[q.Type] = q.Type, q
	return q.Type
}

// primary finds the first ordinary quantity of the visible dimension of v.
func (w *World) primary(v dim.Vector) (library.Quantity, bool) {
	return w.primaryOf(product{v, false})
}

func (w *World) primaryOf(p product) (library.Quantity, bool) {
	for _, q := range w.lib.Quantities {
		if q.Form == library.Linear && q.Vector.Same(p.vector) && !q.Vector.Number() && isComplex(q.Type) == p.complex {
			return q, true
		}
	}
	return library.Quantity{}, false
}

// settle returns the type that a variable takes which is defined by a value of type t: the
// named quantity, unless the angle will matter in a power of time.
func (w *World) settle(t types.Type) types.Type {
	q, ok := w.Quantity(t)
	if !ok || q.Base == nil || q.Base == q.Type || q.Vector.PureTime() {
		return t
	}
	return q.Base
}

// describe names a type for a person.
func (w *World) describe(t types.Type) string {
	if q, ok := w.Quantity(t); ok {
		unit := w.lib.UnitText(q.Vector.Visible())
		if q.Vector.Number() {
			unit = w.lib.UnitText(q.Vector)
		}
		if q.Symbol != "" {
			unit = q.Symbol
		}
		if q.Base == nil && q.Complex {
			return "complex " + unit
		}
		if q.Base == nil || q.Name == unit {
			return unit
		}
		return q.Name + " (" + unit + ")"
	}
	if t == nil {
		return "nothing"
	}
	if isNumber(t) {
		return "a plain number"
	}
	if isComplex(t) {
		return "a complex number"
	}
	return strings.TrimPrefix(types.TypeString(t, func(p *types.Package) string {
		if p == nil || p.Path() == NotebookPath {
			return ""
		}
		return p.Name()
	}), "untyped ")
}

func basic(t types.Type) types.BasicInfo {
	if t == nil {
		return 0
	}
	if b, ok := t.Underlying().(*types.Basic); ok {
		return b.Info()
	}
	return 0
}

// isNumber reports whether t is a plain real number type of Go, named or not. Quantities
// have to be told apart before.
func isNumber(t types.Type) bool { return basic(t)&(types.IsInteger|types.IsFloat) != 0 }

func isComplex(t types.Type) bool { return basic(t)&types.IsComplex != 0 }

func isNil(x Typed) bool { return x.Type == types.Typ[types.UntypedNil] }

func isError(t types.Type) bool {
	return t != nil && types.Identical(t, types.Universe.Lookup("error").Type())
}

// number reports whether x is a plain real number and no quantity.
func (w *World) number(t types.Type) bool {
	_, quantity := w.Quantity(t)
	return !quantity && isNumber(t)
}

// vector returns the dimension of a value: that of its quantity, or its factors of π.
func (w *World) vector(x Typed) dim.Vector {
	if q, ok := w.Quantity(x.Type); ok {
		return q.Vector
	}
	return dim.Turn(x.Turns)
}

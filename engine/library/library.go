// Package library is what the engine is handed to work with: the packages that notebooks
// may use, as declarations for the checker and as values for the interpreter, and the
// dimensions of their quantities. The engine itself knows no physics and no units.
package library

import (
	"go/constant"
	"go/types"
	"reflect"

	"lode/engine/dim"
)

// Forms of a quantity that follow rules of their own.
type Form int

// The forms.
const (
	Linear Form = iota // ordinary: add, subtract, scale, multiply
	Point              // a point on a scale: differences of two points, never their sum
	Log                // a level: add, subtract and scale, but no products
)

// Quantity is a named float type with a dimension.
type Quantity struct {
	Type   *types.Named
	Name   string // in a sentence: "resistance"
	Vector dim.Vector
	Form   Form
	Symbol string       // of the unit it is counted in where the dimension does not tell it
	Apart  *types.Named // of points: what the difference of two is
}

// Unit is a constant in scope in every cell.
type Unit struct {
	Symbol string
	Type   types.Type     // a quantity's type; for Celsius-like units nil
	Value  constant.Value // in coherent units
	Call   string         // for a unit of a point scale: the function of the quantity package
	Best   string         // the spelling that it is shown by
	Rank   int            // among the units of its type, the one that hints use first: from one
}

// Library is everything a notebook may use.
type Library struct {
	Packages   map[string]*types.Package // by the name in scope
	Symbols    map[string]map[string]reflect.Value
	Quantities []Quantity // where two share a dimension the first one names products
	Units      map[string]Unit
	Spoken     map[string]string // other spellings of units, and the one in scope
	Alike      map[string]string // other words for members of types, and the names that stand for them

	// Quantity is the package that holds the quantity types, Product the name of its type
	// for products without a name, and Make that of its function that makes one of a value
	// and six exponents in halves.
	Quantity *types.Package
	Product  string
	Make     string
	// Phasor and MakePhasor are the same for complex quantities.
	Phasor     string
	MakePhasor string
	// KindWritten names the quantity package's function that returns the kind of a type's
	// name, or for an empty name of six exponents in halves.
	KindWritten string
	// Reading names the type of a quantity that is shown in a unit of one's choice, and Count
	// the function that makes one of a value, the size of the unit and its symbol.
	Reading string
	Count   string

	// UnitText writes the coherent unit of a dimension, "number" for a plain one.
	UnitText func(dim.Vector) string
	// Watch has long calculations of the packages tell how far they are, from 0 to 1, until forget
	// is called; Stop asks those that are running to end early, with results that are of no use.
	// Both may be nil.
	Watch func(watch func(part float64)) (forget func())
	Stop  func()

	// Quiet tells functions whose result is not shown, such as fmt.Println.
	Quiet func(fullName string) bool

	// Ranges holds, under the full name of a function or method such as "coil.Winding.Hum", what
	// tells where a call left the range that it is valid for: a function of the same arguments,
	// the receiver first, that returns the warnings.
	Ranges map[string]any
	// Tries tells generic functions that call a function of the notebook with arguments of
	// their own choice, which nobody has to be warned of.
	Tries func(fullName string) bool
}

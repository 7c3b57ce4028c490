package library

import (
	"bytes"
	"embed"
	"fmt"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"path"
	"strings"

	"golang.org/x/tools/go/gcexportdata"

	"lode/engine/check"
	"lode/engine/dim"
	"lode/engine/library"
	"lode/stdlib/pace"
	"lode/units"
)

//go:embed declarations/*.export
var declarations embed.FS

// Allows reports whether notebooks may use an exported name of the package.
func (p Package) Allows(name string) bool {
	if p.Only == "" {
		return token.IsExported(name) && name != check.RangesName
	}
	for _, n := range strings.Fields(p.Only) {
		if n == name {
			return true
		}
	}
	return false
}

// Load returns the whole library.
func Load() (*library.Library, error) { return readFor(func(Package) bool { return true }) }

// LoadFor returns the library without the packages that a notebook's text does not name. It
// is enough to check and run a notebook without issues, and is there sooner; hints about
// what else there is need the whole.
func LoadFor(text string) (*library.Library, error) {
	return readFor(func(p Package) bool {
		return p.Path == "lode/units" || !strings.HasPrefix(p.Path, "lode/") || strings.Contains(text, path.Base(p.Path))
	})
}

func readFor(wanted func(Package) bool) (*library.Library, error) {
	packages, err := readDeclarations(wanted)
	if err != nil {
		return nil, err
	}
	lib := &library.Library{
		Packages: packages, Symbols: symbols(), Quantity: packages["units"], Product: "Product", Make: "Make", Phasor: "Phasor", MakePhasor: "MakePhasor", Reading: "Reading", Count: "Count", KindWritten: "KindWritten",
		Ranges: ranges(), Tries: tries, UnitText: unitText, Quiet: func(name string) bool { return strings.HasPrefix(name, "fmt.Print") },
	}
	Files(lib, nowhere)
	lib.Quantities = quantities(lib.Quantity)
	lib.Watch, lib.Stop = pace.Watch, pace.Stop
	lib.Units, lib.Spoken, lib.Alike = unitsInScope(lib.Quantity), spoken(), alike()
	return lib, nil
}

// readDeclarations decodes the embedded declarations of packages. Of those that are not
// wanted there is what others need of them.
func readDeclarations(wanted func(Package) bool) (map[string]*types.Package, error) {
	imports, packages := map[string]*types.Package{}, map[string]*types.Package{}
	for _, entry := range Catalogue() {
		if !wanted(entry) {
			continue
		}
		data, err := declarations.ReadFile("declarations/" + strings.ReplaceAll(entry.Path, "/", "-") + ".export")
		if err != nil {
			return nil, err
		}
		p, err := gcexportdata.Read(bytes.NewReader(data), token.NewFileSet(), imports, entry.Path)
		if err != nil {
			return nil, fmt.Errorf("declarations of %s: %w", entry.Path, err)
		}
		packages[p.Name()] = restricted(p, entry)
	}
	for _, entry := range Catalogue() {
		if p := imports[entry.Path]; p != nil && packages[p.Name()] == nil {
			packages[p.Name()] = p
		}
	}
	return packages, nil
}

// restricted returns p with only the names that notebooks may use.
func restricted(p *types.Package, entry Package) *types.Package {
	if entry.Only == "" {
		return p
	}
	r := types.NewPackage(p.Path(), p.Name())
	for _, name := range p.Scope().Names() {
		if entry.Allows(name) {
			r.Scope().Insert(p.Scope().Lookup(name))
		}
	}
	r.MarkComplete()
	return r
}

func unitText(v dim.Vector) string {
	if text := units.Dimension(v).UnitText(); text != "" {
		return text
	}
	return "number"
}

// reactive lists the kinds that carry one angle less than their SI dimension: the angular
// frequency stands beside them wherever they meet a frequency (X = ωL, B = ωC).
var reactive = map[string]bool{"Inductance": true, "Capacitance": true, "InductancePerLength": true, "CapacitancePerLength": true}

func quantities(p *types.Package) []library.Quantity {
	var all []library.Quantity
	for _, k := range units.Kinds() {
		q := library.Quantity{Type: named(p, k.Type), Name: k.Name, Vector: dim.Vector(k.Dim)}
		switch k.Form {
		case "point":
			q.Form, q.Apart = library.Point, named(p, apart[k.Type])
		case "log":
			q.Form = library.Log
		}
		if q.Vector == (dim.Vector{}) {
			q.Symbol = k.Symbol
		}
		if reactive[k.Type] {
			q.Vector = q.Vector.Over(dim.Turn(1))
		}
		all = append(all, q)
	}
	resistance, _ := units.KindNamed("Resistance")
	return append(all, library.Quantity{Type: p.Scope().Lookup("Impedance").Type().(*types.Named), Name: "impedance", Vector: dim.Vector(resistance.Dim)})
}

// apart tells what the difference of two points on a scale is.
var apart = map[string]string{"Temperature": "TemperatureDifference", "VoltageLevel": "Level"}

func named(p *types.Package, name string) *types.Named {
	return p.Scope().Lookup(name).Type().(*types.Named)
}

// unitsInScope returns the constants that cells may use without a package.
func unitsInScope(p *types.Package) map[string]library.Unit {
	all := map[string]library.Unit{"degC": {Symbol: "degC", Call: "Celsius"}, "dBV": {Symbol: "dBV", Call: "DBV"}, "dBu": {Symbol: "dBu", Call: "DBu"}, "percent": {Symbol: "percent", Type: types.Typ[types.UntypedFloat], Value: exact(0.01)}}
	for i, u := range units.Units() {
		for j, s := range u.Symbols() {
			all[s] = library.Unit{Symbol: s, Type: p.Scope().Lookup(u.Type).Type(), Value: exact(u.Factor), Best: u.Symbols()[0], Rank: rank(u, i, j)}
		}
	}
	return all
}

// rank puts the units of a type in the order in which hints name them: the size that is
// usual at the bench, then the coherent unit, then the rest; the best spelling first.
func rank(u units.Unit, row, spelling int) int {
	rank := 10*(row+1) + spelling
	switch {
	case spelling > 0:
		return rank + 10_000
	case strings.Contains(" mm kΩ nF mT ", " "+u.Symbols()[0]+" "):
		return 1
	case u.Factor == 1:
		return 2
	}
	return rank
}

// exact returns the decimal number that f was written as, so that 10*mm is exactly 0.01.
func exact(f float64) constant.Value {
	if f == math.Trunc(f) && math.Abs(f) < 1e15 {
		return constant.MakeInt64(int64(f))
	}
	return constant.MakeFromLiteral(fmt.Sprint(f), token.FLOAT, 0)
}

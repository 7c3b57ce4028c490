package coil

import (
	"fmt"
	"math"
	"strings"

	"lode/stdlib/coil/internal/kernel"
	"lode/units"
	"lode/units/frame"
)

// Compound is what the space between the wires is filled with.
type Compound struct {
	Name         string        // as in Compounds, or any other
	Permittivity float64       // relative, at audio frequencies, 1 to 12
	Density      units.Density // of the hard compound, up to 5000 kg/m³
}

// compounds are those known by name.
var compounds = [...]struct {
	Compound
	source string
}{
	{Compound{"air", 1, 1.2}, "no potting; density from memory"},
	{Compound{"paraffin wax", 2.3, 900}, "public dielectric table, 2.1 to 2.5; density from memory"},
	{Compound{"beeswax", 2.8, 960}, "public dielectric table, 2.6 to 3; density from memory"},
	{Compound{"wax mix", 2.4, 910}, "four parts paraffin, one part beeswax: common practice, no source"},
	{Compound{"epoxy resin", 3.6, 1150}, "public dielectric table, cast epoxy; density from memory"},
	{Compound{"polyester resin", 3.2, 1200}, "from memory, 2.8 to 4"},
	{Compound{"polyurethane resin", 3.5, 1080}, "from memory, 3 to 4"},
	{Compound{"silicone rubber", 2.9, 1080}, "from memory, 2.6 to 3.3"},
	{Compound{"shellac", 3.3, 1100}, "from memory"},
}

// Compounds lists the potting compounds known by name, with their relative permittivity and density.
//
// Source: relative permittivity: a public dielectric table, frequency not stated, middle of its range; density and what is
// marked so from memory. Each row names its own.
//
// Accuracy: permittivity 10 %, density 5 %; fillers change both, see the maker's data sheet.
//
// Example: coil.Compounds()
func Compounds() frame.Frame {
	var names, sources []string
	var permittivity, density []float64
	for _, c := range compounds {
		names, sources = append(names, c.Name), append(sources, c.source)
		permittivity, density = append(permittivity, c.Permittivity), append(density, float64(c.Density))
	}
	return frame.Frame{Title: "Potting compounds", Columns: []frame.Column{{Name: "Compound", Texts: names},
		frame.Of("Relative permittivity", units.Number(), permittivity), frame.Of("Density", units.Density(0).Kind(), density), {Name: "Source", Texts: sources}}}
}

// String names the compound and its figures.
func (c Compound) String() string {
	if c == (Compound{}) {
		return "no compound"
	}
	return fmt.Sprintf("%s, relative permittivity %s, %v", c.Name, units.Digits(c.Permittivity, 3), c.Density)
}

// CompoundNamed returns a potting compound by its name or the first word of it; "air" is none.
//
// Source: as Compounds.
//
// Example: coil.CompoundNamed("paraffin")
func CompoundNamed(name string) (Compound, error) {
	var names []string
	wanted := strings.ToLower(strings.TrimSpace(name))
	for _, c := range compounds {
		if first, _, _ := strings.Cut(c.Name, " "); wanted != "" && (wanted == c.Name || wanted == first) {
			return c.Compound, nil
		}
		names = append(names, c.Name)
	}
	return Compound{}, refuse("compound: unknown", fmt.Sprintf("%q", name), "one of "+strings.Join(names, ", "), "coil.Compound{Name: ..., Permittivity: ..., Density: ...} takes any other")
}

// Potted returns the winding with the space between its wires filled.
//
// Source: permittivity in series with the enamel films, as in CapacitanceRange. A capacitance that was calibrated grows as the
// estimate does.
//
// Valid: voids filled throughout; relative permittivity 1 to 12, density 0 to 5000 kg/m³.
//
// Accuracy: the change is known better than the capacitance itself, to about a third of it; voids left empty lessen it.
//
// Caution: wax burns and its vapour catches fire: melt it in a water bath below 70 °C, never on an open
// flame, and have a lid at hand. Resins sensitise skin and lungs: gloves, ventilation, the maker's safety
// data sheet.
//
// Example: c.Potted(coil.CompoundNamed("paraffin"))
func (c Winding) Potted(with Compound) (Winding, error) {
	if !(with.Permittivity >= 1 && with.Permittivity <= 12) {
		return Winding{}, refuse("compound Permittivity: out of range", with.Permittivity, "1 to 12", "")
	}
	if !(with.Density >= 0 && with.Density <= 5000) {
		return Winding{}, refuse("compound Density: out of range", with.Density, "0 to 5000 kg/m³", "")
	}
	potted := c
	potted.potted = with
	return potted.provenBy(c), nil
}

// provenBy takes a calibration over from a winding that differs, in proportion to the estimates; a third of the change is doubtful.
func (c Winding) provenBy(measured Winding) Winding {
	if measured.proven > 0 {
		from := measured
		c.proven, from.proven = 0, 0
		c.proven = measured.proven * c.Capacitance() / from.Capacitance()
		c.doubt = measured.doubt*c.proven/measured.proven + units.Capacitance(math.Abs(float64(c.proven-measured.proven)))/3
	}
	return c
}

// filling returns the relative permittivity between the wires.
func (c Winding) filling() float64 { return max(1, c.potted.Permittivity) }

// CompoundMass returns the mass of the potting compound between the wires, nothing without Potted.
//
// Source: geometry: the winding window less the wire and tape.
//
// Accuracy: an upper bound; voids stay empty and surfaces carry more.
func (c Winding) CompoundMass() units.Mass {
	return units.Mass(float64(c.CompoundVolume()) * float64(c.potted.Density))
}

// CompoundVolume returns the space between the wires that a compound can fill.
//
// Source: geometry: the winding window less the wire and tape.
//
// Accuracy: an upper bound; voids stay empty and surfaces carry more.
func (c Winding) CompoundVolume() units.Volume {
	o := c.layout
	window := float64(c.shape.Height) * o.build * (c.shape.corePerimeter() + math.Pi*o.build)
	if c.style.Tape > 0 {
		window *= 1 - (c.style.depth(o.layers-1, 0))/o.build
	}
	wire := math.Pi / 4 * sq(float64(c.wire.Overall())) * float64(c.WireLength())
	return units.Volume(max(0, window-wire))
}

// CastingVolume returns how much compound fills a cover around the winding, the space between the wires included. Core, flanges and
// whatever else stands in the cover are taken as the solid within the outermost turns, and no more.
//
// Source: geometry.
//
// Valid: the winding and its flanges go into the cover.
//
// Accuracy: mix a tenth more (common practice, no source): flanges and leads take room, but meniscus and cup keep some.
//
// Caution: resin heats itself as it sets, a thick casting the more: follow its data sheet, pour in steps, with gloves and ventilation.
//
// Example: c.CastingVolume(coil.Cover{Length: 88*mm, Width: 20*mm, CornerRadius: 9*mm, Height: 14*mm})
func (c Winding) CastingVolume(cover Cover) (units.Volume, error) {
	space, err := c.Inside(cover)
	if err != nil {
		return 0, err
	}
	if min(space.Ends, space.Sides, space.Corners, space.Above, space.Flange) < 0 {
		return 0, refuse("cover: does not go over the winding", space, "a cover with space all around", "")
	}
	inside := kernel.RoundedArea(float64(cover.Length), float64(cover.Width), float64(cover.CornerRadius)) * float64(cover.Height)
	solid := kernel.TurnArea(c.shape.corePerimeter(), c.shape.coreArea(), c.layout.build+float64(c.style.Over)) * float64(c.shape.Height)
	return units.Volume(inside-solid) + c.CompoundVolume(), nil
}

// CastingMass returns the mass of the compound that CastingVolume asks for, of the kind that the winding is Potted with.
//
// Source: geometry, as CastingVolume, and the density of the compound.
//
// Valid: a winding that was Potted and goes into the cover with its flanges.
//
// Accuracy: as CastingVolume; densities 5 %.
//
// Caution: resin heats itself as it sets, a thick casting the more: follow its data sheet, pour in steps, with gloves and ventilation.
//
// Example: c.Potted(coil.CompoundNamed("epoxy")).CastingMass(coil.Cover{Length: 88*mm, Width: 20*mm, CornerRadius: 9*mm, Height: 14*mm})
func (c Winding) CastingMass(cover Cover) (units.Mass, error) {
	if !(c.potted.Density > 0) {
		return 0, refuse("compound: density not known", c.potted, "a winding Potted with a compound of known density", "c.Potted(coil.CompoundNamed(\"epoxy\"))")
	}
	volume, err := c.CastingVolume(cover)
	return units.Mass(float64(volume) * float64(c.potted.Density)), err
}

func sq(x float64) float64 { return x * x }

package coil

import (
	"fmt"

	"lode/stdlib/coil/internal/kernel"
	"lode/stdlib/wire"
	"lode/units"
)

// Lay is the way in which turns are put beside each other.
type Lay int

// The ways to lay turns.
const (
	Scatter     Lay = iota // guided by hand or at a coarse pitch; turns cross at random
	Layered                // turn by turn, each layer on top of the one below
	Orthocyclic            // turn by turn, each layer half a pitch along, in the grooves of the one below
)

var lays = [...]string{"scatter", "layered", "orthocyclic"}

// String names the lay.
func (l Lay) String() string {
	if l < 0 || int(l) >= len(lays) {
		return fmt.Sprintf("lay %d", int(l))
	}
	return lays[l]
}

// Style says how a winding is wound. Its zero value is scatter winding of a single wire
// with the usual packing.
//
// Example: coil.Style{Lay: coil.Layered}
type Style struct {
	Lay     Lay          // Scatter unless said
	Packing float64      // scatter: part of the winding's section that is wire with enamel, 0.3 to 0.9; zero: 0.65
	Pitch   units.Length // layered: from wire to wire, 1 to 100 overall diameters; zero: 1.05, or 1 if orthocyclic
	Strands int          // wires wound side by side as one turn and joined in parallel, up to 100, 2 for bifilar; zero: one

	Under            units.Length // thickness of insulation on the core, under the first layer, up to 5 mm; zero: none
	Over             units.Length // thickness of a wrap around the finished winding, up to 5 mm; zero: none
	Tape             units.Length // layered: thickness of tape between layers, up to 2 mm; zero: none
	TapeEvery        int          // layers under each tape; zero: every layer is taped
	TapePermittivity float64      // relative, 1 to 12; zero: 3, polyester film
}

// String says how a winding is wound.
func (s Style) String() string {
	text := s.Lay.String()
	if s.Strands > 1 {
		text += fmt.Sprintf(", %d strands", s.Strands)
	}
	for _, x := range []struct {
		name  string
		value units.Length
	}{{"tape", s.Tape}, {"insulation on the core", s.Under}, {"wrap", s.Over}} {
		if x.value > 0 {
			text += fmt.Sprintf(", %s of %v", x.name, x.value)
		}
	}
	return text
}

// usualPacking of scatter windings with its range: common practice, no source. Forty-five
// to fifty per cent copper, which winding shops quote for random winding, is 0.56 to 0.62
// with the enamel of fine wire.
const loosePacking, usualPacking, densePacking = 0.55, 0.65, 0.75

// leastPacking is looser than windings come out: common practice, no source.
const leastPacking = 0.3

// usualPitch is the room for one turn of a layered winding in overall diameters: common
// practice, no source.
const usualPitch = 1.05

// mostStrands is more than anyone winds at once.
const mostStrands = 100

func (s Style) check(w wire.Wire) error {
	if s.Strands < 0 || s.Strands > mostStrands {
		return refuse("style Strands: out of range", s.Strands, fmt.Sprintf("1 to %d, or 0 for one", mostStrands), "")
	}
	if err := s.checkLay(w); err != nil {
		return err
	}
	if err := s.checkMeaning(); err != nil {
		return err
	}
	for _, x := range []struct {
		name  string
		value units.Length
	}{{"Under", s.Under}, {"Over", s.Over}} {
		if !(x.value >= 0 && x.value <= mostInsulation) {
			return refuse("style "+x.name+": out of range", x.value, "0 to "+mostInsulation.String(), "")
		}
	}
	return s.checkTape()
}

// mostInsulation is thicker than anyone wraps a core or a winding.
const mostInsulation = 5 * units.Millimetre

// insulated returns the shape with insulation on the core, and with the room that it and a wrap over the winding leave.
func (s Style) insulated(shape Shape) (Shape, error) {
	if s.Under == 0 && s.Over == 0 {
		return shape, nil
	}
	if shape.Room -= s.Under + s.Over; !(shape.Room > 0) {
		return Shape{}, refuse("style Under and Over: no room left for wire", s.Under+s.Over, "less than the room of "+(shape.Room+s.Under+s.Over).String(), "")
	}
	if s.Under > 0 {
		shape.Length, shape.Width, shape.CornerRadius = shape.Length+2*s.Under, shape.Width+2*s.Under, shape.CornerRadius+s.Under
		shape.over += float64(s.Under)
	}
	return shape, nil
}

func (s Style) checkLay(w wire.Wire) error {
	if s.Lay < Scatter || s.Lay > Orthocyclic {
		return refuse("style Lay: unknown", s.Lay, "coil.Scatter, coil.Layered or coil.Orthocyclic", "")
	}
	if !(s.Packing == 0 || s.Packing >= leastPacking && s.Packing <= kernel.HexagonalPacking) {
		return refuse("style Packing: out of range", s.Packing, fmt.Sprintf("%g to 0.9, or 0 for the usual %g", leastPacking, usualPacking), "")
	}
	if !(s.Pitch == 0 || s.Pitch >= w.Overall() && s.Pitch <= 100*w.Overall()) {
		return refuse("style Pitch: out of range", s.Pitch, fmt.Sprintf("the wire's overall diameter of %v to a hundred times that, or 0 for the usual", w.Overall()), "")
	}
	return nil
}

// checkMeaning refuses what would be taken no notice of.
func (s Style) checkMeaning() error {
	switch {
	case s.Lay != Scatter && s.Packing != 0:
		return refuse("style Packing: not for laid turns", s.Packing, "0", "Pitch is from wire to wire")
	case s.Lay == Scatter && s.Pitch != 0:
		return refuse("style Pitch: not for scatter windings", s.Pitch, "0", "coil.Layered has a pitch; the Traverse of coil.Order is the advance per turn")
	}
	return nil
}

func (s Style) checkTape() error {
	if s.Tape == 0 {
		return nil
	}
	if s.Lay == Scatter {
		return refuse("style Tape: no layers to put it between", s.Lay, "coil.Layered or coil.Orthocyclic", "")
	}
	if !(s.Tape > 0 && s.Tape <= 2*units.Millimetre) {
		return refuse("style Tape: out of range", s.Tape, "more than 0 and at most 2 mm", "")
	}
	if s.TapeEvery < 0 || s.TapeEvery > mostTurns {
		return refuse("style TapeEvery: out of range", s.TapeEvery, "1 or more layers, or 0 for every layer", "")
	}
	if p := s.TapePermittivity; !(p == 0 || p >= 1 && p <= 12) {
		return refuse("style TapePermittivity: out of range", p, "1 to 12, or 0 for polyester film", "")
	}
	return nil
}

// taped reports whether there is tape under layer k; the first layer is 0.
func (s Style) taped(k int) bool { return s.Tape > 0 && k > 0 && k%max(1, s.TapeEvery) == 0 }

// strands returns how many wires make a turn.
func (s Style) strands() int { return max(1, s.Strands) }

// packings returns the packing of a scatter winding, dense, usual and loose. One that was
// given is taken to hold within a tenth.
func (s Style) packings() (dense, usual, loose float64) {
	if s.Packing == 0 {
		return densePacking, usualPacking, loosePacking
	}
	return min(1.1*s.Packing, kernel.HexagonalPacking), s.Packing, 0.9 * s.Packing
}

func (s Style) tapePermittivity() float64 {
	if s.TapePermittivity == 0 {
		return 3 // polyester film, 2.8 to 3.3 at audio frequencies; common practice, no source
	}
	return s.TapePermittivity
}

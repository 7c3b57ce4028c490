package coil

import (
	"fmt"
	"math"

	"lode/stdlib/wire"
	"lode/units"
)

// Wind winds turns of a wire on a former. It is scatter-wound unless a style says otherwise.
// A winding that is deeper than the flanges is an error; Fits tells the same without one.
//
// Scatter windings are taken as turns spread evenly over a window that is 65 % wire,
// enamel included; 55 to 75 % is usual. Insulation on the core and a wrap over the wire take room, but the build
// counts the wire alone.
//
// Source: common practice, no source, for the packing of scatter windings; layered ones are geometry.
//
// Valid: convex cores of up to 2 m; 1 to 1000000 turns of an enamelled wire, thin against the window.
//
// Accuracy: the build of a scatter winding is known to about 15 %, which moves its
// resistance by about 2 % and its inductance by about 3 %.
//
// Caution: fine wire cuts and winders pull in hair and sleeves; wear eye protection.
//
// Example: coil.Wind(coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}, wire.AWG(42), 6000)
func Wind(former Former, w wire.Wire, turns int, style ...Style) (Winding, error) {
	c, err := wind(former, w, turns, style)
	if err != nil {
		return Winding{}, err
	}
	return c, c.Fit().err()
}

// Fits tells how turns of a wire would lie on a former and whether there is room for them.
// It fails only when the former, the wire, the number of turns or the style make no sense.
//
// Source: common practice, no source, for the packing of scatter windings; see Wind.
//
// Accuracy: the build of a scatter winding is known to about 15 %; the verdict says when
// that matters.
//
// Example: coil.Fits(coil.Round{CoreDiameter: 12*mm, Height: 8*mm, FlangeDiameter: 24*mm}, wire.AWG(43), 7000)
func Fits(former Former, w wire.Wire, turns int, style ...Style) (Fit, error) {
	c, err := wind(former, w, turns, style)
	if err != nil {
		return Fit{}, err
	}
	return c.Fit(), nil
}

// wind lays a winding without asking whether there is room for it.
func wind(former Former, w wire.Wire, turns int, styles []Style) (Winding, error) {
	if former == nil {
		return Winding{}, refuse("former: none", "nothing", "a bobbin, such as coil.Racetrack{...}", "")
	}
	shape, err := former.Shape()
	if err != nil {
		return Winding{}, err
	}
	if err := usable(w); err != nil {
		return Winding{}, err
	}
	if err := countTurns(turns); err != nil {
		return Winding{}, err
	}
	if len(styles) > 1 {
		return Winding{}, refuse("style: more than one", len(styles), "one style at most", "")
	}
	var style Style
	if len(styles) == 1 {
		style = styles[0]
	}
	if err := style.check(w); err != nil {
		return Winding{}, err
	}
	if shape, err = style.insulated(shape); err != nil {
		return Winding{}, err
	}
	return Winding{former: former, shape: shape, wire: w, turns: turns, style: style, layout: style.lay(shape, float64(w.Overall()), turns), found: &found{}}, nil
}

// On winds the same turns of the same wire in the same style on another former, potted alike. A calibrated capacitance
// changes as the estimate does.
//
// Example: c.On(coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 8*mm, FlangeWidth: 20*mm})
func (c Winding) On(former Former) (Winding, error) {
	return c.likewise(Wind(former, c.wire, c.turns, c.style))
}

// With winds another number of turns in the same way, potted alike. A calibrated capacitance changes as the estimate does.
//
// Example: c.With(6500)
func (c Winding) With(turns int) (Winding, error) {
	return c.likewise(Wind(c.former, c.wire, turns, c.style))
}

// likewise pots a new winding as this one, and takes its calibration over.
func (c Winding) likewise(anew Winding, err error) (Winding, error) {
	if err != nil {
		return Winding{}, err
	}
	anew.potted = c.potted
	return anew.provenBy(c), nil
}

// Fit is how a winding lies on its former.
type Fit struct {
	Turns         int          // of the winding
	Build         LengthRange  // depth of the winding with the range it may come out in
	Room          units.Length // depth from the core to the edge of the flange; infinite without flanges
	TurnsPerLayer int          // side by side; for scatter windings, if its wires were put in order
	Layers        int          // begun; for scatter windings, likewise
	TurnsThatFit  int          // at the usual build; without flanges as many as hold themselves with a wrap of tape
	wire          wire.Wire
	style         Style
	height        units.Length
}

// tall reports whether the wire is thicker than the window is high.
func (f Fit) tall() bool { return f.wire.Overall() > f.height }

// RoomLeft returns how much of the room is left over the winding, negative when there is too
// little.
func (f Fit) RoomLeft() units.Length { return f.Room - f.Build.Value }

// OK reports whether the winding fits at its usual build.
func (f Fit) OK() bool { return !f.tall() && f.RoomLeft() >= 0 }

// Verdict says in words whether the winding fits.
func (f Fit) Verdict() string {
	switch {
	case f.tall():
		return "does not fit: the wire is thicker than the bobbin is high"
	case math.IsInf(float64(f.Room), 1):
		return f.standing()
	case f.Room >= f.Build.High:
		return "fits"
	case f.Room >= f.Build.Value:
		return "tight: fits at the usual packing, not at a loose one"
	case f.Room >= f.Build.Low:
		return "does not fit at the usual packing, may fit at a dense one"
	}
	return "does not fit"
}

// HoldsItself returns how deep a winding stands on this height without flanges: the low end for loose scatter winding, the value
// with a wrap of tape every few layers, the high end for wire that is bonded as it is wound. One layer always stands.
//
// Source: geometry for the high end: every layer has a wire less than the one below, so that the sides slope at 60° and meet at
// √3/2 of the height; common practice, no source, for the others: a tenth and a quarter of the height.
func (f Fit) HoldsItself() LengthRange {
	one := f.wire.Overall()
	return LengthRange{max(f.height/10, one), max(f.height/4, one), max(f.height*units.Length(math.Sqrt(3)/2), one)}
}

// standing is the verdict without flanges.
func (f Fit) standing() string {
	switch r := f.HoldsItself(); {
	case f.Build.Value <= r.Low:
		return "fits, no flange: holds itself"
	case f.Build.Value <= r.Value:
		return "fits, no flange: holds itself with a wrap of tape"
	case f.Build.Value <= r.High:
		return "no flange: needs bonded wire or a form around it while it is wound"
	}
	return "no flange: does not hold itself, deeper than wire stands on this height (" + f.HoldsItself().High.String() + ")"
}

func (f Fit) err() error {
	if f.OK() {
		return nil
	}
	subject := fmt.Sprintf("winding: %d turns of %s do not fit", f.Turns, f.wire.Name())
	if f.Turns == 1 {
		subject = fmt.Sprintf("winding: 1 turn of %s does not fit", f.wire.Name())
	}
	if f.tall() {
		return refuse(subject, fmt.Sprintf("a wire of %v over the enamel", f.wire.Overall()), fmt.Sprintf("at most the height of %v", f.height), "")
	}
	hint := fmt.Sprintf("%d turns of this wire fit; a thinner wire or a higher bobbin takes more", f.TurnsThatFit)
	if f.style.Lay == Scatter && f.Room >= f.Build.Low {
		hint += "; coil.Style{Packing: 0.75} is the densest that scatter winding gives"
	}
	return refuse(subject, fmt.Sprintf("a build of %v", f.Build), fmt.Sprintf("at most the room of %v", f.Room), hint)
}

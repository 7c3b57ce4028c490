package coil

import (
	"fmt"
	"math"

	"lode/stdlib/coil/internal/kernel"
	"lode/stdlib/wire"
	"lode/units"
)

// This file says where calls leave the range they are valid for and still have a result.

// Ranges returns, under the name of a function or method, what tells where a call of it left its range. It takes
// what the call took, the receiver first, and returns the warnings: "what: got X, valid Y".
func Ranges() map[string]any {
	return map[string]any{
		"Compare":                   compareLeft,
		"SelfCapacitance":           selfCapacitanceLeft,
		"Chain.CapacitanceBetween":  Chain.capacitanceBetweenLeft,
		"Chain.Capacitance":         Chain.capacitanceLeft,
		"TurnsFromDepth":            turnsFromDepthLeft,
		"TurnsFromResistance":       turnsFromResistanceLeft,
		"TurnsFromResistanceAt":     turnsFromResistanceAtLeft,
		"Winding.Calibrated":        Winding.calibratedLeft,
		"Winding.Capacitance":       Winding.capacitanceLeft,
		"Winding.CapacitanceRange":  Winding.capacitanceLeft,
		"Winding.CoverCapacitance":  Winding.coverCapacitanceLeft,
		"Winding.Inside":            Winding.insideLeft,
		"Winding.FieldAt":           Winding.fieldAtLeft,
		"Winding.LevelAgainst":      Winding.levelAgainstLeft,
		"Winding.Q":                 Winding.resistanceACLeft,
		"Winding.ResistanceAC":      Winding.resistanceACLeft,
		"Winding.StrandCapacitance": Winding.strandCapacitanceLeft,
	}
}

// turnsFromResistanceLeft wants room for the turns found.
func turnsFromResistanceLeft(former Former, w wire.Wire, measured units.Resistance, style ...Style) []string {
	return turnsFromResistanceAtLeft(former, w, measured, units.Celsius(20), style...)
}

func turnsFromResistanceAtLeft(former Former, w wire.Wire, measured units.Resistance, at units.Temperature, style ...Style) []string {
	n, err := TurnsFromResistanceAt(former, w, measured, at, style...)
	if err != nil {
		return nil
	}
	room, err := TurnsThatFit(former, w, style...)
	if err != nil || n.Low <= room.High {
		return nil
	}
	return left("turns found", n, fmt.Sprintf("up to the %v that the former holds", room))
}

// turnsFromDepthLeft wants turns that the depth can hold: no packing is denser than wires in each other's grooves (A. Thue
// 1910), and hardly a winding is looser than the least that a style takes.
func turnsFromDepthLeft(former Former, w wire.Wire, measured units.Resistance, at units.Temperature, depth units.Length, style ...Style) []string {
	n, err := TurnsFromDepth(former, w, measured, at, depth, style...)
	if err != nil {
		return nil
	}
	c, err := wind(former, w, n.Value, style)
	if err != nil {
		return nil
	}
	packing := float64(c.layout.wires) * math.Pi / 4 * sq(float64(w.Overall())) / float64(c.shape.Height*depth)
	if packing < leastPacking || packing > kernel.HexagonalPacking {
		return left("packing of the turns found", units.Digits(packing, 3), fmt.Sprintf("%g to 0.9; it is another wire, or another depth", leastPacking))
	}
	return nil
}

func left(what string, got any, valid string) []string {
	return []string{fmt.Sprintf("%s: got %v, valid %s", what, got, valid)}
}

// wellBelow is the part of its own resonance that a winding is taken for resistance and inductance up to: there
// its capacitance raises the resistance seen at its ends by 1/(1 - 1/9)², about a quarter.
const wellBelow = 1.0 / 3

func (c Winding) resistanceACLeft(frequency units.Frequency) []string {
	if c.turns == 0 {
		return nil
	}
	var list []string
	own := 1 / (2 * math.Pi * math.Sqrt(float64(c.Inductance())*float64(c.Capacitance())))
	if most := units.Frequency(wellBelow * own); frequency > most {
		list = left("frequency", frequency, fmt.Sprintf("up to %v, a third of the winding's own resonance", most))
	}
	depth := kernel.SkinDepth(float64(c.wire.Metal().Resistivity), float64(frequency))
	if x := float64(c.wire.Bare()) / 2 / depth; x > packed {
		list = append(list, left("wire radius in skin depths", units.Digits(x, 2), fmt.Sprintf("up to %d: beyond, wires screen each other and what is added comes out too large", packed))...)
	}
	if n := min(c.TurnsPerLayer(), c.Layers()); n < thin && c.style.Lay != Scatter && !c.asLines() && c.adds(frequency) > noticeable {
		list = append(list, left("turns in a row or layers", n, fmt.Sprintf("from %d on: of fewer what alternating current adds comes out too large, of one layer twice", thin))...)
	}
	return list
}

// noticeable is how much of the resistance at direct current has to be added before it matters how well that is known.
const noticeable = 0.01

func (c Winding) adds(frequency units.Frequency) float64 {
	r, err := c.ResistanceAC(frequency)
	if err != nil {
		return 0
	}
	return float64(r/c.Resistance()) - 1
}

// capacitanceLeft looks at the field outside, where that is more than a tenth of the capacitance.
func (c Winding) capacitanceLeft() []string {
	if c.turns == 0 || c.proven > 0 {
		return nil
	}
	diameter := c.layout.meanTurn / math.Pi
	outside := kernel.Medhurst(c.height(), diameter)
	if ratio := c.height() / diameter; !(ratio >= 0.1 && ratio <= 50) && outside > 0.1*float64(c.Capacitance()) {
		return left("height over mean diameter", units.Digits(ratio, 2), "0.1 to 50, the ends of the table for the field outside the winding")
	}
	return nil
}

func (c Chain) capacitanceLeft() []string {
	for _, p := range c.coils {
		if list := p.Winding.capacitanceLeft(); list != nil {
			return list
		}
	}
	return nil
}

func (c Winding) coverCapacitanceLeft(cover Cover, _ Lead) []string {
	list := c.insideLeft(cover)
	if space, err := c.Inside(cover); err == nil {
		if widest := max(space.Ends, space.Sides, space.Above); widest > c.shape.Height {
			list = append(list, left("space in the cover", widest, fmt.Sprintf("up to the height of the winding, %v", c.shape.Height))...)
		}
	}
	return list
}

// insideLeft wants a convex core as wide as the rounded rectangle that it counts as, within what is known of the build.
func (c Winding) insideLeft(Cover) []string {
	if len(c.shape.hull) == 0 {
		return nil
	}
	low, high := c.shape.hull[0], c.shape.hull[0]
	for _, p := range c.shape.hull {
		low, high = Point{min(low.X, p.X), min(low.Y, p.Y)}, Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	lifted := 2 * units.Length(c.shape.over)
	length, width := high.X-low.X+lifted, high.Y-low.Y+lifted
	if off := max(length-c.shape.Length, width-c.shape.Width, c.shape.Length-length, c.shape.Width-width) / 2; off > (c.BuildRange().High-c.BuildRange().Low)/2 {
		return left("core", fmt.Sprintf("%v by %v at its widest", length, width),
			fmt.Sprintf("near the rounded rectangle that it counts as, %v by %v", c.shape.Length, c.shape.Width))
	}
	return nil
}

func (c Winding) strandCapacitanceLeft() []string {
	if c.turns == 0 || c.style.strands() > 1 {
		return nil
	}
	return left("strands", 1, "2 or more: coil.Style{Strands: 2}")
}

func (c Winding) levelAgainstLeft(other Winding) []string {
	if c.turns == 0 || other.turns == 0 {
		return left("windings", fmt.Sprintf("%v and %v", c, other), "two windings made by coil.Wind")
	}
	return c.elsewhere(other, "that of the other winding")
}

func compareLeft(windings ...Winding) []string {
	for _, c := range windings {
		if first := windings[0]; c.turns > 0 && first.turns > 0 {
			if list := c.elsewhere(first, "that of the first winding"); list != nil {
				return list
			}
		}
	}
	return nil
}

// elsewhere warns where the turns of two windings are in so different places that their number does not tell the
// level: a bobbin of half as much height again hears some 3 dB less a turn.
func (c Winding) elsewhere(other Winding, whose string) []string {
	a, b := c.shape, other.shape
	switch {
	case !alike(a.Length, b.Length) || !alike(a.Width, b.Width):
		return left("core, for the level", core(c.former), fmt.Sprintf("%s, %s, within a tenth", whose, core(other.former)))
	case !alike(a.Height, b.Height):
		return left("height, for the level", a.Height, fmt.Sprintf("%s, %v, within a tenth", whose, b.Height))
	}
	return nil
}

func alike(a, b units.Length) bool { return math.Abs(float64(a-b)) <= 0.1*float64(b) }

// leastQuality is that of a resonance whose peak lies within 2 % of where the reactances cancel.
const leastQuality = 3

func (c Winding) calibratedLeft(r Resonance) []string {
	henry := float64(r.Inductance)
	if henry == 0 {
		henry = float64(c.Inductance())
	}
	if q := 2 * math.Pi * float64(r.Frequency) * henry / float64(c.Resistance()); q < leastQuality {
		return left("quality of the resonance", units.Digits(q, 2)+" from the wire's resistance alone", "above about 3")
	}
	return nil
}

// selfCapacitanceLeft asks what 1 % on one frequency does to the result.
func selfCapacitanceLeft(one, other Resonance) []string {
	f1, f2 := sq(float64(one.Frequency)), sq(float64(other.Frequency))
	c1, c2 := float64(one.Added), float64(other.Added)
	result := (f2*c2 - f1*c1) / (f1 - f2)
	if moved := 0.02 * f1 * f2 * math.Abs(c2-c1) / sq(f1-f2) / result; moved > 0.5 {
		return left("capacitors", fmt.Sprintf("%v and %v, where 1 %% on a frequency moves the result by %s %%", one.Added, other.Added, units.Digits(100*moved, 2)),
			"so far apart that it moves by half at most")
	}
	return nil
}

// fieldAtLeft wants a wire's thickness between the point and the winding.
func (c Winding) fieldAtLeft(x, y, z units.Length, _ units.Current) []string {
	if away := c.away(kernel.Vector{float64(x), float64(y), float64(z)}); away < float64(c.wire.Overall()) {
		return left("distance from the winding", units.Length(away), fmt.Sprintf("from the thickness of its wire on, %v", c.wire.Overall()))
	}
	return nil
}

// away returns the distance of a point outside the winding window from it.
func (c Winding) away(p kernel.Vector) float64 {
	w := c.window()
	dx, dy := math.Abs(p[0])-w.Along/2, math.Abs(p[1])-w.Across/2
	over := math.Hypot(max(0, dx), max(0, dy)) + min(0, max(dx, dy))
	return math.Hypot(max(0, w.Radius-over, over-w.Radius-w.Build), max(0, math.Abs(p[2])-w.Height/2))
}

// capacitanceBetweenLeft takes a gap as small up to half of the smallest side that faces it.
func (c Chain) capacitanceBetweenLeft(one, other int) []string {
	a, b := c.coils[one-1], c.coils[other-1]
	f, side := a.faces(b), units.Length(0)
	if side = min(a.Winding.shape.Height, b.Winding.shape.Height); !f.beside {
		side = units.Length(min(a.Winding.outline().Width, b.Winding.outline().Width))
	}
	if gap := units.Length(f.gap); gap > side/2 {
		return left("gap between the windings", gap, fmt.Sprintf("up to half of the side that faces it, %v", side/2))
	}
	return nil
}

package wire

import (
	"fmt"
	"math"

	"lode/stdlib/wire/internal/kernel"
	"lode/stdlib/wire/internal/tables"
	"lode/units"
	"lode/units/frame"
)

// Forces is a range of forces.
type Forces struct {
	// Low end of the range.
	Low units.Force
	// High end of the range.
	High units.Force
}

// String writes the range in newtons and in grams of force, as tension gauges show it.
func (f Forces) String() string {
	return fmt.Sprintf("%v to %v (%s to %s gram-force)", f.Low, f.High,
		units.Digits(float64(f.Low/units.GramForce), 3), units.Digits(float64(f.High/units.GramForce), 3))
}

// BreakingLoad returns the pull at which this wire breaks, as a range over soft wire as it is
// sold.
//
// Source: strength times cross-section; of the strength of soft copper wire, 200 to 275 MPa, the high end is what a strand chart
// prints as the largest for soft drawn wire, the low end is recalled from handbooks.
//
// Valid: soft wire at room temperature, straight and without kinks, of a metal whose strength is given.
//
// Accuracy: an estimate; a kink, a nick or a solder joint breaks earlier. What the enamel carries is left out.
//
// Example: wire.AWG(42).BreakingLoad()
func (w Wire) BreakingLoad() Forces {
	area := float64(w.Conductor())
	return Forces{units.Force(area * float64(w.material.Weakest)), units.Force(area * float64(w.material.Strongest))}
}

// WindingTension returns the range of tension to wind with.
//
// Source: chart "Proper Wire Tensioning" for copper magnet wire (citing engineering data of a wire maker): at most 10 000 psi,
// and 50 to 80 % of that. Other metals: in proportion to their strength, common practice, no source.
//
// Valid: steady tension, a metal whose winding stress is given. On a long flat bobbin the tension swings at every turn; the peaks must stay in the range.
//
// Accuracy: a rule of practice; start at the low end with the finest gauges.
//
// Caution: fine wire under tension can cut skin and whip when it breaks; wear eye protection and stop the machine
// before you reach for the wire.
//
// Example: wire.AWG(42).WindingTension()
func (w Wire) WindingTension() Forces {
	most := float64(w.Conductor()) * float64(w.material.WindingStress)
	return Forces{units.Force(0.5 * most), units.Force(0.8 * most)}
}

// Stretch is what a tension does to a wire, between the strongest and the weakest wire that is
// sold as soft.
type Stretch struct {
	// Tension that the wire is pulled with.
	Tension units.Force
	// Elastic elongation, as a ratio: what springs back.
	Elastic float64
	// Least permanent elongation, as a ratio, of the strongest wire.
	Least float64
	// Most permanent elongation, as a ratio, of the weakest wire.
	Most float64
	wire Wire
}

// String says how much the wire is stretched for good.
func (s Stretch) String() string {
	return fmt.Sprintf("%s at %v: %s to %s longer for good, resistance of a piece up by %s to %s",
		s.wire.Name(), s.Tension, percent(s.Least), percent(s.Most), percent(rise(s.Least)), percent(rise(s.Most)))
}

// rise returns the rise of the resistance of a piece that got longer, as a ratio.
func rise(elongation float64) float64 { return elongation * (2 + elongation) }

// Frame lays out the least and the most stretch, a row each.
func (s Stretch) Frame() frame.Frame {
	permanent := []float64{s.Least, s.Most}
	bare, perLength, piece := make([]float64, 2), make([]float64, 2), make([]float64, 2)
	for i, e := range permanent {
		w := s.wire.longer(e)
		bare[i], perLength[i], piece[i] = w.Bare().SI(), w.ResistancePerLength().SI(), rise(e)
	}
	return frame.Frame{Title: s.wire.Name() + " pulled with " + s.Tension.String(), Columns: []frame.Column{
		{Name: "Wire as sold", Texts: []string{"strongest", "weakest"}},
		frame.Of("Elastic elongation", units.Number(), []float64{s.Elastic, s.Elastic}),
		frame.Of("Permanent elongation", units.Number(), permanent),
		frame.Of("Bare after", units.Length(0).Kind(), bare),
		frame.Of("Resistance at 20 °C after", units.ResistancePerLength(0).Kind(), perLength),
		frame.Of("Rise of a piece's resistance", units.Number(), piece),
	}}
}

// Stretch returns what a steady tension does to this wire: how much longer it stays, and with
// it how much thinner it gets and how much its resistance rises.
//
// Source: flow curve of Hollomon (1945) with the tensile strength by Considère (1885); volume stays, so a piece that is
// longer by e has (1+e)² times its resistance. The hardening exponent, 0.2 for copper, has no source.
//
// Valid: from no tension to the lower end of BreakingLoad.
//
// Accuracy: an estimate, hence the range; below the winding tension it says "next to nothing", near the breaking
// load several per cent, and in between it is good to a factor of about three.
//
// Example: wire.AWG(42).Stretch(0.4 * N)
func (w Wire) Stretch(tension units.Force) (Stretch, error) {
	if err := w.check(); err != nil {
		return Stretch{}, err
	}
	m, load := w.material, w.BreakingLoad()
	if m.Hardening == 0 || m.Modulus == 0 || m.Weakest == 0 {
		return Stretch{}, refuse("material: strength not known", m.Name, "Weakest, Strongest, Modulus and Hardening above zero", "")
	}
	if err := within("tension", tension, units.Force(0), load.Low); err != nil {
		if tension > load.Low {
			err = fmt.Errorf("%w\nhint: beyond that the wire may break", err)
		}
		return Stretch{}, err
	}
	stress := float64(tension) / float64(w.Conductor())
	permanent := func(strength units.Pressure) float64 {
		return math.Expm1(kernel.FlowStrain(stress, float64(strength), m.Hardening))
	}
	return Stretch{Tension: tension, Elastic: stress / float64(m.Modulus),
		Least: permanent(m.Strongest), Most: permanent(m.Weakest), wire: w}, nil
}

// Stretched returns this wire after it was pulled longer by a ratio, such as 0.02 for 2 %:
// thinner, with more resistance, its enamel thinned with it.
//
// Source: the volume of a metal does not change when it flows, so every diameter falls by √(1+e) and the
// resistance per length rises by 1+e.
//
// Valid: 0 to 0.3.
//
// Accuracy: the change of resistivity by cold work, below 2 %, is left out.
//
// Example: wire.AWG(42).Stretched(0.02)
func (w Wire) Stretched(elongation float64) (Wire, error) {
	if err := w.check(); err != nil {
		return Wire{}, err
	}
	if !finite(elongation) || elongation < 0 || elongation > 0.3 {
		return Wire{}, refuse("elongation: out of range", units.Digits(elongation, 6), "a ratio from 0 to 0.3, such as 0.02 for 2 %", "")
	}
	if elongation == 0 {
		return w, nil
	}
	return w.longer(elongation), nil
}

// longer leaves the tables: the builds of the gauge are not those of a stretched wire.
func (w Wire) longer(elongation float64) Wire {
	shrink := 1 / math.Sqrt(1+elongation)
	scale := func(l tables.Limits) tables.Limits {
		return tables.Limits{Min: l.Min * shrink, Nominal: l.Nominal * shrink, Max: l.Max * shrink}
	}
	w.bare, w.overall = scale(w.bare), scale(w.overall)
	w.label, w.system = w.label+" stretched by "+percent(elongation), ""
	return w
}

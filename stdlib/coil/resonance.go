package coil

import (
	"math"

	"lode/units"
)

// Resonance is a measured resonance of a winding with a known capacitor added across it.
type Resonance struct {
	Frequency  units.Frequency   // at the peak of the impedance
	Added      units.Capacitance // of capacitor, probe and leads; zero: none
	Inductance units.Inductance  // measured in place; zero: that of the winding without iron
}

func (r Resonance) check() error {
	if !(r.Frequency > 0 && r.Frequency <= 1e9) {
		return refuse("resonance Frequency: out of range", r.Frequency, "more than 0 and at most 1 GHz", "")
	}
	if !(r.Added >= 0 && r.Added <= 1e-3) {
		return refuse("resonance Added: out of range", r.Added, "0 to 1 mF", "write the unit, such as 470*pF")
	}
	if !(r.Inductance >= 0 && r.Inductance <= 1e4) {
		return refuse("resonance Inductance: out of range", r.Inductance, "more than 0, or 0 for the computed one", "")
	}
	return nil
}

// Calibrated returns the winding with the capacitance that a measured resonance tells, in place of the estimate.
//
// Source: Thomson's formula (W. Thomson, 1853): C = 1/((2πf)²·L), less the added capacitance.
//
// Valid: a resonance of a quality above about 3, lower than which the peak is not where the reactances cancel; the inductance measured where the resonance was, with its iron.
//
// Accuracy: that of the inductance and twice that of the frequency; the range shown is for 5 % on both together.
//
// Example: c.Calibrated(coil.Resonance{Frequency: 6.2*kHz, Added: 120*pF, Inductance: 2.4*H})
func (c Winding) Calibrated(r Resonance) (Winding, error) {
	if err := r.check(); err != nil {
		return Winding{}, err
	}
	if c.turns == 0 {
		return Winding{}, refuse("winding: none", c, "a winding made by coil.Wind", "")
	}
	henry := float64(r.Inductance)
	if henry == 0 {
		henry = float64(c.Inductance())
	}
	total := 1 / (sq(2*math.Pi*float64(r.Frequency)) * henry)
	if !(total > float64(r.Added)) {
		return Winding{}, refuse("resonance: no capacitance is left for the winding", units.Capacitance(total), "more than the added "+r.Added.String(), "the inductance with iron is higher than without: measure it and give Inductance")
	}
	c.proven, c.doubt = units.Capacitance(total)-r.Added, units.Capacitance(0.05*total)
	return c, nil
}

// SelfCapacitance returns the capacitance of a winding from two resonances with different capacitors added; the
// inductance need not be known.
//
// Source: G. W. O. Howe's plot of 1/f² against the added capacitance (1912, from memory), here for two points:
// C = (f2²·C2 - f1²·C1)/(f1² - f2²).
//
// Valid: the same inductance at both frequencies; capacitors so far apart that 1 % on one frequency moves the result by
// half at most.
//
// Accuracy: small differences of large numbers: 1 % on a frequency may be 10 % and more on the result.
//
// Example: coil.SelfCapacitance(coil.Resonance{Frequency: 4.216*kHz, Added: 470*pF}, coil.Resonance{Frequency: 3.035*kHz, Added: 1*nF})
func SelfCapacitance(one, other Resonance) (units.Capacitance, error) {
	for _, r := range []Resonance{one, other} {
		if err := r.check(); err != nil {
			return 0, err
		}
	}
	f1, f2 := sq(float64(one.Frequency)), sq(float64(other.Frequency))
	if (f1-f2)*float64(other.Added-one.Added) <= 0 {
		return 0, refuse("resonances: do not fit together", other.Frequency, "a lower frequency with the larger capacitor", "")
	}
	c := units.Capacitance((f2*float64(other.Added) - f1*float64(one.Added)) / (f1 - f2))
	if c < 0 {
		return 0, refuse("resonances: less than no capacitance", c, "frequencies and capacitors of one winding", "check the capacitors; measure the frequencies again")
	}
	return c, nil
}

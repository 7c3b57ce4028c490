package transformer

import (
	"errors"
	"fmt"
	"math"

	"lode/units"
)

// This file holds what a core bears: level at low frequency, and direct current.

// Limits are what a transformer's core bears, as stated with it or worked out from its windings.
type Limits struct {
	Voltage       units.Voltage   // highest voltage across the primary, RMS, in V ...
	Frequency     units.Frequency // ... at this frequency, in Hz
	DirectCurrent units.Current   // highest direct current through the primary in A; 0 for a core that bears none
}

func (l Limits) check() error {
	return first(positive("level limit", l.Voltage), positive("frequency of the level limit", l.Frequency), notNegative("direct current limit", l.DirectCurrent))
}

// At returns the highest primary voltage at another frequency: the core's flux goes with voltage over
// frequency.
//
// Source: Faraday's law.
//
// Valid: where the core limits, at low frequency: up to ten times that of the limit.
func (l Limits) At(f units.Frequency) (units.Voltage, error) {
	err := first(l.check(), positive("frequency", f))
	return units.Voltage(l.Voltage.SI() * f.SI() / l.Frequency.SI()), err
}

// Warnings tells what of a signal the core does not bear: its voltage across the primary (RMS), its lowest
// frequency, and the direct current through the primary. There are none when all is well.
//
// Example: transformer.Limits{Voltage: 0.8*V, Frequency: 30*Hz}.Warnings(200*mV, 35*Hz, 0*mA)
func (l Limits) Warnings(signal units.Voltage, lowest units.Frequency, direct units.Current) ([]string, error) {
	most, err := l.At(lowest)
	if err = first(err, notNegative("signal", signal)); err != nil {
		return nil, err
	}
	if math.IsNaN(direct.SI()) || math.IsInf(direct.SI(), 0) {
		return nil, errors.New("transformer direct current: not a number: want 0 A or what flows")
	}
	var all []string
	if signal > most {
		all = append(all, fmt.Sprintf("level: %v at %v is %v above the %v that the core bears there: the bass distorts", signal, lowest, units.LevelOf(signal.SI()/most.SI()), most))
	}
	if flowing := units.Current(math.Abs(direct.SI())); flowing > l.DirectCurrent {
		all = append(all, fmt.Sprintf("direct current: %v flows, the core bears %v: inductance falls, the low corner rises, and a core may stay magnetised; block it with a capacitor", flowing, l.DirectCurrent))
	}
	return all, nil
}

// Limits returns what the windings bear before the core reaches a flux density, at one frequency. A direct
// current through the primary adds L·I/(N·A); the limit given for it is what half the flux density takes.
//
// Source: Faraday's law, B = V/(√2·π·f·N·A), and B = L·I/(N·A) by the definition of inductance.
//
// Example: transformer.Windings{Primary: 300, Secondary: 3000, InductanceFactor: 2*µH}.Limits(40*mm2, 0.5*T, 30*Hz)
func (w Windings) Limits(area units.Area, most units.FluxDensity, f units.Frequency) (Limits, error) {
	if _, err := w.Model(); err != nil {
		return Limits{}, err
	}
	if err := first(positive("core area", area), positive("flux density", most), positive("frequency", f)); err != nil {
		return Limits{}, err
	}
	linked := most.SI() * w.Primary * area.SI()
	return Limits{Voltage: units.Voltage(linked * math.Sqrt2 * math.Pi * f.SI()), Frequency: f,
		DirectCurrent: units.Current(linked / 2 / (w.InductanceFactor.SI() * w.Primary * w.Primary))}, nil
}

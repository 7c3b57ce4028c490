package circuit

import (
	"fmt"

	"lode/units"
)

// The range that responses were compared in, see Sweep.
const (
	leastHertz units.Frequency  = 1
	mostHertz  units.Frequency  = 1e6
	leastOhm   units.Resistance = 1e-3
	mostOhm    units.Resistance = 1e9
)

// Warnings lists where the response leaves the ranges that it is valid for.
func (r Response) Warnings() []string { return r.left }

// left stops at the first resistor outside: one is enough to be warned.
func (n Network) left(low, high units.Frequency) []string {
	var list []string
	if low < leastHertz || high > mostHertz {
		list = append(list, fmt.Sprintf("frequencies: got %v to %v, valid %v to %v", low, high, leastHertz, mostHertz))
	}
	for _, p := range n.parts {
		if r := units.Resistance(p.value); p.kind == resistor && r > 0 && (r < leastOhm || r > mostOhm) {
			return append(list, fmt.Sprintf("%v: got %v, valid %v to %v", p, r, leastOhm, mostOhm))
		}
	}
	return list
}

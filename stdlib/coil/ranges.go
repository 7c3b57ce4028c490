package coil

import (
	"fmt"

	"lode/units"
)

// LengthRange is an estimated length with the range that it is expected in.
type LengthRange struct {
	Low   units.Length // least expected
	Value units.Length // best estimate
	High  units.Length // most expected
}

// CapacitanceRange is an estimated capacitance with the range that it is expected in.
type CapacitanceRange struct {
	Low   units.Capacitance // least expected
	Value units.Capacitance // best estimate
	High  units.Capacitance // most expected
}

// ResistanceRange is a resistance with the range that it is expected in.
type ResistanceRange struct {
	Low   units.Resistance // least expected
	Value units.Resistance // best estimate
	High  units.Resistance // most expected
}

// plus is the range of two resistances in series.
func (r ResistanceRange) plus(other ResistanceRange) ResistanceRange {
	return ResistanceRange{r.Low + other.Low, r.Value + other.Value, r.High + other.High}
}

// holds reports whether a measured resistance lies within the range.
func (r ResistanceRange) holds(measured units.Resistance) bool {
	return measured >= r.Low && measured <= r.High
}

// TurnsRange is an estimated number of turns with the range that it is expected in.
type TurnsRange struct {
	Low   int // least expected
	Value int // best estimate
	High  int // most expected
}

// String shows the value and its range.
func (r LengthRange) String() string { return ranged(r.Value, r.Low, r.High) }

// String shows the value and its range.
func (r CapacitanceRange) String() string { return ranged(r.Value, r.Low, r.High) }

// String shows the value and its range.
func (r ResistanceRange) String() string { return ranged(r.Value, r.Low, r.High) }

// String shows the value and its range.
func (r TurnsRange) String() string { return ranged(r.Value, r.Low, r.High) }

func ranged(value, low, high any) string {
	if low == high {
		return fmt.Sprint(value)
	}
	return fmt.Sprintf("%v (%v to %v)", value, low, high)
}

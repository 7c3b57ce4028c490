package load

import (
	"fmt"
	"math"

	"lode/units"
)

// This file says where calls leave the range they are valid for and still have a result.

// Ranges returns, under the name of a function or method, what tells where a call of it left its range. It takes
// what the call took, the receiver first, and returns the warnings: "what: got X, valid Y".
func Ranges() map[string]any {
	return map[string]any{
		"Line.Cable":   Line.cableLeft,
		"Line.CableOf": Line.cableOfLeft,
		"Line.Desk":    Line.deskLeft,
	}
}

// A tenth of the wavelength at the top of the audio range, at two thirds of the speed of light: common practice, no source.
const (
	top         units.Frequency = 20e3
	longestLine                 = units.Length(2e8 / 20e3 / 10)
)

func (l Line) cableLeft(length units.Length) []string { return l.cableOfLeft(length, CableCapacitance) }

func (l Line) deskLeft(d Desk) []string { return l.cableLeft(d.Cable) }

// cableOfLeft wants the resistance of a cable below the reactance of its capacitance: there a half before it and a half
// behind it are within 0.3 dB of a line that has both all along.
func (l Line) cableOfLeft(length units.Length, per units.CapacitancePerLength, loop ...units.ResistancePerLength) []string {
	var list []string
	if length > longestLine {
		list = append(list, fmt.Sprintf("cable length: got %v, valid up to %v, a tenth of the wavelength at %v", length, longestLine, top))
	}
	for _, r := range loop {
		resistance, reactance := units.Resistance(length.SI()*r.SI()), units.Resistance(1/(2*math.Pi*top.SI()*length.SI()*per.SI()))
		if resistance > reactance {
			list = append(list, fmt.Sprintf("cable resistance: got %v, valid up to the reactance of its capacitance at %v, %v", resistance, top, reactance))
		}
	}
	return list
}

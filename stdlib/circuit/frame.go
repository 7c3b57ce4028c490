package circuit

import (
	"fmt"
	"math"
	"math/cmplx"
	"strconv"
	"strings"

	"lode/units"
	"lode/units/frame"
)

// This file shows a response: as a line of text and as columns.

// String writes the name, the resonance and the -3 dB point, where there are such.
func (r Response) String() string {
	if r.curve == nil {
		return "empty response"
	}
	var facts []string
	if p, err := r.Peak(); err == nil {
		facts = append(facts, fmt.Sprintf("resonance %v, %v above the plateau", p.Frequency, p.Height))
	}
	if f, err := r.LowCutoff(); err == nil {
		facts = append(facts, fmt.Sprintf("bass -3 dB at %v", f))
	}
	if f, err := r.Cutoff(); err == nil {
		facts = append(facts, fmt.Sprintf("-3 dB at %v", f))
	}
	if len(facts) == 0 {
		facts = []string{fmt.Sprintf("%v to %v", r.Low(), r.High())}
	}
	text := strings.Join(facts, ", ")
	if r.label == "" {
		return text
	}
	return r.label + ": " + text
}

// Frame returns frequency, level and phase in columns, with the resonance and the -3 dB point
// marked on the level. It is for drawing: frequencies are kept to seven digits, levels to a millionth of a
// decibel, phases to a millionth of a radian.
func (r Response) Frame() frame.Frame {
	levels, phases := make([]float64, len(r.points)), make([]float64, len(r.points))
	last := 0.0
	for i, v := range r.values {
		levels[i], phases[i] = math.Round(1e6*(decibels(v)+decibels(complex(r.scale, 0))))/1e6, math.NaN()
		if v == 0 {
			levels[i] = math.NaN()
			continue
		}
		last = nearest(cmplx.Phase(v), last)
		phases[i] = math.Round(1e6*last) / 1e6
	}
	points := make([]float64, len(r.points))
	for i, f := range r.points {
		points[i], _ = strconv.ParseFloat(strconv.FormatFloat(f, 'g', 7, 64), 64)
	}
	f := frame.Frame{Title: r.label, Marks: r.marks(), Columns: []frame.Column{
		frame.Of("Frequency", units.Frequency(0).Kind(), points),
		frame.Of("Level", units.Level(0).Kind(), levels),
		frame.Of("Phase", units.Angle(0).Kind(), phases),
	}}
	if r.ohms {
		f.Columns[1] = frame.Of("Impedance", units.Resistance(0).Kind(), ohms(levels))
		f.Marks = r.summit()
	}
	return f
}

// ohms turns levels relative to 1 Ω into resistances.
func ohms(levels []float64) []float64 {
	list := make([]float64, len(levels))
	for i, l := range levels {
		list[i], _ = strconv.ParseFloat(strconv.FormatFloat(units.Level(l).Ratio(), 'g', 7, 64), 64)
	}
	return list
}

// summit marks the resonance of an impedance.
func (r Response) summit() []frame.Mark {
	p, err := r.Peak()
	if err != nil {
		return nil
	}
	return []frame.Mark{{Name: "resonance", Of: "Impedance", X: p.Frequency.SI(), Y: p.Level.Ratio()}}
}

// nearest returns the angle plus the whole turns that bring it next to the last one.
func nearest(angle, last float64) float64 {
	return angle + 2*math.Pi*math.Round((last-angle)/(2*math.Pi))
}

func (r Response) marks() []frame.Mark {
	var marks []frame.Mark
	if p, err := r.Peak(); err == nil {
		marks = append(marks, frame.Mark{Name: "resonance", Of: "Level", X: p.Frequency.SI(), Y: p.Level.SI()})
	}
	if f, err := r.Cutoff(); err == nil {
		marks = append(marks, frame.Mark{Name: "-3 dB", Of: "Level", X: f.SI(), Y: r.level(f.SI())})
	}
	return marks
}

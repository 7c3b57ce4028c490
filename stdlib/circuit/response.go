package circuit

import (
	"fmt"
	"math"
	"math/cmplx"

	"lode/stdlib/circuit/internal/kernel"
	"lode/units"
)

// This file holds the result of a sweep and the reading of single points from it.

// Response is how an output follows the sources over a range of frequencies. Its points are for
// drawing; resonance, corners and single levels are worked out on the network itself.
type Response struct {
	label  string
	points []float64 // Hz
	values []complex128
	scale  float64
	curve  kernel.Curve
	ohms   bool     // the values are impedances
	left   []string // what of the network and the sweep is outside the range that Sweep is valid for
}

// Sweep returns the voltage of a node against ground from a low to a high frequency.
//
// Source: modified nodal analysis, Ho, Ruehli and Brennan, IEEE Transactions on Circuits and
// Systems 22 (1975); reduction to poles by the matrix inversion lemma, confirmed by elimination.
//
// Valid: linear circuits of lumped parts, 1 Hz to 1 MHz, 1 mΩ to 1 GΩ, coupling factors up to 1.
//
// Accuracy: better than 1e-6 of the response for the part values given.
//
// Example: circuit.New("divider").VoltageSource("V", "in", "ground", 1*V).Resistor("R1", "in", "out", 10*kΩ).Resistor("R2", "out", "ground", 10*kΩ).Sweep("out", 20*Hz, 20*kHz)
func (n Network) Sweep(node string, low, high units.Frequency) (Response, error) {
	return n.SweepBetween(node, Ground, low, high)
}

// SweepBetween returns the voltage of one node against another, as for a balanced output.
func (n Network) SweepBetween(node, against string, low, high units.Frequency) (Response, error) {
	if err := checkRange(low, high); err != nil {
		return Response{}, fmt.Errorf("%s: %w", called("network", n.title), err)
	}
	p, err := n.plan()
	if err != nil {
		return Response{}, err
	}
	output, err := p.output(node, against)
	if err != nil {
		return Response{}, err
	}
	return p.response(output, low, high, 1/n.relative())
}

// response sweeps what the output vector reads.
func (p *plan) response(output []float64, low, high units.Frequency, scale float64) (Response, error) {
	r := Response{label: p.network.title, scale: scale, left: p.network.left(low, high)}
	r.curve = kernel.Transfer(p.system, output, low.Angular().SI(), high.Angular().SI())
	r.points, r.values = sample(r.curve, low.SI(), high.SI())
	for i, v := range r.values {
		if cmplx.IsNaN(v) || cmplx.IsInf(v) {
			return Response{}, p.network.undetermined(units.Frequency(r.points[i]))
		}
	}
	return r, nil
}

func checkRange(low, high units.Frequency) error {
	for _, f := range []units.Frequency{low, high} {
		if err := checkFrequency(f); err != nil {
			return err
		}
	}
	if low >= high {
		return fmt.Errorf("%w: got %v to %v, want the lower frequency first", ErrRange, low, high)
	}
	return nil
}

func checkFrequency(f units.Frequency) error {
	if !(f > 0) || math.IsInf(f.SI(), 1) {
		return fmt.Errorf("%w: got %v, want a frequency above 0 Hz", ErrRange, f)
	}
	return nil
}

// Label returns the name that figures and tables show.
func (r Response) Label() string { return r.label }

// Named returns r under another name.
//
// Example: line.Sweep(20*Hz, 20*kHz).Named("long cable")
func (r Response) Named(label string) Response {
	r.label = label
	return r
}

// Raised returns r with all its levels higher by the given level, such as the level of one coil
// over another. A negative level lowers it.
func (r Response) Raised(by units.Level) Response {
	r.scale *= by.Ratio()
	return r
}

// Low returns the lowest frequency of r.
func (r Response) Low() units.Frequency { return units.Frequency(first(r.points)) }

// High returns the highest frequency of r.
func (r Response) High() units.Frequency {
	if len(r.points) == 0 {
		return 0
	}
	return units.Frequency(r.points[len(r.points)-1])
}

func first(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	return values[0]
}

// LevelAt returns the level at one frequency, worked out there.
func (r Response) LevelAt(f units.Frequency) (units.Level, error) {
	v, err := r.value(f)
	return units.LevelOf(cmplx.Abs(v)), err
}

// PhaseAt returns how far the output leads the source at one frequency, from -180° to 180°.
func (r Response) PhaseAt(f units.Frequency) (units.Angle, error) {
	v, err := r.value(f)
	return units.Angle(cmplx.Phase(v)), err
}

func (r Response) value(f units.Frequency) (complex128, error) {
	if r.curve == nil {
		return 0, r.empty()
	}
	if err := checkFrequency(f); err != nil {
		return 0, fmt.Errorf("%s: %w", called("response", r.label), err)
	}
	v := r.curve.At(f.Angular().SI()) * complex(r.scale, 0)
	if cmplx.IsNaN(v) {
		return 0, fmt.Errorf("%s: %w at %v", called("response", r.label), ErrSingular, f)
	}
	return v, nil
}

func (r Response) empty() error {
	return fmt.Errorf("%s: %w: it holds no curve, want one from a sweep", called("response", r.label), ErrRange)
}

// level returns the level in dB at a frequency in Hz, -∞ where there is no output.
func (r Response) level(hertz float64) float64 { return r.ratio(r.curve.At(2 * math.Pi * hertz)) }

// ratio returns a value of the curve as a level in dB.
func (r Response) ratio(v complex128) float64 { return 20 * math.Log10(cmplx.Abs(v)*r.scale) }

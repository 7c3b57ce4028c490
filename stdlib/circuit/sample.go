package circuit

import (
	"math"

	"lode/stdlib/circuit/internal/kernel"
	"lode/stdlib/pace"
)

// This file chooses the frequencies that a response is drawn with: a logarithmic grid, halved
// where the curve bends, and the neighbourhood of each pole, so that no narrow peak is lost.

const (
	perOctave = 20
	bend      = 0.02 // dB that a curve may leave the straight line between its points
	halvings  = 6
)

// sample returns frequencies in Hz, rising, and the curve there.
func sample(curve kernel.Curve, low, high float64) ([]float64, []complex128) {
	steps := int(math.Ceil(perOctave*math.Log2(high/low))) + 1
	s := &sampler{curve: curve, points: make([]float64, 0, 2*steps), values: make([]complex128, 0, 2*steps)}
	grid := make([]float64, 0, steps+1)
	for i := range steps {
		grid = append(grid, low*math.Exp(math.Log(high/low)*float64(i)/float64(steps)))
	}
	grid = merge(append(grid, high), seeds(curve, low, high))
	left := s.at(grid[0])
	s.add(grid[0], left)
	for i := range pace.Of(len(grid) - 1) {
		right := s.at(grid[i+1])
		s.fill(grid[i], left, grid[i+1], right, halvings)
		s.add(grid[i+1], right)
		left = right
	}
	return s.points, s.values
}

type sampler struct {
	curve  kernel.Curve
	points []float64
	values []complex128
}

func (s *sampler) at(hertz float64) complex128 { return s.curve.At(2 * math.Pi * hertz) }

func (s *sampler) add(hertz float64, v complex128) {
	s.points, s.values = append(s.points, hertz), append(s.values, v)
}

// fill adds points between a and b while the middle is not where a straight line has it.
func (s *sampler) fill(a float64, va complex128, b float64, vb complex128, depth int) {
	if depth == 0 || b/a < 1+1e-7 {
		return
	}
	middle := math.Sqrt(a * b)
	v := s.at(middle)
	if !bends(va, v, vb) {
		return
	}
	s.fill(a, va, middle, v, depth-1)
	s.add(middle, v)
	s.fill(middle, v, b, vb, depth-1)
}

// bent is the bend as a ratio of powers, squared.
var bent = math.Pow(10, bend/5)

// bends reports whether the level in the middle leaves the straight line between those on both sides.
func bends(left, middle, right complex128) bool {
	q := power(middle) * power(middle) / (power(left) * power(right))
	return q > bent || q < 1/bent
}

func power(v complex128) float64 { return real(v)*real(v) + imag(v)*imag(v) }

func decibels(v complex128) float64 { return kernel.Decibels(v) }

// seeds returns the frequencies of the curve's narrow poles within the range, where known.
func seeds(curve kernel.Curve, low, high float64) []float64 {
	poles, ok := curve.(*kernel.Poles)
	if !ok {
		return nil
	}
	var found []float64
	omegas, qualities := poles.Frequencies()
	for i, omega := range omegas {
		if q := qualities[i]; q > 2 {
			for _, f := range []float64{1 - 0.5/q, 1, 1 + 0.5/q} {
				if hertz := f * omega / (2 * math.Pi); hertz > low && hertz < high {
					found = append(found, hertz)
				}
			}
		}
	}
	return found
}

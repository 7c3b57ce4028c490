package kernel

// This file computes noise by the transposed system: one solution gives the transfers from all
// noise sources to the output at once (Rohrer, Nagel, Meyer and Weber, Computationally efficient
// electronic-circuit noise calculations, IEEE J. Solid-State Circuits 6, 1971).

// Boltzmann is the Boltzmann constant in J/K, exact in the SI of 2019.
const Boltzmann = 1.380649e-23

// NoiseInput is a noise source: the unknowns whose equations it enters, the power density it
// has there (V²/Hz for a branch, A²/Hz times Scale² for nodes).
type NoiseInput struct {
	At    Pair
	Power func(omega float64) float64
}

// Noise computes the noise at an output. It is not for concurrent use.
type Noise struct {
	direct    *Direct
	output    []float64
	inputs    []NoiseInput
	y         []complex128
	fan       *Fan // nil where elimination has to do
	h         []complex128
	low, high float64 // where the fan is confirmed
}

// NewNoise prepares for one output, above all between two angular frequencies.
func NewNoise(s *System, output []float64, inputs []NoiseInput, low, high float64) *Noise {
	n := &Noise{direct: NewDirect(s), output: output, inputs: inputs, y: make([]complex128, s.N), h: make([]complex128, len(inputs)), low: low, high: high}
	from := make([]Pair, len(inputs))
	for i, input := range inputs {
		from[i] = input.At
	}
	if fan, ok := Spread(s, n.direct, output, from, low, high); ok {
		n.fan = fan
	}
	return n
}

// At writes the contribution of each input in V²/Hz and returns their sum, or false where the
// network has no solution.
func (n *Noise) At(omega float64, contributions []float64) (float64, bool) {
	if !n.transfers(omega) {
		return 0, false
	}
	total := 0.0
	for i, input := range n.inputs {
		h := n.h[i]
		contributions[i] = (real(h)*real(h) + imag(h)*imag(h)) * input.Power(omega)
		total += contributions[i]
	}
	return total, true
}

// transfers finds the transfer from each input.
func (n *Noise) transfers(omega float64) bool {
	if n.fan != nil && omega >= n.low && omega <= n.high {
		n.fan.At(omega, n.h)
		return true
	}
	if !n.direct.Factor(complex(0, omega)) {
		return false
	}
	n.direct.SolveTransposed(n.output, n.y)
	for i, input := range n.inputs {
		n.h[i] = pick(n.y, input.At.P) - pick(n.y, input.At.Q)
	}
	return true
}

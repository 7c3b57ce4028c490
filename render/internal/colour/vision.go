package colour

// Vision is a way of seeing colours.
type Vision struct {
	Name   string
	matrix [9]float64
}

// Visions are normal vision and the three full dichromacies.
//
// G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for
// Simulation of Color Vision Deficiency", IEEE Transactions on Visualization and Computer
// Graphics 15 (2009): the matrices of severity 1.0, applied in linear light. Given from
// memory; the tests check that greys stay grey.
func Visions() []Vision {
	return []Vision{
		{"normal", [9]float64{1, 0, 0, 0, 1, 0, 0, 0, 1}},
		{"protanopia", [9]float64{0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998}},
		{"deuteranopia", [9]float64{0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881}},
		{"tritanopia", [9]float64{1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900}},
	}
}

// See returns how c looks.
func (v Vision) See(c RGB) RGB {
	m := v.matrix
	clip := func(x float64) float64 { return min(max(x, 0), 1) }
	return RGB{
		clip(m[0]*c.R + m[1]*c.G + m[2]*c.B),
		clip(m[3]*c.R + m[4]*c.G + m[5]*c.B),
		clip(m[6]*c.R + m[7]*c.G + m[8]*c.B),
	}
}

// Apart returns the smallest distance between any two of the colours under any vision.
func Apart(colours []RGB) float64 {
	least := 9.0
	for _, v := range Visions() {
		for i := range colours {
			for j := range i {
				least = min(least, v.See(colours[i]).Lab().Distance(v.See(colours[j]).Lab()))
			}
		}
	}
	return least
}

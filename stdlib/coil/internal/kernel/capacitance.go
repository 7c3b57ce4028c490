package kernel

import "math"

// VacuumPermittivity is ε0 in F/m. Source: CODATA 2022.
const VacuumPermittivity = 8.8541878188e-12

// Two enamelled round wires lie side by side and the field between them is cut into arcs: at
// the angle θ from the line of centres it crosses both enamel films, ln(Do/Dc)/εr in units
// of the overall diameter Do, and the space between, 1 - cos θ plus the gap. Each film is taken as if
// the field crossed it radially, each arc in the space as if it were straight.
//
//	C = (ε0·εf/2) ∫ dθ / (a - cos θ),   a = 1 + εf·ln(Do/Dc)/εr + gap/Do
//
// over the angles that belong to this neighbour: ±30° when each wire has six neighbours,
// ±45° when it has four.
//
// Source: A. Massarini, M. K. Kazimierczuk, Self-capacitance of inductors, IEEE
// Transactions on Power Electronics 12 (1997) 671-676, eq. 15 for a gap of 0, air (εf = 1)
// and ±30°. The gap, the filled space and other angles follow from the same integral.

// Cell is a pair of neighbouring wires in a winding.
type Cell struct {
	Bare, Overall float64 // diameters
	Enamel        float64 // relative permittivity of the enamel
	Filling       float64 // relative permittivity between the wires, 1 for air
	Gap           float64 // between the enamel surfaces
}

// PerLength returns the capacitance of the pair per length of wire over the angles from
// -half to +half.
func (c Cell) PerLength(half float64) float64 {
	a1 := c.Filling*math.Log(c.Overall/c.Bare)/c.Enamel + c.Gap/c.Overall // a - 1
	root := math.Sqrt(a1 * (a1 + 2))
	return VacuumPermittivity * c.Filling * 2 / root * math.Atan((a1+2)/root*math.Tan(half/2))
}

// GrooveToLayer returns the capacitance per length of wire between a wire and the next
// layer, in whose grooves it lies: two neighbours of ±30°.
func (c Cell) GrooveToLayer() float64 { return 2 * c.PerLength(math.Pi/6) }

// RowToLayer returns the same for wires on top of each other: one neighbour of ±45°.
func (c Cell) RowToLayer() float64 { return c.PerLength(math.Pi / 4) }

// A winding's layers are charged against each other. With the voltage V spread evenly along
// the wire and layers wound back and forth, a wire j places from the turn-around faces a
// wire 2j turns away, at the voltage 2jV/N. Their energies add up to that of one capacitor
// between the ends of the winding.

// Source: the integral of the energies; E. C. Snelling, Soft Ferrites, 1969, on the self-capacitance of
// multi-layer windings (from memory).

// BackAndForth returns that capacitor for the gap between a layer and the next one of n
// turns, of a winding of N turns, each turn of which has the capacitance c against the
// next layer.
func BackAndForth(n, N, c float64) float64 { return c * 4 * n * n * n / (3 * N * N) }

// Medhurst returns the capacitance of a single-layer coil of diameter D and winding length l,
// one end earthed: D·H(l/D), H interpolated in the printed table along straight lines over log(l/D).
//
// Source: R. G. Medhurst, H.F. resistance and self-capacitance of single-layer solenoids,
// Wireless Engineer 24 (1947) 35-43, 80-92. Outside 0.1 ≤ l/D ≤ 50 the end values hold.
func Medhurst(l, D float64) float64 {
	x, last := l/D, len(medhurst)-1
	if x <= medhurst[0].ratio {
		return D * medhurst[0].h * 1e-10
	}
	for i := 1; i <= last; i++ {
		a, b := medhurst[i-1], medhurst[i]
		if x <= b.ratio {
			return D * 1e-10 * (a.h + (b.h-a.h)*math.Log(x/a.ratio)/math.Log(b.ratio/a.ratio))
		}
	}
	return D * medhurst[last].h * 1e-10
}

// medhurst is Medhurst's table of H in pF per cm of diameter.
var medhurst = [...]struct{ ratio, h float64 }{
	{0.1, 0.96}, {0.15, 0.79}, {0.2, 0.7}, {0.25, 0.64}, {0.3, 0.6}, {0.35, 0.57}, {0.4, 0.54}, {0.45, 0.52},
	{0.5, 0.5}, {0.6, 0.48}, {0.7, 0.47}, {0.8, 0.46}, {0.9, 0.46}, {1, 0.46}, {1.5, 0.47}, {2, 0.5},
	{2.5, 0.56}, {3, 0.61}, {3.5, 0.67}, {4, 0.72}, {4.5, 0.77}, {5, 0.81}, {6, 0.92}, {7, 1.01},
	{8, 1.12}, {9, 1.22}, {10, 1.32}, {15, 1.86}, {20, 2.36}, {25, 2.9}, {30, 3.4}, {40, 4.6},
	{50, 5.8},
}

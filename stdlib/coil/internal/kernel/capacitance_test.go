package kernel

import (
	"math"
	"math/rand"
	"strings"
	"testing"
)

// kochCell returns the capacitance per length of half the facing surfaces of two wires on
// top of each other, with a filling of thickness gap and permittivity filling between
// them. Field lines are taken parallel to the line of centres.
//
// Source: J. Koch, Berechnung der Kapazität von Spulen, Valvo Berichte 14 (1968) 99-119, in
// the form of J. Biela, J. W. Kolar, Using transformer parasitics for resonant converters,
// IEEE Transactions on Industry Applications 44 (2008) 223-233, eqs. 3-7.
func kochCell(bare, overall, enamel, gap, filling float64) float64 {
	r0, delta := bare/2, (overall-bare)/2
	alpha := 1 - delta/(enamel*r0)
	beta := (1 + gap/(2*filling*r0)) / alpha
	q := beta*beta - 1
	angle := math.Atan(math.Sqrt((beta + 1) / (beta - 1)))
	V := beta/math.Sqrt(q)*angle - math.Pi/4
	Z := beta*(beta*beta-2)/math.Pow(q, 1.5)*angle - beta/(2*q) - math.Pi/4
	return VacuumPermittivity / alpha * (V + Z/(8*enamel)*(2*delta/r0)*(2*delta/r0)/alpha)
}

// layerFactor is the equivalent capacitor of p equal layers wound back and forth, counted in capacitances between
// neighbouring layers: BackAndForth over p-1 gaps.
func layerFactor(p float64) float64 { return (p - 1) * BackAndForth(1, p, 1) }

func TestTurnToTurnReference(t *testing.T) {
	checked := 0
	for _, row := range reference(t, "capacitance_turn_to_turn.csv") {
		bare, overall := number(t, row, "conductor_diameter_m"), number(t, row, "overall_diameter_m")
		enamel, want := number(t, row, "relative_permittivity"), number(t, row, "capacitance_F_per_m")
		switch row["model"] {
		case "turn_to_turn_cell":
			close(t, "Cell", Cell{bare, overall, enamel, 1, 0}.PerLength(math.Pi/6), want, 1e-6)
		case "koch_cell_touching_turns":
			close(t, "kochCell", kochCell(bare, overall, enamel, 0, 1), want, 1e-6)
		default:
			continue
		}
		checked++
	}
	if checked < 12 {
		t.Errorf("checked %d rows, want all twelve", checked)
	}
}

func TestCellAgainstQuadrature(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	for range 100 {
		overall := 20e-6 + 300e-6*random.Float64()
		c := Cell{overall * (0.8 + 0.15*random.Float64()), overall, 2.5 + 2*random.Float64(), 1 + 3*random.Float64(), overall * random.Float64()}
		half := math.Pi / 4 * random.Float64()
		films := math.Log(c.Overall/c.Bare) * c.Overall / c.Enamel
		perAngle := func(θ float64) float64 {
			path := films + (c.Overall*(1-math.Cos(θ))+c.Gap)/c.Filling
			return VacuumPermittivity * c.Overall / 2 / path
		}
		close(t, "PerLength", c.PerLength(half), simpson(perAngle, -half, half, 4000), 1e-8)
	}
}

// The two published models assume other field lines; over a neighbour's whole right angle they
// agree about enamelled wires that touch.
func TestCellAgainstKoch(t *testing.T) {
	for _, ratio := range []float64{0.85, 0.9, 0.95} {
		for _, enamel := range []float64{2.5, 3.5, 4.5} {
			close(t, "RowToLayer", Cell{ratio, 1, enamel, 1, 0}.RowToLayer(), 2*kochCell(ratio, 1, enamel, 0, 1), 0.1)
		}
	}
}

// Energies of single turns: turn i and the turn in the next layer that it faces are charged to
// their difference of voltage.
func TestLayersAgainstSingleTurns(t *testing.T) {
	const n, c, p = 120, 1e-12, 9
	back := 0.0
	for layer := 0; layer < p-1; layer++ {
		for j := 0; j < n; j++ {
			apart := float64(2*j + 1) // turn n-1-j of this layer faces turn j of the next
			back += c * apart * apart / (n * p * n * p)
		}
	}
	close(t, "BackAndForth", (p-1)*BackAndForth(n, n*p, c), back, 1e-4)
	close(t, "layerFactor", layerFactor(p)*n*c, back, 1e-4)
}

func TestLayerFactorsReference(t *testing.T) {
	checked := 0
	for _, row := range reference(t, "capacitance_layers.csv") {
		count, ok := strings.CutSuffix(strings.TrimPrefix(row["id"], "layers_"), "_back_and_forth")
		if !ok || count == row["id"] {
			continue
		}
		p := number(t, map[string]string{"p": count}, "p")
		close(t, row["id"], layerFactor(p), number(t, row, "value"), 1e-6)
		checked++
	}
	if checked < 7 {
		t.Errorf("checked %d rows, want all seven", checked)
	}
}

func TestMedhurstReference(t *testing.T) {
	rows := reference(t, "capacitance_medhurst_table.csv")
	if len(rows) != len(medhurst) {
		t.Errorf("table has %d rows, want the %d printed ones", len(medhurst), len(rows))
	}
	for _, row := range rows {
		ratio := number(t, row, "length_over_diameter")
		close(t, "Medhurst", Medhurst(ratio, 1), 1e-12*number(t, row, "H_pF_per_m"), 1e-12)
	}
}

// The regression was read in a public design note: H = 0.1126·l/D + 0.08 + 0.27·√(D/l) pF/cm.
func TestMedhurstAgainstRegression(t *testing.T) {
	for x := 0.1; x < 50; x *= 1.07 {
		close(t, "Medhurst", Medhurst(x*0.03, 0.03), 0.03*1e-10*(0.1126*x+0.08+0.27/math.Sqrt(x)), 0.09)
	}
	close(t, "below the table", Medhurst(1e-4, 1), 0.96e-10, 1e-12)
	close(t, "above the table", Medhurst(1e4, 1), 5.8e-10, 1e-12)
}

func BenchmarkCell(b *testing.B) {
	for b.Loop() {
		Cell{63.5e-6, 71e-6, 3.5, 1, 1e-6}.GrooveToLayer()
	}
}

package coil

import (
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"lode/units"
)

// told wants one warning with the given words, or none for no words.
func told(t *testing.T, what string, list []string, words ...string) {
	t.Helper()
	if len(words) == 0 {
		if len(list) != 0 {
			t.Errorf("%s: got %q, want no warning", what, list)
		}
		return
	}
	if len(list) != 1 {
		t.Errorf("%s: got %q, want one warning", what, list)
		return
	}
	for _, w := range append(words, ": got ", ", valid ") {
		if !strings.Contains(list[0], w) {
			t.Errorf("%s: got %q, want %q in it", what, list[0], w)
		}
	}
}

// A coil of inductance and resistance with its capacitance across shows a quarter more resistance at a third of its
// resonance, from the impedance of the three.
func TestResistanceACLeft(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	own := units.Frequency(1 / (2 * math.Pi * math.Sqrt(float64(c.Inductance())*float64(c.Capacitance()))))
	told(t, "below a third", c.resistanceACLeft(0.33*own))
	told(t, "above a third", c.resistanceACLeft(0.34*own), "frequency", (0.34 * own).String())
	told(t, "no winding", Winding{}.resistanceACLeft(own))
	L, C, R, w := 2.0, 100e-12, 1.0, 1/(3*math.Sqrt(2.0*100e-12))
	z := 1 / (1/complex(R, w*L) + complex(0, w*C))
	if up := real(z) / R; math.Abs(up-1.2656) > 1e-3 || cmplx.Abs(z) < w*L {
		t.Errorf("at a third of the resonance: got %g times the resistance, want 81/64", up)
	}
}

// Long straight wires side by side are the witness: the mean of the square of the field that each has from the others,
// against that of the same current spread evenly, which the losses are made of.
func TestFewTurnsLeft(t *testing.T) {
	for _, c := range []struct {
		rows, layers int
		low, high    float64
	}{{20, 1, 0.45, 0.55}, {5, 5, 0.95, 1}, {10, 10, 0.98, 1}} {
		if share := square(c.rows, c.layers, 1) / square(c.rows, c.layers, 6); share < c.low || share > c.high {
			t.Errorf("%d layers of %d wires: %g of what an even window has, want %g to %g", c.layers, c.rows, share, c.low, c.high)
		}
	}
	thick, round := gauge(t, 22), Round{CoreDiameter: 20 * mm, Height: 25 * mm}
	single := func(strands int) Winding {
		return wound(t, round, thick, 30/strands, Style{Lay: Layered, Strands: strands})
	}
	told(t, "one layer", single(1).resistanceACLeft(20e3))
	told(t, "one layer of pairs", single(2).resistanceACLeft(20e3), "turns in a row or layers: got 1, valid from 5 on")
	told(t, "one layer of pairs, far below", single(2).resistanceACLeft(100))
	told(t, "six layers", wound(t, round, thick, 180, Style{Lay: Layered}).resistanceACLeft(20e3))
}

// Dowell's foils, which screen each other, against round wires in the field that they would have without each other's screening: the
// check of the kernel.
func TestThickWireLeft(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 50 * mm, Height: 25 * mm}, gauge(t, 18), 18, Style{Lay: Layered})
	told(t, "one skin depth", c.resistanceACLeft(16.4e3))
	told(t, "more", c.resistanceACLeft(37.4e3), "wire radius in skin depths: got 1.5, valid up to 1")
}

// square is the mean of B² over currents in a grid, each split into parts by parts.
func square(rows, layers, parts int) float64 {
	var at []complex128
	for i := range rows * parts {
		for j := range layers * parts {
			at = append(at, complex(float64(i), float64(j))/complex(float64(parts), 0))
		}
	}
	sum := 0.0
	for i, p := range at {
		b := 0i
		for j, q := range at {
			if i != j {
				b += 1 / (p - q)
			}
		}
		sum += real(b*cmplx.Conj(b)) / math.Pow(float64(parts), 4)
	}
	return sum / float64(len(at))
}

// The ends of the table that R. G. Medhurst printed are 0.1 and 50.
func TestCapacitanceLeft(t *testing.T) {
	flat := Round{CoreDiameter: 80 * mm, Height: 4 * mm}
	single := wound(t, flat, gauge(t, 30), 12, Style{Lay: Layered})
	told(t, "a flat single layer", single.capacitanceLeft(), "height over mean diameter", "0.1 to 50")
	told(t, "an ordinary winding", wound(t, steel, gauge(t, 42), 6000).capacitanceLeft())
	told(t, "a long single layer", wound(t, Round{CoreDiameter: 2 * mm, Height: 150 * mm}, gauge(t, 30), 500, Style{Lay: Layered}).capacitanceLeft(), "got 64")
	measured, err := single.Calibrated(Resonance{Frequency: 5 * units.Megahertz})
	if err != nil {
		t.Fatal(err)
	}
	told(t, "measured", measured.capacitanceLeft())
}

func TestInsideLeft(t *testing.T) {
	wedge := Convex{Corners: []Point{{-30 * mm, -10 * mm}, {30 * mm, -2 * mm}, {30 * mm, 2 * mm}, {-30 * mm, 10 * mm}}, Height: 9 * mm}
	c := wound(t, wedge, gauge(t, 42), 3000)
	told(t, "a wedge", c.insideLeft(Cover{}), "core: got 60 mm by 20 mm at its widest")
	told(t, "a wedge, its capacitance", c.coverCapacitanceLeft(Cover{}, Start), "core")
	told(t, "a wide cover", wound(t, steel, gauge(t, 42), 3000).coverCapacitanceLeft(Cover{Length: 110 * mm, Width: 24 * mm, Height: 14 * mm}, Finish), "space in the cover: got 17", "10 mm")
	told(t, "a usual cover", wound(t, steel, gauge(t, 42), 3000).coverCapacitanceLeft(Cover{Length: 90 * mm, Width: 24 * mm, Height: 14 * mm}, Finish))
	told(t, "an oval", wound(t, Convex{Corners: ring(48, 0.012, 0.01), Height: 9 * mm}, gauge(t, 42), 3000).insideLeft(Cover{}))
	told(t, "a racetrack", wound(t, steel, gauge(t, 42), 3000).insideLeft(Cover{}))
}

func TestStrandCapacitanceLeft(t *testing.T) {
	told(t, "one strand", wound(t, steel, gauge(t, 42), 3000).strandCapacitanceLeft(), "strands: got 1, valid 2 or more")
	told(t, "two", wound(t, steel, gauge(t, 42), 3000, Style{Strands: 2}).strandCapacitanceLeft())
}

// Half as much height again costs about 3 dB without iron: by reciprocity, from the slope of the field
// of each winding at a string 4 mm over its upper flange.
func TestLevelLeft(t *testing.T) {
	at := func(height units.Length) Winding {
		return wound(t, Racetrack{CoreLength: 74 * mm, CoreWidth: 7 * mm, Height: height}, gauge(t, 42), 1000)
	}
	hears := func(c Winding) float64 {
		z := c.shape.Height/2 + 4*mm
		near, err1 := c.FieldAt(0, 0, z-0.5*mm, 1)
		far, err2 := c.FieldAt(0, 0, z+0.5*mm, 1)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		return float64(near.Z - far.Z)
	}
	low, near, high := at(9*mm), at(9.5*mm), at(13.5*mm)
	if loss := 20 * math.Log10(hears(low)/hears(high)); loss < 2 || loss > 4 {
		t.Errorf("half as much height again: %g dB less, want about 3", loss)
	}
	told(t, "nearly as high", near.levelAgainstLeft(low))
	told(t, "higher", high.levelAgainstLeft(low), "height, for the level: got 13.5 mm", "9 mm")
	told(t, "another core", wound(t, Round{CoreDiameter: 12 * mm, Height: 9 * mm}, gauge(t, 42), 1000).levelAgainstLeft(low), "core, for the level")
	told(t, "nothing", low.levelAgainstLeft(Winding{}), "windings")
	told(t, "a table", compareLeft(low, near, high), "height, for the level")
	told(t, "a table of one bobbin", compareLeft(low, near, Winding{}))
	told(t, "an empty table", compareLeft())
}

func TestCalibratedLeft(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 6000)
	told(t, "sharp", c.calibratedLeft(Resonance{Frequency: 6e3}))
	low := units.Frequency(2 * float64(c.Resistance()) / (2 * math.Pi * 0.5)) // quality 2 with half a henry
	told(t, "blunt", c.calibratedLeft(Resonance{Frequency: low, Inductance: 0.5}), "quality of the resonance: got 2 ")
}

// The same step on one frequency, taken: far apart it moves the result by less than half.
func TestSelfCapacitanceLeft(t *testing.T) {
	at := func(added units.Capacitance) Resonance { // of 2 H with 100 pF
		return Resonance{Frequency: units.Frequency(1 / (2 * math.Pi * math.Sqrt(2*(100e-12+float64(added))))), Added: added}
	}
	for second, wide := range map[units.Capacitance]bool{210e-12: false, 230e-12: false, 300e-12: true, 2e-9: true, 10e-9: true} {
		one, other := at(200e-12), at(second)
		moved := one
		moved.Frequency *= 1.0001
		got, err := SelfCapacitance(moved, other)
		if err != nil {
			t.Fatal(err)
		}
		change := 100 * math.Abs(float64(got)/100e-12-1) // for 1 %
		if list := selfCapacitanceLeft(one, other); (len(list) == 0) != wide || wide != (change < 0.5) {
			t.Errorf("%v beside 200 pF: 1 %% moves the result by %.0f %%: got %q", second, 100*change, list)
		}
	}
}

func TestFieldAtLeft(t *testing.T) {
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 10 * mm}, gauge(t, 36), 600)
	edge := 6*mm + c.Build()
	told(t, "beside", c.fieldAtLeft(edge+0.1*mm, 0, 0, 1), "distance from the winding: got 0.1 mm")
	told(t, "over", c.fieldAtLeft(edge-0.1*mm, 0, 5.1*mm, 1), "got 0.1 mm")
	told(t, "off the edge", c.fieldAtLeft(edge+0.1*mm, 0, 5.09*mm, 1), "got 0.13")
	told(t, "in the core", c.fieldAtLeft(5.95*mm, 0, 0, 1), "got 0.05 mm")
	told(t, "further on", c.fieldAtLeft(edge+0.2*mm, 0, 0, 1))
	told(t, "in the middle", c.fieldAtLeft(0, 0, 0, 1))
}

func TestCapacitanceBetweenLeft(t *testing.T) {
	c := wound(t, Racetrack{CoreLength: 60 * mm, CoreWidth: 6 * mm, Height: 8 * mm}, gauge(t, 42), 3000)
	beside := func(gap units.Length) []string {
		pair, err := InSeries(Placed{Winding: c}, Placed{Winding: c, Y: 6*mm + 2*c.Build() + gap})
		if err != nil {
			t.Fatal(err)
		}
		return pair.capacitanceBetweenLeft(1, 2)
	}
	told(t, "near", beside(3*mm))
	told(t, "far", beside(5*mm), "gap between the windings: got 5 mm", "4 mm")
	stack, err := InSeries(Placed{Winding: c}, Placed{Winding: c, Z: 30 * mm})
	if err != nil {
		t.Fatal(err)
	}
	told(t, "stacked", stack.capacitanceBetweenLeft(1, 2), "got 22 mm")
}

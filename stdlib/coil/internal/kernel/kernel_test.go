package kernel

import (
	"encoding/csv"
	"math"
	"math/rand"
	"os"
	"strconv"
	"testing"

	"lode/stdlib/internal/evidence"
)

// This file is the map of mutual checks. Each formula has two witnesses that do not share its code:
//
//	RoundedPerimeter, RoundedArea   many straight segments; circle and square by hand
//	TurnLength, TurnArea            the offset of a polygon with many corners
//	MeanTurnLength, MeanTurnArea    Simpson's rule; one thin shell
//	EqualRectangle                  put back into perimeter and area; itself; a circle
//	ScatterBuild, Rows, GrooveRise  their inverses; wires counted one by one; the densest lattice
//	Cell                            printed reference values; Simpson's rule; Koch's cell within 10 %;
//	                                finite volumes between endless layers within 12 %, 20 % with a gap
//	BackAndForth                    energies of single turns; printed layer factors; finite volumes over whole
//	                                cross-sections within 15 % in grooves, 30 % low on top of each other
//	Medhurst                        the printed table; a published regression
//	scatter factor                  heaps of wires let fall one by one; those by finite volumes within 20 %
//	Walls, Edge                     closed forms; finite differences; whole covers and pairs by boundary elements
//	                                in three dimensions (package coil)
//	hum, losses, own field          see their own files

// book keeps what tests compared; DEVELOPERS.md tells how to print it.
var book evidence.Book

func close(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	book.Close(t, name, got, want, tolerance)
}

// simpson integrates f over [a, b] in 2n steps.
func simpson(f func(float64) float64, a, b float64, n int) float64 {
	h, sum := (b-a)/float64(2*n), f(a)+f(b)
	for i := 1; i < 2*n; i++ {
		sum += f(a+float64(i)*h) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// polygon walks the outline of a rounded rectangle at depth t in short straight steps.
func polygon(length, width, r, t float64, corner int) (perimeter, area float64) {
	var x, y []float64
	for q, centre := range [][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		for i := 0; i <= corner; i++ {
			angle := math.Pi/2*float64(q) + math.Pi/2*float64(i)/float64(corner)
			x = append(x, centre[0]*(length/2-r)+(r+t)*math.Cos(angle))
			y = append(y, centre[1]*(width/2-r)+(r+t)*math.Sin(angle))
		}
	}
	for i := range x {
		j := (i + 1) % len(x)
		perimeter += math.Hypot(x[j]-x[i], y[j]-y[i])
		area += (x[i]*y[j] - x[j]*y[i]) / 2
	}
	return perimeter, area
}

func randomCore(random *rand.Rand) (length, width, r float64) {
	length, width = 0.01+0.09*random.Float64(), 0.003+0.03*random.Float64()
	return length, width, math.Min(length, width) / 2 * random.Float64()
}

func TestOutlineAgainstPolygon(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 200 {
		length, width, r := randomCore(random)
		depth := 0.008 * random.Float64()
		P, S := RoundedPerimeter(length, width, r), RoundedArea(length, width, r)
		perimeter, area := polygon(length, width, r, depth, 400)
		close(t, "TurnLength", TurnLength(P, depth), perimeter, 5e-6)
		close(t, "TurnArea", TurnArea(P, S, depth), area, 5e-6)
	}
	close(t, "circle", RoundedPerimeter(2, 2, 1), 2*math.Pi, 1e-15)
	close(t, "circle", RoundedArea(2, 2, 1), math.Pi, 1e-15)
	close(t, "square", RoundedPerimeter(1, 1, 0), 4, 1e-15)
}

func TestMeansAgainstQuadrature(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	for range 200 {
		length, width, r := randomCore(random)
		P, S := RoundedPerimeter(length, width, r), RoundedArea(length, width, r)
		t1 := 0.004 * random.Float64()
		t2 := t1 + 0.006*random.Float64() + 1e-6
		mean := func(f func(float64) float64) float64 { return simpson(f, t1, t2, 8) / (t2 - t1) }
		close(t, "MeanTurnLength", MeanTurnLength(P, t1, t2), mean(func(x float64) float64 { return TurnLength(P, x) }), 1e-12)
		close(t, "MeanTurnArea", MeanTurnArea(P, S, t1, t2), mean(func(x float64) float64 { return TurnArea(P, S, x) }), 1e-12)
		close(t, "thin shell", MeanTurnArea(P, S, t1, t1), TurnArea(P, S, t1), 1e-14)
	}
}

func TestEqualRectangle(t *testing.T) {
	random := rand.New(rand.NewSource(9))
	for range 300 {
		P := 0.02 + 0.2*random.Float64()
		S := P * P / (4 * math.Pi) * (0.2 + 0.8*random.Float64())
		l, w, r := EqualRectangle(P, S, P*(0.25+0.2*random.Float64()))
		close(t, "perimeter", RoundedPerimeter(l, w, r), P, 1e-12)
		close(t, "area", RoundedArea(l, w, r), S, 1e-9)
		if !(r >= 0 && w > 0 && r <= math.Min(l, w)/2*(1+1e-9)) {
			t.Errorf("P %g, S %g: got %g by %g, r %g", P, S, l, w, r)
		}
		length, width, r := randomCore(random)
		l, w, got := EqualRectangle(RoundedPerimeter(length, width, r), RoundedArea(length, width, r), length)
		close(t, "itself, length", l, length, 1e-9)
		close(t, "itself, width", w, width, 1e-6)
		close(t, "itself, radius", got+length, r+length, 1e-6)
	}
	l, w, r := EqualRectangle(2*math.Pi, math.Pi, 2)
	close(t, "circle", l+w+r, 5, 1e-6)
}

func TestPacking(t *testing.T) {
	build := ScatterBuild(6000, 71e-6, 0.01, 0.65)
	close(t, "wire in the window", 6000*math.Pi/4*71e-6*71e-6/(build*0.01), 0.65, 1e-12)
	close(t, "ScatterTurns", ScatterTurns(build, 71e-6, 0.01, 0.65), 6000, 1e-12)
	close(t, "rows touch", RowSpacing(1, SquarePacking), 1, 1e-15)
	close(t, "grooves touch", GrooveSpacing(1, HexagonalPacking), 1, 1e-15)
	close(t, "HexagonalPacking", HexagonalPacking, math.Pi/math.Sqrt(12), 1e-15)
	close(t, "GrooveRise", GrooveRise(1, 1), math.Sqrt(0.75), 1e-15)
	for _, c := range []struct {
		h, pitch float64
		want     int
	}{{0.99, 1, 0}, {1, 1, 1}, {1.99, 1, 1}, {2, 1, 2}, {2.04, 1.05, 1}, {2.05, 1.05, 2}, {10, 1, 10}, {0.7, 0.1, 0}} {
		if got := Rows(c.h, 1, c.pitch); got != c.want {
			t.Errorf("Rows(%g, 1, %g) = %d, want %d", c.h, c.pitch, got, c.want)
		}
	}
}

// reference reads a table of published values with its sources.
func reference(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s: %d lines, %v", name, len(lines), err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, head := range lines[0] {
			row[head] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t *testing.T, row map[string]string, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		t.Fatalf("%s: %v", column, err)
	}
	return x
}

package template

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"lode/units"
	"lode/units/frame"
)

// rows makes a plate: name, work, x, y, diameter in millimetres.
func rows(list ...[5]any) frame.Frame {
	var columns [5][]any
	for _, r := range list {
		for i, cell := range r {
			if mm, ok := cell.(float64); ok {
				cell = units.Length(mm / 1000)
			}
			columns[i] = append(columns[i], cell)
		}
	}
	f := frame.Frame{Title: "Plate"}
	for i, name := range []string{"Part", "Work", "x", "y", "Diameter"} {
		f.Columns = append(f.Columns, frame.Collect(name, columns[i]))
	}
	return f
}

// console is a racetrack flange for eight strings with two mounting holes.
func console(length float64) frame.Frame {
	half := length/2 - 11
	list := [][5]any{{"flange", "cut", -half, 0.0, 22.0}, {"flange", "cut", half, 0.0, 22.0}, {"core", "mark", -half, 0.0, 9.0}, {"core", "mark", half, 0.0, 9.0}}
	for i := range 8 {
		list = append(list, [5]any{fmt.Sprintf("pole %d", i+1), "drill", 9 * (float64(i) - 3.5), 0.0, 5.0})
	}
	return rows(append(list, [5]any{"mount", "drill", -half - 6, 0.0, 3.0}, [5]any{"mount", "drill", half + 6, 0.0, 3.0})...)
}

func draw(t *testing.T, f frame.Frame) Template {
	t.Helper()
	d, err := Draw(f)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// svg is what of the file a reader of its own looks at.
type svg struct {
	Width   string `xml:"width,attr"`
	Height  string `xml:"height,attr"`
	ViewBox string `xml:"viewBox,attr"`
	Circles []struct {
		X float64 `xml:"cx,attr"`
		Y float64 `xml:"cy,attr"`
		R float64 `xml:"r,attr"`
	} `xml:"circle"`
	Paths []struct {
		Part string `xml:"data-part,attr"`
		D    string `xml:"d,attr"`
	} `xml:"path"`
}

func parsed(t *testing.T, d Template) svg {
	t.Helper()
	var s svg
	if err := xml.Unmarshal([]byte(d.File()), &s); err != nil {
		t.Fatal(err)
	}
	return s
}

// One unit of the drawing is one millimetre: that is what width, height and viewBox say together.
func TestUnitsAreMillimetres(t *testing.T) {
	for _, length := range []float64{60, 94, 150, 160} {
		s := parsed(t, draw(t, console(length)))
		var x, y, w, h float64
		if _, err := fmt.Sscan(s.ViewBox, &x, &y, &w, &h); err != nil {
			t.Fatal(err)
		}
		if s.Width != fmt.Sprintf("%gmm", w) || s.Height != fmt.Sprintf("%gmm", h) || x != 0 || y != 0 {
			t.Errorf("%g mm: %s by %s for the view %s", length, s.Width, s.Height, s.ViewBox)
		}
		// ISO 216: A4 is 297 mm high and 210 mm wide; Letter (ANSI Y14.1) is 279.4 mm by 215.9 mm. The page leaves 18 mm and 17 mm.
		if w > 210-2*17 || h > 279.4-2*18 {
			t.Errorf("%g mm: the sheet of %g mm by %g mm is larger than paper", length, w, h)
		}
	}
}

// Holes stand where the list says, turned or not: all distances between them are those of the plate.
func TestHolesKeepTheirDistances(t *testing.T) {
	for _, length := range []float64{94, 158} {
		f := console(length)
		d := draw(t, f)
		if turned := d.sheet.turned; turned != (length > 156) {
			t.Errorf("%g mm long: turned %v", length, turned)
		}
		s := parsed(t, d)
		if len(s.Circles) != 10 {
			t.Fatalf("%d holes, want 10", len(s.Circles))
		}
		x, y, diameter := f.Columns[2].Values[4:], f.Columns[3].Values[4:], f.Columns[4].Values[4:]
		for i, a := range s.Circles {
			for j, b := range s.Circles {
				got, want := math.Hypot(a.X-b.X, a.Y-b.Y), 1000*math.Hypot(x[i]-x[j], y[i]-y[j])
				if math.Abs(got-want) > 2e-4 {
					t.Errorf("holes %d and %d: %g mm apart, want %g", i+1, j+1, got, want)
				}
			}
			if math.Abs(2*a.R-1000*diameter[i]) > 1e-4 {
				t.Errorf("hole %d: diameter %g mm", i+1, 2*a.R)
			}
		}
	}
}

// A turned plate is turned, not mirrored: a hole to the right of the way from one to another stays there.
func TestTurnedNotMirrored(t *testing.T) {
	for _, length := range []float64{60.0, 160.0} {
		f := rows([5]any{"plate", "cut", -length / 2, 0.0, 30.0}, [5]any{"plate", "cut", length / 2, 0.0, 30.0},
			[5]any{"a", "drill", 0.0, 0.0, 3.0}, [5]any{"b", "drill", 20.0, 0.0, 3.0}, [5]any{"c", "drill", 0.0, 8.0, 3.0})
		c := parsed(t, draw(t, f)).Circles
		turn := (c[1].X-c[0].X)*(c[2].Y-c[0].Y) - (c[1].Y-c[0].Y)*(c[2].X-c[0].X)
		if turn >= 0 { // y of a drawing runs down
			t.Errorf("%g mm long: mirrored", length)
		}
	}
}

// length walks a path of the drawing: straight pieces and arcs of up to half a turn.
func length(t *testing.T, path string) float64 {
	t.Helper()
	for _, c := range "MLAZ" {
		path = strings.ReplaceAll(path, string(c), " "+string(c)+" ")
	}
	words, sum, x, y := strings.Fields(path), 0.0, 0.0, 0.0
	take := func(n int) []float64 {
		var list []float64
		for _, w := range words[:n] {
			v, err := strconv.ParseFloat(w, 64)
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, v)
		}
		words = words[n:]
		return list
	}
	var startX, startY float64
	for len(words) > 0 {
		command := words[0]
		words = words[1:]
		switch command {
		case "M":
			v := take(2)
			x, y = v[0], v[1]
			startX, startY = x, y
		case "L":
			v := take(2)
			sum += math.Hypot(v[0]-x, v[1]-y)
			x, y = v[0], v[1]
		case "A":
			v := take(7)
			chord := math.Hypot(v[5]-x, v[6]-y)
			sum += 2 * v[0] * math.Asin(math.Min(1, chord/2/v[0]))
			x, y = v[5], v[6]
		case "Z":
			sum += math.Hypot(startX-x, startY-y)
		}
	}
	return sum
}

// Outlines are as long as J. Steiner's formula says: that of the hull and a full turn of the rounding (1840).
func TestOutlineLengths(t *testing.T) {
	for _, c := range []struct {
		name string
		f    frame.Frame
		want float64
	}{
		{"racetrack", rows([5]any{"p", "cut", -30.0, 0.0, 20.0}, [5]any{"p", "cut", 30.0, 0.0, 20.0}), 120 + 20*math.Pi},
		{"rectangle", rows([5]any{"p", "cut", -30.0, -5.0, 0.0}, [5]any{"p", "cut", 30.0, -5.0, 0.0}, [5]any{"p", "cut", 30.0, 5.0, 0.0}, [5]any{"p", "cut", -30.0, 5.0, 0.0}), 140},
		{"triangle, rounded", rows([5]any{"p", "cut", 0.0, 0.0, 4.0}, [5]any{"p", "cut", 30.0, 0.0, 4.0}, [5]any{"p", "cut", 0.0, 40.0, 4.0}), 120 + 4*math.Pi},
		{"corners in any order", rows([5]any{"p", "cut", -30.0, -5.0, 6.0}, [5]any{"p", "cut", 30.0, 5.0, 6.0}, [5]any{"p", "cut", 30.0, -5.0, 6.0}, [5]any{"p", "cut", -30.0, 5.0, 6.0}), 140 + 6*math.Pi},
	} {
		for _, path := range parsed(t, draw(t, c.f)).Paths {
			if path.Part == "p" {
				if got := length(t, path.D); math.Abs(got-c.want) > 1e-3 {
					t.Errorf("%s: %g mm around, want %g", c.name, got, c.want)
				}
			}
		}
	}
}

// The scales are 50 mm each way, and their bars 10 mm apart.
func TestScales(t *testing.T) {
	across, down := false, false
	for _, p := range parsed(t, draw(t, console(94))).Paths {
		var ax, ay, bx, by float64
		if n, _ := fmt.Sscanf(strings.ReplaceAll(strings.TrimPrefix(p.D, "M"), "L", " "), "%g %g %g %g", &ax, &ay, &bx, &by); n == 4 {
			across = across || math.Abs(bx-ax-50) < 1e-9 && ay == by
			down = down || math.Abs(by-ay-50) < 1e-9 && ax == bx
		}
	}
	if !across || !down {
		t.Errorf("a scale of 50 mm across: %v, down: %v", across, down)
	}
}

func TestRefuses(t *testing.T) {
	many := [][5]any{}
	for i := range 61 {
		many = append(many, [5]any{"h", "drill", float64(i), 0.0, 0.5})
	}
	for want, f := range map[string]frame.Source{
		"nothing to draw: got nothing":   nil,
		"nothing to draw: got no rows":   rows(),
		"a column is missing":            frame.Frame{Columns: []frame.Column{frame.Collect("a", []any{"b"})}},
		`row 1: unknown work: got "saw"`: rows([5]any{"p", "saw", 0.0, 0.0, 1.0}),
		"row 1 (p): out of range":        rows([5]any{"p", "cut", math.NaN(), 0.0, 1.0}),
		"row 1 (h): out of range":        rows([5]any{"h", "drill", 0.0, 0.0, 0.0}),
		"too large for a sheet":          rows([5]any{"p", "cut", -110.0, 0.0, 10.0}, [5]any{"p", "cut", 110.0, 0.0, 10.0}),
		"too many holes":                 rows(many...),
	} {
		if _, err := Draw(f); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %q", err, want)
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	plate := console(100)
	for b.Loop() {
		if _, err := Draw(plate); err != nil {
			b.Fatal(err)
		}
	}
}

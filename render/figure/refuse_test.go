package figure

import (
	"math"
	"strings"
	"testing"

	"lode/units"
	"lode/units/frame"
)

func xy(x, y []float64) frame.Frame {
	return frame.Frame{Title: "t", Columns: []frame.Column{frame.Of("f", kindOf("Frequency"), x), frame.Of("l", kindOf("Level"), y)}}
}

// What cannot be drawn is an error that says what came and what is wanted, never a panic.
func TestRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	short := xy([]float64{1, 2}, []float64{3})
	texts := frame.Frame{Columns: []frame.Column{{Name: "name", Texts: []string{"a", "b"}}}}
	response := func(s ...frame.Source) func() error {
		return func() error { _, err := Response(s...); return err }
	}
	for name, try := range map[string]func() error{
		"no curve":       response(),
		"nil curve":      response(nil),
		"no columns":     response(frame.Frame{}),
		"texts":          response(texts),
		"zero frequency": response(xy([]float64{0, 1}, []float64{0, 0})),
		"undefined":      response(xy([]float64{nan, 1}, []float64{0, 0})),
		"endless":        response(xy([]float64{1, inf}, []float64{0, 0})),
		"only gaps":      response(xy([]float64{1, 2}, []float64{nan, -inf})),
		"empty":          response(xy(nil, nil)),
		"short column":   response(short),
		"lines of one":   func() error { _, err := Lines(texts); return err },
		"two horizontals": func() error {
			_, err := Lines(xy([]float64{1, 2}, []float64{3, 4}), frame.Frame{Columns: []frame.Column{frame.Of("a", units.Number(), []float64{1, 2}), frame.Of("b", units.Number(), []float64{1, 2})}})
			return err
		},
		"bars without names": func() error { _, err := Bars(xy([]float64{1}, []float64{2})); return err },
		"bars undefined": func() error {
			_, err := Bars(frame.Frame{Columns: []frame.Column{{Name: "n", Texts: []string{"a"}}, frame.Of("v", units.Number(), []float64{nan})}})
			return err
		},
		"histogram of one": func() error { _, err := Histogram(xy([]float64{1}, []float64{2})); return err },
		"map of two":       func() error { _, err := Map(xy([]float64{1}, []float64{2})); return err },
		"outline of hertz": func() error { _, err := Outline(xy([]float64{1}, []float64{2})); return err },
		"nil map":          func() error { _, err := Map(nil); return err },
		"negative impedance": func() error {
			_, err := Impedance(frame.Frame{Columns: []frame.Column{frame.Of("f", kindOf("Frequency"), []float64{1, 2}), frame.Of("z", kindOf("Resistance"), []float64{1, -2})}})
			return err
		},
	} {
		err := try()
		if err == nil {
			t.Errorf("%s: drawn", name)
			continue
		}
		if text := err.Error(); !strings.Contains(text, "got") || !strings.Contains(text, "want") {
			t.Errorf("%s: %q says not what came and what is wanted", name, text)
		}
	}
}

func TestOptions(t *testing.T) {
	f := mustResponse(t, three()...)
	g, err := f.Across(units.Frequency(100), units.Frequency(10e3))
	if err != nil {
		t.Fatal(err)
	}
	if p := g.Panels()[0]; p.X.Min != 100 || p.X.Max != 10e3 || p.Y.Min < -25 {
		t.Errorf("Across: got %+v and %+v", p.X, p.Y)
	}
	if p := f.Panels()[0]; p.X.Min != 20 {
		t.Errorf("Across changed the figure it was called on: %+v", p.X)
	}
	g, err = f.Within(units.Level(-12), units.Level(6))
	if err != nil || g.Panels()[0].Y.Min != -12 || g.Panels()[0].Y.Max != 6 {
		t.Errorf("Within: got %v, %+v", err, g.Panels())
	}
	if g = f.Titled("a").Captioned("b"); g.Title() != "a" || g.Caption() != "b" || f.Title() == "a" {
		t.Errorf("Titled and Captioned: got %q, %q", g.Title(), g.Caption())
	}
	for name, try := range map[string]func() (Figure, error){
		"ohms":      func() (Figure, error) { return f.Across(units.Resistance(1), units.Resistance(2)) },
		"backwards": func() (Figure, error) { return f.Across(units.Frequency(2), units.Frequency(1)) },
		"zero":      func() (Figure, error) { return f.Across(units.Frequency(0), units.Frequency(1)) },
		"nil":       func() (Figure, error) { return f.Across(nil, nil) },
		"undefined": func() (Figure, error) { return f.Within(units.Level(math.NaN()), units.Level(1)) },
		"no axis":   func() (Figure, error) { return f.Within(units.Resistance(1), units.Resistance(2)) },
		"phase":     func() (Figure, error) { return mustResponse(t, xy([]float64{1, 2}, []float64{3, 4})).WithPhase() },
	} {
		if _, err := try(); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
}

// Awkward data is drawn: constants, single points, gaps, notches, tiny and huge ranges.
func TestAwkward(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(-1)
	for name, f := range map[string]frame.Frame{
		"constant":     xy([]float64{1, 10, 100}, []float64{3, 3, 3}),
		"point":        xy([]float64{440}, []float64{-6}),
		"gaps":         xy([]float64{1, 2, 3, 4, 5}, []float64{1, nan, 2, nan, nan}),
		"notch":        xy([]float64{1, 2, 3}, []float64{0, inf, 0}),
		"deep":         xy([]float64{1, 2, 3}, []float64{0, -300, 0}),
		"tiny":         xy([]float64{1e-9, 2e-9}, []float64{1e-12, 2e-12}),
		"huge":         xy([]float64{1, 1e15}, []float64{-1e12, 1e12}),
		"equal places": xy([]float64{5, 5, 5}, []float64{1, 2, 3}),
		"no title":     {Columns: xy([]float64{1, 2}, []float64{3, 4}).Columns},
		"marks":        {Title: strings.Repeat("long ", 40), Columns: xy([]float64{1, 2}, []float64{3, 4}).Columns, Marks: []frame.Mark{{X: nan, Y: 1}, {X: 99, Y: 1}, {Name: "<&>", X: 1.5, Y: 3.5}}},
	} {
		drawn := mustResponse(t, f)
		for _, svg := range []string{drawn.SVG("a"), drawn.Narrow("a"), drawn.File()} {
			if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") || !strings.Contains(svg, "<path") {
				t.Errorf("%s: no drawing, or not a number in it", name)
			}
		}
		apart(t, name, newDrawing(drawn, "x", wide))
		lines, err := Lines(f)
		if err != nil || lines.SVG("b") == "" {
			t.Errorf("%s: as lines: %v", name, err)
		}
	}
}

// On paper to scale a square is a square.
func TestOneScale(t *testing.T) {
	for _, f := range gallery(t) {
		p := f.Panels()[0]
		if !p.Equal {
			continue
		}
		for _, form := range []form{wide, narrow} {
			d := newDrawing(f, "x", form)
			if math.Abs(d.scales[0]/d.scales[1]-1) > 1e-3 {
				t.Errorf("%s: %g across and %g up", f.Title(), d.scales[0], d.scales[1])
			}
		}
	}
}

// The empty figure draws nothing and breaks nothing.
func TestEmptyFigure(t *testing.T) {
	var f Figure
	for _, svg := range []string{f.SVG("a"), f.Narrow("b"), f.File()} {
		if !strings.HasPrefix(svg, "<svg") {
			t.Errorf("got %q", svg)
		}
	}
	if _, err := f.Within(units.Level(1), units.Level(2)); err == nil {
		t.Error("Within: taken")
	}
	if f.Numbers() != nil || f.Description() == "" {
		t.Errorf("got %v, %q", f.Numbers(), f.Description())
	}
}

// The numbers listed are those of the data, and few.
func TestNumbers(t *testing.T) {
	for name, f := range gallery(t) {
		for _, table := range f.Numbers() {
			if n := table.Rows(); n < 2 || n > 60 || len(table.Columns) < 2 {
				t.Errorf("%s: %d rows of %d columns", name, n, len(table.Columns))
			}
		}
	}
	f := mustResponse(t, three()...)
	got, data := f.Numbers()[0], f.Frames()[2]
	if len(got.Columns) != 4 || got.Columns[0].Values[0] != data.Columns[0].Values[0] || got.Columns[3].Values[fewRows-1] != data.Columns[1].Values[399] {
		t.Errorf("got %+v", got)
	}
}

// Package figure draws the figures of a notebook.
//
//	figure.Response(line.Sweep(20*Hz, 20*kHz))
//	figure.Response(asFound, rewound).Titled("Before and after").Across(100*Hz, 20*kHz)
//	figure.Lines(build).Captioned("Resistance while the winding grows")
//
// A figure is a plain value: each option returns a changed copy. Curves are named at their
// ends, points worth naming are marked, and every figure says in words what it shows.
package figure

import (
	"fmt"

	"lode/render/internal/chart"
	"lode/units"
	"lode/units/frame"
)

// Figure is a drawing with its data.
type Figure struct {
	title, caption string
	what           string // what is drawn, for the description
	frames         []frame.Frame
	panels         []chart.Panel
}

// Title returns the figure's title.
func (f Figure) Title() string { return f.title }

// Caption returns the words under the figure, or nothing.
func (f Figure) Caption() string { return f.caption }

// Frames returns the data that the figure was drawn from.
func (f Figure) Frames() []frame.Frame { return append([]frame.Frame(nil), f.frames...) }

// Panels returns the drawing's axes and curves.
func (f Figure) Panels() []chart.Panel { return append([]chart.Panel(nil), f.panels...) }

// String tells what the figure shows.
func (f Figure) String() string { return f.Description() }

// Titled returns the figure under another title.
func (f Figure) Titled(title string) Figure {
	f.title = title
	return f
}

// Captioned returns the figure with a caption.
func (f Figure) Captioned(caption string) Figure {
	f.caption = caption
	return f
}

// Across returns the figure with its horizontal axis from low to high.
func (f Figure) Across(low, high units.Quantity) (Figure, error) {
	f.panels = f.Panels()
	for i := range f.panels {
		p := &f.panels[i]
		if err := setRange(&p.X, "Across", low, high); err != nil {
			return Figure{}, err
		}
		p.FitY(depth)
	}
	return f, nil
}

// Within returns the figure with the vertical axis of that kind of quantity from low to high.
func (f Figure) Within(low, high units.Quantity) (Figure, error) {
	f.panels = f.Panels()
	for i := range f.panels {
		if axis := &f.panels[i].Y; low != nil && axis.Kind.Type == low.Kind().Type {
			return f, setRange(axis, "Within", low, high)
		}
	}
	got, want := "nothing", "a figure with curves"
	if low != nil {
		got = low.Kind().Name
	}
	if len(f.panels) > 0 {
		want = f.panels[0].Y.Kind.Name
	}
	return Figure{}, fmt.Errorf("Within: no such vertical axis: got %s, want %s", got, want)
}

func setRange(a *chart.Axis, option string, low, high units.Quantity) error {
	if low == nil || high == nil || low.Kind().Type != a.Kind.Type || high.Kind().Type != a.Kind.Type {
		return fmt.Errorf("%s: wrong kind of quantity: got %v to %v, want two of %s", option, low, high, a.Kind.Name)
	}
	from, to := low.SI(), high.SI()
	if !(from < to) || a.Log && from <= 0 || to-from > 1e300 {
		return fmt.Errorf("%s: no range: got %v to %v, want a lower and a higher value%s", option, low, high, positive(a.Log))
	}
	a.Min, a.Max = from, to
	return nil
}

func positive(log bool) string {
	if log {
		return ", both above zero"
	}
	return ""
}

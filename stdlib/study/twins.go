package study

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/pace"
	"lode/stdlib/study/internal/kernel"
	"lode/units"
	"lode/units/frame"
)

// SolveNumbers is Solve on plain numbers of the kinds x and y.
func SolveNumbers(f func(float64) float64, want, low, high float64, x, y units.Kind) (float64, error) {
	if err := checkRange("study.Solve", f, low, high, x); err != nil {
		return 0, err
	}
	root, err := kernel.Root(func(v float64) float64 { return paced(f)(v) - want }, low, high, 1e-12)
	if errors.Is(err, kernel.ErrSides) {
		return 0, fmt.Errorf("study.Solve: the function does not cross the value: got %s to %s between %s and %s, want %s in between\nhint: widen the range, or see with study.Over how the function runs",
			units.Text(f(low), y), units.Text(f(high), y), units.Text(low, x), units.Text(high, x), units.Text(want, y))
	}
	if err == nil {
		err = jumps(f, want, low, high, root, x, y)
	} else {
		err = undefined("study.Solve", err, low, high, x)
	}
	return root, err
}

// jump is how much of the function's way over the range it may miss the value by: single turns and other
// steps of a function on whole numbers are less.
const jump = 0.1

// jumps refuses a place where a function leaps over the value instead of taking it.
func jumps(f func(float64) float64, want, low, high, root float64, x, y units.Kind) error {
	if at := f(root); math.Abs(at-want) > jump*math.Abs(f(high)-f(low)) {
		return fmt.Errorf("study.Solve: the function jumps over the value: got %s at %s, where it changes sides, want %s somewhere\nhint: narrow the range, or see with study.Over how the function runs",
			units.Text(at, y), units.Text(root, x), units.Text(want, y))
	}
	return nil
}

// LeastNumbers is Least on plain numbers of the kinds x and y.
func LeastNumbers(f func(float64) float64, low, high float64, x, _ units.Kind) (float64, error) {
	return least("study.Least", f, low, high, x)
}

// GreatestNumbers is Greatest on plain numbers of the kinds x and y.
func GreatestNumbers(f func(float64) float64, low, high float64, x, _ units.Kind) (float64, error) {
	if f == nil {
		return least("study.Greatest", nil, low, high, x)
	}
	return least("study.Greatest", func(v float64) float64 { return -f(v) }, low, high, x)
}

func least(subject string, f func(float64) float64, low, high float64, x units.Kind) (float64, error) {
	if err := checkRange(subject, f, low, high, x); err != nil {
		return 0, err
	}
	at, err := kernel.Least(paced(f), low, high, 64, 1e-9)
	return at, undefined(subject, err, low, high, x)
}

// paced is f until the calculation is asked to end.
func paced(f func(float64) float64) func(float64) float64 {
	return func(x float64) float64 {
		if pace.Stopped() {
			return math.NaN()
		}
		return f(x)
	}
}

func undefined(subject string, err error, low, high float64, x units.Kind) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: the function is not defined everywhere between %s and %s: got no number, want one at each argument", subject, units.Text(low, x), units.Text(high, x))
}

func checkRange(subject string, f func(float64) float64, low, high float64, x units.Kind) error {
	switch {
	case f == nil:
		return fmt.Errorf("%s: no function: got nil, want a function of one quantity", subject)
	case math.IsNaN(low) || math.IsInf(low, 0) || math.IsNaN(high) || math.IsInf(high, 0) || low >= high:
		return fmt.Errorf("%s: the range is empty: got %s to %s, want the lower end first", subject, units.Text(low, x), units.Text(high, x))
	}
	return nil
}

// Run is how a function runs over a range.
type Run struct {
	title        string
	kindX, kindY units.Kind
	x, y         []float64
}

// most is how many points a run may have.
const most = 100_000

// OverNumbers is Over on plain numbers of the kinds x and y.
func OverNumbers(f func(float64) float64, low, high float64, points int, x, y units.Kind) (Run, error) {
	step := (high - low) / float64(max(points-1, 1))
	return over("study.Over", f, low, high, points, x, y, func(i int) float64 { return low + step*float64(i) })
}

// OverDecadesNumbers is OverDecades on plain numbers of the kinds x and y.
func OverDecadesNumbers(f func(float64) float64, low, high float64, points int, x, y units.Kind) (Run, error) {
	if low <= 0 {
		return Run{}, fmt.Errorf("study.OverDecades: the range has no decades: got %s at its lower end, want more than zero", units.Text(low, x))
	}
	ratio := math.Log(high/low) / float64(max(points-1, 1))
	return over("study.OverDecades", f, low, high, points, x, y, func(i int) float64 { return low * math.Exp(ratio*float64(i)) })
}

func over(subject string, f func(float64) float64, low, high float64, points int, x, y units.Kind, at func(int) float64) (Run, error) {
	if err := checkRange(subject, f, low, high, x); err != nil {
		return Run{}, err
	}
	if points < 2 || points > most {
		return Run{}, fmt.Errorf("%s: points: got %d, want 2 to %d", subject, points, most)
	}
	r := Run{kindX: x, kindY: y, x: make([]float64, points), y: make([]float64, points)}
	for i := range pace.Of(points) {
		r.x[i] = at(i)
		if i == points-1 {
			r.x[i] = high
		}
		r.y[i] = f(r.x[i])
	}
	return r, nil
}

// Named gives the run a title, which names its curve in a figure.
func (r Run) Named(title string) Run {
	r.title = title
	return r
}

// Frame returns argument and value as columns.
func (r Run) Frame() frame.Frame {
	return frame.Frame{Title: r.title, Columns: []frame.Column{frame.Of(columnName(r.kindX, "argument"), r.kindX, r.x), frame.Of(columnName(r.kindY, "value"), r.kindY, r.y)}}
}

func columnName(k units.Kind, otherwise string) string {
	if k.Type == "" {
		return otherwise
	}
	return k.Name
}

// String tells the ends of the run.
func (r Run) String() string {
	if len(r.x) == 0 {
		return "an empty run"
	}
	last := len(r.x) - 1
	return fmt.Sprintf("%d points: %s at %s to %s at %s", len(r.x), units.Text(r.y[0], r.kindY), units.Text(r.x[0], r.kindX), units.Text(r.y[last], r.kindY), units.Text(r.x[last], r.kindX))
}

package run

import (
	"reflect"
	"runtime"

	"lode/engine/library"
)

// This file is the package through which a running notebook speaks to its runner.

// failure is how a library error leaves the interpreter.
type failure struct {
	spot int
	err  error
}

// Error lets a notebook that recovers from a failure see its text.
func (f failure) Error() string { return f.err.Error() }

// over is how a run ends whose budget is used up.
type over struct {
	spot, depth int
}

// slice is how many steps a program is given at a time. When they are used up it comes back
// for more, and that is where it learns that it is asked to stop: within a few milliseconds,
// and at the loop it is in.
const slice = 1 << 16

// allowance takes a slice from what is left of the budget.
func (r *runner) allowance() int {
	n := min(slice, r.left)
	r.left -= n
	return n
}

// over answers a program whose allowance is used up or that is too deep.
func (r *runner) over(spot, depth int) int {
	r.halted = r.asked.Load() && depth <= r.limits.Depth
	if r.halted || r.left == 0 || depth > r.limits.Depth {
		r.leave(spot, depth)
	}
	return r.allowance() - 1 // the step that asks is one of them
}

// heed leaves a program that is asked to stop: what the library gives it from then on is of no use
// and must not be shown.
func (r *runner) heed() {
	if r.asked.Load() {
		r.halted = true
		r.leave(-1, 0)
	}
}

// leave ends the goroutine that the notebook runs in. No function of the notebook can hold
// that up by recovering, and leaving many calls is quick, which it is not by a panic: the
// interpreter stops in each call to pass that on.
func (r *runner) leave(spot, depth int) {
	if r.ended == nil {
		r.ended = &over{spot, depth}
	}
	runtime.Goexit()
}

func (r *runner) host(lib *library.Library) map[string]reflect.Value {
	functions := map[string]any{
		"At":      func(spot int) { r.heed(); r.settle(); r.at = spot; r.sink.At(spot) },
		"Show":    func(spot int, value any) { r.heed(); r.sink.Show(spot, value) },
		"Mind":    func(spot int, value any) { r.heed(); r.sink.Mind(spot, value) },
		"Fail":    func(spot int, err error) { panic(failure{spot, err}) },
		"Over":    r.over,
		"Caught":  caught,
		"Mistake": func(value any, text func() string) error { return &mistake{value, text} },
		"Said":    newSaid,
		"Fields":  newFields,
		"Inside":  inside,
		"Search":  search,
		"Place":   place,
		"Bound":   bound,
		"Knob":    func(knob int) float64 { return r.sink.Knob(knob) },
		"Steps":   r.allowance,
		"Depth":   func() int { return r.limits.Depth },
	}
	values := map[string]reflect.Value{}
	for name, f := range functions {
		values[name] = reflect.ValueOf(f)
	}
	for name, f := range r.workings() {
		values[name] = f
	}
	for i, w := range r.program.Watched {
		values[w.Host(i)] = r.watched(lib, i, w)
	}
	return values
}

package run

import (
	"reflect"

	"lode/engine/worked"
)

// This file collects what a running notebook tells of its workings.

// mostTold bounds how much a run tells, so that workings of deep recursion stay small.
const mostTold = 20_000

// told is what a run has told of its workings so far. Each call of a function that tells its
// way has a frame of its own; the first one belongs to the top level.
type told struct {
	constants map[int]any
	frames    []frame
	last      *worked.Way // of the call that returned last
	count     int
}

type frame struct {
	function int
	values   map[int]any
	ways     map[int]*worked.Way
	steps    []worked.Step
}

func newTold() *told { return &told{constants: map[int]any{}} }

func newFrame(function int) frame {
	return frame{function: function, values: map[int]any{}, ways: map[int]*worked.Way{}}
}

func (t *told) top() *frame {
	if len(t.frames) == 0 {
		t.frames = append(t.frames, newFrame(0))
	}
	return &t.frames[len(t.frames)-1]
}

func (t *told) leaf(slot int, value any) {
	if t.count++; t.count < mostTold {
		t.top().values[slot] = value
	}
}

func (t *told) own(slot int, value any) {
	t.leaf(slot, value)
	t.top().ways[slot], t.last = t.last, nil
}

func (t *told) enter(function int) {
	t.top()
	t.frames = append(t.frames, newFrame(function))
}

// leave ends the call of a function; calls within it that a failure cut short end with it.
func (t *told) leave(function int, formula *worked.Tree) {
	for len(t.frames) > 1 && t.top().function != function {
		t.frames = t.frames[:len(t.frames)-1]
	}
	t.last = &worked.Way{Steps: t.top().steps, Result: t.filled(formula)}
	t.frames = t.frames[:max(1, len(t.frames)-1)]
}

func (t *told) step(line worked.Line, holds bool) {
	if f := t.top(); t.count < mostTold {
		f.steps = append(f.steps, worked.Step{Name: line.Name, Tree: t.filled(line.Tree), Holds: holds})
	}
}

// after notes what a name has become when a loop ends.
func (t *told) after(line worked.Line) {
	if f := t.top(); t.count < mostTold {
		f.steps = append(f.steps, worked.Step{Name: line.Name, Tree: t.filled(line.Tree), After: true})
	}
}

// work ends a statement of the top level and returns its formula with all values.
func (t *told) work(line worked.Line) worked.Line {
	if len(t.frames) > 1 {
		t.frames = t.frames[:1]
	}
	line.Tree = t.filled(line.Tree)
	t.frames, t.last, t.count = nil, nil, 0
	return line
}

func (t *told) filled(tree *worked.Tree) *worked.Tree {
	f := t.top()
	return tree.Filled(func(slot int) (any, *worked.Way) {
		if v, ok := t.constants[slot]; ok {
			return v, nil
		}
		return f.values[slot], f.ways[slot]
	})
}

// workings are the functions by which a notebook tells its workings.
func (r *runner) workings() map[string]reflect.Value {
	works := r.program.Works
	values := map[string]reflect.Value{}
	for name, f := range map[string]any{
		"Leaf":     func(slot int, value any) { r.told.leaf(slot, value) },
		"Constant": func(slot int, value any) { r.told.constants[slot] = value },
		"Own":      func(slot int, value any) { r.told.own(slot, value) },
		"Enter":    func(function int) { r.told.enter(function) },
		"Leave":    func(function, work int) { r.told.leave(function, works[work].Line.Tree) },
		"Step":     func(work int, holds bool) { r.told.step(works[work].Line, holds) },
		"After":    func(work int) { r.told.after(works[work].Line) },
		"Work":     func(spot, work int) { r.sink.Work(spot, r.told.work(works[work].Line)) },
	} {
		values[name] = reflect.ValueOf(f)
	}
	return values
}

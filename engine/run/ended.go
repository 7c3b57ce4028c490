package run

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"strings"

	"lode/engine/issue"
	"lode/engine/lower"
)

// This file turns what ended a run into words.

func (r *runner) issue(err error) *issue.Issue {
	if value, ok := panicValue(err); ok {
		return r.failed(value)
	}
	if errors.Is(err, context.Canceled) {
		return r.place(stopped(r.reason()))
	}
	return r.place(issue.Issue{Code: issue.Interpreter, What: "the interpreter does not take this program", Got: err.Error(),
		Want: "a program that it takes", Hint: "this is a fault of the program that runs notebooks, not of the notebook"})
}

// stopped is the end of a run from outside.
func stopped(reason error) issue.Issue {
	i := issue.Issue{Code: issue.Stopped, What: "the run was stopped", Got: "a request to stop", Want: "the end of the notebook"}
	if errors.Is(reason, context.DeadlineExceeded) {
		i.Got = "the time for a run is over"
	}
	return i
}

func (r *runner) failed(v any) *issue.Issue {
	if r.asked.Load() { // a calculation that was cut short may fail
		return r.place(stopped(r.reason()))
	}
	switch v := v.(type) {
	case reflect.Value: // a call of panic in the notebook
		if v.IsValid() && v.CanInterface() {
			return r.raised(v.Interface())
		}
	case string: // a panic of the interpreter's own machinery
		if !r.running {
			return r.issue(errors.New(v))
		}
		return r.place(panicked(v))
	case failure:
		return r.placeAt(v.spot, parts(v.err.Error()))
	case *mistake:
		return r.raised(v)
	case misplaced:
		return r.place(v.issue())
	case error:
		return r.place(panicked(v.Error()))
	}
	return r.raised(v)
}

// raised is the end of a run by the notebook's own panic.
func (r *runner) raised(v any) *issue.Issue {
	if f, ok := v.(failure); ok {
		return r.failed(f)
	}
	text, told := text(v)
	switch {
	case !told && r.ended != nil && r.halted:
		return r.placeAt(r.ended.spot, stopped(r.reason()))
	case !told && r.ended != nil:
		return r.placeAt(r.ended.spot, r.used(*r.ended))
	}
	return r.place(issue.Issue{Code: issue.Panic, What: "panic: " + text, Got: text, Want: "no panic"})
}

// text is how a value of a notebook reads. A method of the notebook may write it, whose goroutine ends where
// its budget is used up: then it is not told.
func text(v any) (text string, told bool) {
	over := make(chan struct{})
	go func() {
		defer close(over)
		text = fmt.Sprint(v)
		told = true
	}()
	<-over
	return text, told
}

func (r *runner) used(o over) issue.Issue {
	if o.depth > r.limits.Depth {
		return issue.Issue{Code: issue.TooDeep, What: "calls within calls: the depth is used up", Got: fmt.Sprint(o.depth), Want: fmt.Sprintf("at most %d", r.limits.Depth),
			Hint: "a function that calls itself needs a case in which it does not"}
	}
	return issue.Issue{Code: issue.TooLong, What: "the notebook runs for too long: its steps are used up", Got: fmt.Sprintf("more than %d turns of loops and calls", r.limits.Steps),
		Want: "a loop that ends", Hint: "long calculations belong in functions of the library"}
}

// parts takes an error text of the form "what: got X, want Y" and a hint below apart.
func parts(text string) issue.Issue {
	what, hint, _ := strings.Cut(text, "\nhint: ")
	i := issue.Issue{Code: issue.Failed, What: what, Hint: hint}
	if what, rest, ok := strings.Cut(what, ": got "); ok {
		i.What, i.Got = what, rest
		if got, want, ok := strings.Cut(rest, ", want "); ok {
			i.Got, i.Want = got, want
		}
	}
	return i
}

// place puts an issue where the program was, with the way that led there.
func (r *runner) place(i issue.Issue) *issue.Issue { return r.placeAt(-1, i) }

func (r *runner) placeAt(spot int, i issue.Issue) *issue.Issue {
	way := r.way()
	switch {
	case spot >= 0 && r.ended != nil && r.ended.depth == lower.Unlisted:
		way = append([]int{spot}, way...)
	case spot >= 0:
		way[0] = spot
	}
	if way[0] < len(r.program.Spots) {
		s := r.program.Spots[way[0]]
		i.Place, i.Source = s.Place, s.Source
	}
	for _, at := range shortened(way[1:]) {
		i.Calls = append(i.Calls, issue.Call{Place: r.program.Spots[at].Place, Text: r.program.Spots[at].Text})
	}
	return &i
}

// maxCalls bounds how many calls an issue names.
const maxCalls = 20

func shortened(way []int) []int {
	if len(way) > maxCalls {
		return append(append([]int{}, way[:maxCalls-1]...), way[len(way)-1])
	}
	return way
}

// way returns the statement that was running and those that led to it, innermost first.
func (r *runner) way() (way []int) {
	way = []int{r.at}
	if !r.running {
		return way
	}
	defer func() { _ = recover() }()
	v, err := r.interp.Eval("notebook." + lower.Way + "()")
	if err != nil {
		return way
	}
	if list, ok := v.Interface().([]int); ok && len(list) > 0 {
		return list
	}
	return way
}

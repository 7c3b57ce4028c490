package engine

import (
	"context"

	"lode/engine/issue"
	"lode/engine/lower"
	"lode/engine/run"
	"lode/engine/worked"
)

// This file looks closer at an end that tells too little: it runs the notebook once more, with care at the place.

// closer returns the issue that ended a run, with the place and the length of the list if it was a place that is not there.
func (n *Notebook) closer(ctx context.Context, failed *issue.Issue) *issue.Issue {
	if failed == nil || failed.Code != issue.Index || failed.Line == 0 || ctx.Err() != nil {
		return failed
	}
	again := run.New(n.lib, lower.Careful(n.checked, failed.Place)).Run(ctx, n.Limits, silent{sink{n: n}})
	if again == nil || again.Code != issue.Index || again.Place != failed.Place {
		return failed
	}
	return again
}

// silent is a sink that drops all but what a run asks of it.
type silent struct{ sink }

func (silent) At(int)                        {}
func (silent) Part(float64)                  {}
func (silent) Show(int, any)                 {}
func (silent) Mind(int, any)                 {}
func (silent) Left(int, int, []string, bool) {}
func (silent) Print(int, string)             {}
func (silent) Work(int, worked.Line)         {}
func (s silent) Knob(knob int) float64       { return s.sink.Knob(knob) }

package library_test

import (
	"context"
	"runtime"
	"testing"
	"time"

	"lode/engine"
	"lode/engine/issue"
)

// long are single calls of the library that take many seconds when they are left alone.
var long = map[string]string{
	"a function over a range": `study.Over(func(l units.Length) units.Resistance {
		return wire.AWG(42).Resistance(l)
	}, 1*metre, 2*metre, 100000)`,
	"a search in a search": `study.Over(func(x float64) float64 {
		return study.Least(func(y float64) float64 {
			return study.Solve(func(z float64) float64 { return z*z*z + y }, 1, -10, 10)
		}, 0, 5) * x
	}, 1, 2, 100000)`,
	"a function that sums turns": `study.Over(func(gap units.Length) units.Inductance {
		b := coil.Rectangle{CoreLength: 30*mm, CoreWidth: 8*mm, CornerRadius: 2*mm, Height: 8*mm + gap, FlangeLength: 50*mm, FlangeWidth: 28*mm}
		return coil.Wind(b, wire.AWG(26), 140).InductanceTo(1e-7)
	}, 1*mm, 2*mm, 100000)`,
}

func TestLongCallsAreToldAndStop(t *testing.T) {
	lib := load(t)
	for name, code := range long {
		t.Run(name, func(t *testing.T) {
			n := engine.Open(lib, "cell.lode", []byte("x := 1\n"+code+"\nx\n"))
			if len(n.Issues) > 0 {
				t.Fatal(n.Issues)
			}
			before := runtime.NumGoroutine()
			ctx, stop := context.WithCancel(context.Background())
			defer stop()
			told, last := 0, 0.0
			n.Part = func(part float64) {
				if part < last || part > 1 {
					t.Errorf("told of %g after %g", part, last)
				}
				if last = part; part > 0 {
					if told++; told == 3 {
						stop()
					}
				}
			}
			shown := 0
			failed := n.Run(ctx, func(engine.Result) { shown++ })
			if failed == nil || failed.Code != issue.Stopped || failed.Line < 2 || failed.Line > 6 {
				t.Errorf("got %v, want a stop in lines 2 to 6", failed)
			}
			if told < 3 || shown > 0 {
				t.Errorf("told %d times, %d results shown behind the stop", told, shown)
			}
			for range 100 { // the calculation itself ends, not only the wait for it
				if runtime.NumGoroutine() <= before {
					return
				}
				time.Sleep(10 * time.Millisecond)
			}
			t.Errorf("%d goroutines are left, %d before", runtime.NumGoroutine(), before)
		})
	}
}

package pace

import (
	"slices"
	"testing"
)

func TestOutermostIsTold(t *testing.T) {
	var parts []float64
	forget := Watch(func(part float64) { parts = append(parts, part) })
	inner := 0
	for range Of(4) {
		for range Of(10) {
			inner++
		}
	}
	forget()
	for range Of(3) { // nobody watches any more
	}
	if want := []float64{0, 0.25, 0.5, 0.75}; !slices.Equal(parts, want) || inner != 40 {
		t.Errorf("told %v with %d inner turns, want %v with 40", parts, inner, want)
	}
}

func TestStop(t *testing.T) {
	forget := Watch(func(float64) {})
	defer forget()
	turns := 0
	for i := range Of(1000) {
		if turns++; i == 9 {
			Stop()
		}
	}
	if turns != 10 || !Stopped() {
		t.Errorf("%d turns, stopped %v, want 10, true", turns, Stopped())
	}
	if Watch(func(float64) {})(); Stopped() {
		t.Error("a new watch begins with an old request to stop")
	}
}

func TestLeftInTheMiddle(t *testing.T) {
	var parts []float64
	defer Watch(func(part float64) { parts = append(parts, part) })()
	for range 2 {
		func() {
			defer func() { _ = recover() }()
			for range Of(5) {
				panic("a callback that fails")
			}
		}()
	}
	if len(parts) != 2 {
		t.Errorf("told %d times, want 2: a calculation that panicked keeps the ear", len(parts))
	}
}

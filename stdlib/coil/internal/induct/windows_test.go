package induct

import (
	"math"
	"strings"
	"testing"
)

// This file holds windows drawn at random against tables made by a method of its own: an average over directions
// of integrals in one dimension, in which no distance in space occurs, and for pairs 2 mm apart and more Neumann's sum.
// testdata/reference/inductance_windows.py says how, and how the tables tell their own error.

// An offMost remembers the case that was off most.
type offMost struct {
	off  float64
	name string
}

// holds compares within the allowance and what the row itself may be off.
func (f *offMost) holds(t *testing.T, row map[string]string, what, column string, got, allowed float64) {
	t.Helper()
	want := number(t, row, column)
	closeTo(t, row["case_id"]+", "+what, got, want, allowed+number(t, row, "relative_error"))
	book.Note(t, what, math.Abs(got/want-1))
	if off := math.Abs(got/want - 1); off > f.off {
		f.off, f.name = off, row["case_id"]
	}
}

func (f *offMost) tell(t *testing.T, what string) {
	t.Logf("%s: at most %.2g off, in %s", what, f.off, f.name)
}

func windowOf(t *testing.T, row map[string]string, prefix string) Section {
	t.Helper()
	of := func(name string) float64 { return number(t, row, prefix+name+"_m") }
	return Section{of("core_length"), of("core_width"), of("corner_radius"), of("height"), of("build")}
}

func placeOf(t *testing.T, row map[string]string) (p Placement) {
	t.Helper()
	for i, axis := range []string{"x", "y", "z"} {
		p.Shift[i], p.Turn[i] = number(t, row, "shift_"+axis), number(t, row, "turn_"+axis)
	}
	return p
}

func TestSelfOfRandomWindows(t *testing.T) {
	var usual, quick, fine offMost
	for _, row := range table(t, "inductance_windows_self") {
		s := windowOf(t, row, "")
		value, _ := Self(s, 1)
		usual.holds(t, row, "Self", "inductance_H", value, 1e-5)
		quick.holds(t, row, "SelfValue", "inductance_H", SelfValue(s, 1), 1e-5)
		value, _ = SelfTo(s, 1, 1e-6)
		fine.holds(t, row, "SelfTo 1e-6", "inductance_H", value, 1e-6)
	}
	usual.tell(t, "Self")
	quick.tell(t, "SelfValue")
	fine.tell(t, "SelfTo 1e-6")
}

// Stacked windows and windows around each other, on one axis and with parallel sides, by both functions.
func TestCoaxialRandomWindows(t *testing.T) {
	var usual, pair, fine offMost
	for _, row := range table(t, "inductance_windows_pair") {
		if place := placeOf(t, row); place == (Placement{Shift: [3]float64{0, 0, place.Shift[2]}}) {
			a, b := windowOf(t, row, "a_"), windowOf(t, row, "b_")
			value, _ := Coaxial(a, b, 1, 1, place.Shift[2])
			usual.holds(t, row, "Coaxial", "mutual_H", value, 1e-5)
			pair.holds(t, row, "PairValue", "mutual_H", PairValue(a, b, 1, 1, place), 1e-5)
			value, _ = CoaxialTo(a, b, 1, 1, place.Shift[2], 1e-6)
			fine.holds(t, row, "CoaxialTo 1e-6", "mutual_H", value, 1e-6)
		}
	}
	usual.tell(t, "Coaxial")
	pair.tell(t, "PairValue")
	fine.tell(t, "CoaxialTo 1e-6")
}

func TestPairsOfRandomWindows(t *testing.T) {
	for kind, allowed := range map[string]float64{"_aside_": 1e-5, "_turned_": 1e-5, "_tilted_": 1e-4} {
		var usual, back, fine offMost
		for _, row := range table(t, "inductance_windows_pair") {
			if !strings.Contains(row["case_id"], kind) {
				continue
			}
			a, b, place := windowOf(t, row, "a_"), windowOf(t, row, "b_"), placeOf(t, row)
			value, _ := Pair(a, b, 1, 1, place)
			usual.holds(t, row, "Pair", "mutual_H", value, allowed)
			back.holds(t, row, "PairValue exchanged", "mutual_H", PairValue(b, a, 1, 1, place.inverse()), allowed)
			value, _ = PairTo(a, b, 1, 1, place, allowed/10)
			fine.holds(t, row, "PairTo", "mutual_H", value, allowed/10)
		}
		usual.tell(t, kind)
		back.tell(t, kind+" exchanged")
		fine.tell(t, kind+" PairTo a tenth")
	}
}

// The tables hold what they are said to hold.
func TestRandomWindowsAreMany(t *testing.T) {
	if n := len(table(t, "inductance_windows_self")); n < 60 {
		t.Errorf("%d windows by themselves, want 60", n)
	}
	kinds := map[string]int{}
	for _, row := range table(t, "inductance_windows_pair") {
		for _, kind := range []string{"stacked_alike", "stacked_unlike", "around", "aside", "tilted", "turned"} {
			if strings.Contains(row["case_id"], kind) {
				kinds[kind]++
			}
		}
	}
	for kind, least := range map[string]int{"stacked_alike": 16, "stacked_unlike": 8, "around": 9, "aside": 9, "tilted": 8, "turned": 4} {
		if kinds[kind] < least {
			t.Errorf("%d pairs %s, want %d", kinds[kind], kind, least)
		}
	}
}

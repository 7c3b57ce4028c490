// Package evidence holds results of tests against their witnesses and tells how far apart they were at most.
package evidence

import (
	"cmp"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
)

// Book keeps what the tests of a package compared. When a test ends, it logs a line for each of its quantities:
//
//	evidence | quantity | witness | cases | largest error
//
// The witness is what the test is called, without Test and what stands before Against. A quantity without a name is what stands
// there.
type Book struct {
	lock  sync.Mutex
	pages map[string]page
}

// page has the errors of a test by quantity.
type page map[string][]float64

// Close fails the test where two values are farther apart than a tolerance, as a part of the one wanted.
func (b *Book) Close(t testing.TB, quantity string, got, want, tolerance float64) {
	t.Helper()
	off := math.Abs(got - want)
	if !(off <= tolerance*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g, off by %.2g, allowed %g", quantity, got, want, got/want-1, tolerance)
	}
	if off > 0 {
		off /= math.Abs(want)
	}
	b.Note(t, quantity, off)
}

// Note keeps an error that was found in another way.
func (b *Book) Note(t testing.TB, quantity string, off float64) {
	b.lock.Lock()
	defer b.lock.Unlock()
	if b.pages == nil {
		b.pages = map[string]page{}
	}
	if b.pages[t.Name()] == nil {
		b.pages[t.Name()] = page{}
		t.Cleanup(func() { b.tell(t) })
	}
	b.pages[t.Name()][quantity] = append(b.pages[t.Name()][quantity], off)
}

func (b *Book) tell(t testing.TB) {
	b.lock.Lock()
	defer b.lock.Unlock()
	told := b.pages[t.Name()]
	delete(b.pages, t.Name())
	for _, quantity := range slices.Sorted(maps.Keys(told)) {
		errors := told[quantity]
		subject, witness := words(t.Name())
		t.Logf("evidence | %s | %s | %d | %.1e", cmp.Or(quantity, subject), witness, len(errors), slices.MaxFunc(errors, cmp.Compare[float64]))
	}
}

// words tells from the name of a test what it holds against what; where it does not say, both are the whole name.
func words(name string) (subject, witness string) {
	name, _, _ = strings.Cut(strings.TrimPrefix(name, "Test"), "/")
	apart := func(s string) string {
		s = regexp.MustCompile(`([a-z])([A-Z])`).ReplaceAllString(s, "$1 $2")
		return strings.ToLower(regexp.MustCompile(`([A-Z])([A-Z][a-z])`).ReplaceAllString(s, "$1 $2"))
	}
	if before, after, _ := strings.Cut(name, "Against"); after != "" {
		return apart(before), apart(after)
	}
	return apart(name), apart(name)
}

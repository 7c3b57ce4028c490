package evidence

import (
	"fmt"
	"strings"
	"testing"
)

// recorder is a test that keeps what it is told.
type recorder struct {
	testing.TB
	said   []string
	failed bool
	ended  []func()
}

func (r *recorder) Helper()          {}
func (r *recorder) Name() string     { return "TestFluxAgainstTheSurface/near" }
func (r *recorder) Cleanup(f func()) { r.ended = append(r.ended, f) }
func (r *recorder) Logf(format string, args ...any) {
	r.said = append(r.said, fmt.Sprintf(format, args...))
}
func (r *recorder) Errorf(format string, args ...any) { r.failed = true }

func TestBook(t *testing.T) {
	var book Book
	r := &recorder{TB: t}
	book.Close(r, "flux", 1.001, 1, 0.01)
	book.Close(r, "flux", 1.002, 1, 0.01)
	book.Close(r, "nothing", 0, 0, 0)
	if r.failed || len(r.ended) != 1 {
		t.Errorf("failed %v, %d ends", r.failed, len(r.ended))
	}
	book.Close(r, "flux", 1.02, 1, 0.01)
	book.Note(r, "field", 0.5)
	r.ended[0]()
	want := "evidence | field | the surface | 1 | 5.0e-01\nevidence | flux | the surface | 3 | 2.0e-02\nevidence | nothing | the surface | 1 | 0.0e+00"
	if got := strings.Join(r.said, "\n"); got != want || !r.failed {
		t.Errorf("got %q, failed %v", got, r.failed)
	}
	for name, want := range map[string]string{"TestChainLaws": "chain laws", "TestSelfOfRacetracks": "self of racetracks"} {
		if got := Witness(name); got != want {
			t.Errorf("%s: got %q, want %q", name, got, want)
		}
	}
}

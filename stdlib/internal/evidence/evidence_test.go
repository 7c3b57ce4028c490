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
	book.Note(r, "", 0.25)
	r.ended[0]()
	want := "evidence | flux | the surface | 1 | 2.5e-01\nevidence | field | the surface | 1 | 5.0e-01\nevidence | flux | the surface | 3 | 2.0e-02\nevidence | nothing | the surface | 1 | 0.0e+00"
	if got := strings.Join(r.said, "\n"); got != want || !r.failed {
		t.Errorf("got %q, failed %v", got, r.failed)
	}
	for name, want := range map[string][2]string{
		"TestChainLaws":             {"chain laws", "chain laws"},
		"TestPairAgainstBiotSavart": {"pair", "biot savart"},
		"TestResistanceACByHand":    {"resistance ac by hand", "resistance ac by hand"},
		"TestLevelAgainst":          {"level against", "level against"},
	} {
		if subject, witness := words(name); subject != want[0] || witness != want[1] {
			t.Errorf("%s: got %q, %q", name, subject, witness)
		}
	}
}

package present

import (
	"testing"

	"lode/cmd/internal/library"
	"lode/units"
	"lode/units/frame"
)

// sweep is a value that can be laid out as named columns, and is more than that.
type sweep struct{ points frame.Frame }

func (s sweep) Frame() frame.Frame { return s.points }
func (s sweep) String() string     { return "a sweep" }

// TestLongColumns wants plain columns to be a table, and values with many rows to be told in words.
func TestLongColumns(t *testing.T) {
	rows := func(n int) frame.Frame {
		lengths := make([]any, n)
		for i := range lengths {
			lengths[i] = units.Length(i)
		}
		return frame.Frame{Title: "Sizes", Columns: []frame.Column{frame.Collect("size", lengths)}}
	}
	for _, c := range []struct {
		value any
		table bool
	}{{rows(51), true}, {rows(longestFrame), true}, {rows(longestFrame + 1), false}, {sweep{rows(longestTable)}, true}, {sweep{rows(51)}, false}, {frame.Frame{}, false}} {
		if s := Value("x", c.value); (s.Table != nil) != c.table || s.Table == nil && s.Text == "" {
			t.Errorf("%T of %d rows: table %v, text %q", c.value, c.value.(frame.Source).Frame().Rows(), s.Table != nil, s.Text)
		}
	}
}

// TestCautions wants cautions of what was called, each text once and as a sentence.
func TestCautions(t *testing.T) {
	topics := []library.Topic{{Name: "a.B", Caution: "über all: mind it"}, {Name: "a.C", Caution: "über all: mind it"}, {Name: "a.D", Caution: "not called"}}
	got := cautions(topics, map[string]bool{"a.B": true, "a.C": true})
	if len(got) != 1 || got[0].Name != "a.B" || got[0].Text != "Über all: mind it" {
		t.Errorf("got %v", got)
	}
}

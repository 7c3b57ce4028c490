package present

import (
	"testing"

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

package library

import (
	"slices"
	"testing"
)

// TestFind asks in the words of the bench for what is in the library.
func TestFind(t *testing.T) {
	for _, c := range []struct {
		words []string
		want  string
	}{
		{[]string{"gauge"}, "wire.Identify"}, {[]string{"rewind"}, "coil.Wind"}, {[]string{"cancels", "hum"}, "coil.Correction"},
		{[]string{"stack"}, "coil.Stacked"}, {[]string{"tap"}, "coil.Winding.Tapped"}, {[]string{"DCR"}, "coil.Winding.Resistance"},
		{[]string{"phantom"}, "load.Line.Desk"}, {[]string{"the", "weight"}, "wire.Wire.Mass"}, {[]string{"knobs"}, "knob"},
	} {
		if found := Find(c.words); !slices.ContainsFunc(found[:min(len(found), 12)], func(t Topic) bool { return t.Name == c.want }) {
			t.Errorf("%q: %s is not among the first", c.words, c.want)
		}
	}
	if found := Find([]string{"xyzzy"}); len(found) > 0 {
		t.Errorf("got %s for no word", found[0].Name)
	}
	if hint := Meant("coil.Wnd"); hint != "did you mean coil.Wind?" {
		t.Errorf("got %q", hint)
	}
}

func TestStem(t *testing.T) {
	for word, want := range map[string]string{"winding": "wind", "Winds": "wind", "tapped": "tap", "taps": "tap", "gauges": "gaug", "gauge": "gaug", "hum": "hum", "is": "is"} {
		if got := stem(word); got != want {
			t.Errorf("%s: got %s, want %s", word, got, want)
		}
	}
}

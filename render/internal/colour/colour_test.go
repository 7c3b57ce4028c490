package colour

import (
	"math"
	"testing"
)

// The sRGB primaries in OKLab, as CSS Color Module Level 4 (W3C) lists them for its oklab()
// samples: red 0.628, 0.225, 0.126; given from memory to three digits.
func TestLab(t *testing.T) {
	for text, want := range map[string]Lab{"#ffffff": {1, 0, 0}, "#000000": {0, 0, 0}, "#ff0000": {0.628, 0.225, 0.126}} {
		c, err := Hex(text)
		if got := c.Lab(); err != nil || got.Distance(want) > 1e-3 {
			t.Errorf("%s: got %v (%v), want %v", text, got, err, want)
		}
	}
	for i := range 64 {
		c := RGB{float64(i%4) / 3, float64(i/4%4) / 3, float64(i/16) / 3}
		back := c.Lab().RGB()
		if math.Abs(back.R-c.R)+math.Abs(back.G-c.G)+math.Abs(back.B-c.B) > 1e-6 {
			t.Errorf("%v: came back as %v", c, back)
		}
		if read, err := Hex(c.Hex()); err != nil || read.Hex() != c.Hex() {
			t.Errorf("%s: came back as %s, %v", c.Hex(), read.Hex(), err)
		}
	}
}

func TestHexRefuses(t *testing.T) {
	if _, err := Hex("navy"); err == nil {
		t.Error("a name was taken for #rrggbb")
	}
}

// WCAG 2.2: black on white is 21:1, and #767676 on white is the well-known lightest grey
// that reaches 4.5:1.
func TestContrast(t *testing.T) {
	white, grey, lighter := must("#ffffff"), must("#767676"), must("#777777")
	if got := Contrast(RGB{}, white); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white: got %g, want 21", got)
	}
	if a, b := Contrast(grey, white), Contrast(lighter, white); a < 4.5 || b >= 4.5 {
		t.Errorf("greys at the limit of 4.5: got %.3f and %.3f", a, b)
	}
}

// A dichromat sees greys as greys: every row of the matrices sums to one.
func TestVisionsKeepGreys(t *testing.T) {
	for _, v := range Visions() {
		if got := v.See(RGB{0.5, 0.5, 0.5}); math.Abs(got.R-0.5)+math.Abs(got.G-0.5)+math.Abs(got.B-0.5) > 1e-5 {
			t.Errorf("%s: grey looks like %v", v.Name, got)
		}
	}
	red, green := RGB{0.5, 0, 0}.Lab(), RGB{0, 0.5, 0}.Lab()
	for _, v := range Visions()[1:3] {
		r, g := v.See(RGB{0.5, 0, 0}).Lab(), v.See(RGB{0, 0.5, 0}).Lab()
		if math.Hypot(r.A-g.A, r.B-g.B) > 0.4*math.Hypot(red.A-green.A, red.B-green.B) {
			t.Errorf("%s: red and green keep their difference in hue", v.Name)
		}
	}
}

func TestThemes(t *testing.T) {
	light, dark := Light(), Dark()
	onPaper := light
	onPaper.Paper = must("#ffffff")
	for name, theme := range map[string]Theme{"light": light, "dark": dark, "print": onPaper} {
		if got := Contrast(theme.Ink, theme.Paper); got < 12 {
			t.Errorf("%s: ink has contrast %.2f, want 12", name, got)
		}
		for _, ground := range []RGB{theme.Paper, theme.Wash} {
			if got := Contrast(theme.Quiet, ground); got < 4.5 {
				t.Errorf("%s: quiet text has contrast %.2f, want 4.5", name, got)
			}
		}
		for i, c := range theme.Series {
			if got := Contrast(c, theme.Paper); got < 4.5 || !c.Shown() {
				t.Errorf("%s: series %d %s has contrast %.2f, want 4.5", name, i+1, c.Hex(), got)
			}
		}
		if got := Apart(theme.Series); got < 0.11 {
			t.Errorf("%s: two series are only %.3f apart to some eyes, want 0.11", name, got)
		}
	}
}

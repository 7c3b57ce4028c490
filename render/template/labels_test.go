package template

import (
	"math"
	"testing"
)

// TestNumbersAreClear wants the number of every hole clear of all lines and other numbers, and nearest to its own hole.
func TestNumbersAreClear(t *testing.T) {
	narrow := [][5]any{{"flange", "cut", -39.0, 0.0, 16.0}, {"flange", "cut", 39.0, 0.0, 16.0}, {"core", "mark", -39.0, 0.0, 6.0}, {"core", "mark", 39.0, 0.0, 6.0}}
	for i := range 8 {
		narrow = append(narrow, [5]any{"pole", "drill", 9.5 * (float64(i) - 3.5), 0.0, 5.0})
	}
	narrow = append(narrow, [5]any{"hole", "drill", 44.5, 0.0, 3.0}, [5]any{"hole", "drill", -44.5, 0.0, 3.0})
	for name, d := range map[string]Template{"narrow core": draw(t, rows(narrow...)), "wide": draw(t, console(90)), "turned": draw(t, console(170))} {
		p, placed := pen{layout: d.sheet}, d.labels()
		if len(placed) != len(holes(d.parts)) {
			t.Fatalf("%s: %d numbers for %d holes", name, len(placed), len(holes(d.parts)))
		}
		for i, l := range placed {
			if room := p.room(l, p.lying(d.parts), math.Inf(-1)); room < 0.2 {
				t.Errorf("%s: number %s comes within %.2f mm of a line", name, l.text, room)
			}
			if gap := apart(l, append(placed[:i:i], placed[i+1:]...)); gap < 0.2 {
				t.Errorf("%s: number %s comes within %.2f mm of another", name, l.text, gap)
			}
			nearest, least := 0, math.Inf(1)
			for _, h := range holes(d.parts) {
				c := p.at(h.points[0])
				if away := math.Hypot(l.middle.x-c.x, l.middle.y-c.y) - h.diameter/2; away < least {
					nearest, least = h.number, away
				}
			}
			if nearest != i+1 {
				t.Errorf("%s: number %s stands nearest to hole %d", name, l.text, nearest)
			}
		}
	}
}

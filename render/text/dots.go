package text

import (
	"math"
	"strings"

	"lode/render/internal/chart"
)

// dots is a field of braille characters, two by four dots each.
type dots struct {
	columns, rows int
	bits          [][]rune
	owner         [][]int
	ends          []string // letters right of a row
	endOwner      []int
}

func newDots(columns, rows int) *dots {
	d := &dots{columns: max(columns, 8), rows: rows, ends: make([]string, rows), endOwner: make([]int, rows)}
	for range rows {
		d.bits = append(d.bits, make([]rune, d.columns))
		d.owner = append(d.owner, make([]int, d.columns))
	}
	return d
}

// patterns are the dashes of the curves, in dots on and off.
var patterns = [][2]int{{1, 0}, {5, 2}, {1, 1}, {3, 3}, {8, 2}, {1, 3}}

// curve walks along a series dot by dot.
func (d *dots) curve(p chart.Panel, s chart.Series, index int) {
	wide, high := float64(2*d.columns-1), float64(4*d.rows-1)
	steps, lastRow := 0, -1
	var before *chart.Point
	for i := range s.X {
		at := chart.Point{X: p.X.At(s.X[i]) * wide, Y: (1 - p.Y.At(s.Y[i])) * high}
		if math.IsNaN(at.X+at.Y) || math.IsInf(at.X+at.Y, 0) {
			before = nil
			continue
		}
		if before == nil {
			before = &at
		}
		n := int(min(max(math.Abs(at.X-before.X), math.Abs(at.Y-before.Y), 1), 5000))
		for k := 1; k <= n; k++ {
			t := float64(k) / float64(n)
			if r := d.dot(before.X+t*(at.X-before.X), before.Y+t*(at.Y-before.Y), index, &steps); r >= 0 {
				lastRow = r
			}
		}
		before = &at
	}
	d.end(lastRow, index)
}

// dot sets one dot unless the dash pattern leaves it out, and returns its row.
func (d *dots) dot(x, y float64, index int, steps *int) int {
	cx, cy := int(math.Round(x)), int(math.Round(y))
	if cx < 0 || cy < 0 || cx >= 2*d.columns || cy >= 4*d.rows {
		return -1
	}
	*steps++
	pattern := patterns[index%len(patterns)]
	if *steps%(pattern[0]+pattern[1]) < pattern[0] {
		d.bits[cy/4][cx/2] |= [2][4]rune{{1, 2, 4, 64}, {8, 16, 32, 128}}[cx%2][cy%4]
		d.owner[cy/4][cx/2] = index
	}
	return cy / 4
}

// end notes the curve's letter in the nearest free row to where it ends.
func (d *dots) end(row, index int) {
	if row < 0 {
		return
	}
	for _, r := range []int{row, row - 1, row + 1, row - 2, row + 2} {
		if r >= 0 && r < d.rows && d.ends[r] == "" {
			d.ends[r], d.endOwner[r] = letterOf(index), index
			return
		}
	}
}

func (s Style) dotRow(d *dots, r int) string {
	var b strings.Builder
	for c := 0; c < d.columns; {
		owner, from := d.owner[r][c], c
		var run strings.Builder
		for ; c < d.columns && (d.owner[r][c] == owner || d.bits[r][c] == 0); c++ {
			if d.bits[r][c] == 0 {
				run.WriteRune(' ')
				continue
			}
			run.WriteRune(0x2800 + d.bits[r][c])
		}
		if from == c {
			break
		}
		b.WriteString(s.in(colour(owner), run.String()))
	}
	if d.ends[r] != "" {
		b.WriteString(" " + s.in(colour(d.endOwner[r]), d.ends[r]))
	}
	return b.String()
}

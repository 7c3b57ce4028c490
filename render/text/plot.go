package text

import (
	"math"
	"strings"

	"lode/render/internal/chart"
	"lode/render/table"
)

// Chart is a drawing of curves; figure.Figure is one.
type Chart interface {
	Title() string
	Panels() []chart.Panel
}

// Chart draws curves in braille dots, two by four in each character, between labelled axes.
// Curves are told apart by letter at the end and in the key, by dash, and by colour where
// there is any.
func (s Style) Chart(c Chart) string {
	var parts []string
	if c.Title() != "" {
		parts = append(parts, s.in(strong, clean(c.Title())))
	}
	for _, p := range c.Panels() {
		if len(p.Series) > 0 {
			parts = append(parts, s.panel(p))
		}
	}
	return strings.Join(parts, "\n")
}

func (s Style) panel(p chart.Panel) string {
	rows := 12
	if s.width() < 50 {
		rows = 8
	}
	labels, margin := rowLabels(p.Y, rows)
	d := newDots(s.width()-margin-4, rows)
	for i, series := range p.Series {
		d.curve(p, series, i)
	}
	lines := []string{s.in(quiet, clean(p.Y.Title()))}
	for r := range rows {
		label := strings.Repeat(" ", margin-table.Width(labels[r])) + labels[r]
		edge := "│"
		if labels[r] != "" {
			edge = "┤"
		}
		lines = append(lines, strings.TrimRight(label+s.in(quiet, edge)+s.dotRow(d, r), " "))
	}
	lines = append(lines, s.under(p.X, margin, d.columns)...)
	return strings.Join(append(lines, s.key(p)...), "\n")
}

// rowLabels puts each label of the vertical axis in the row nearest to it.
func rowLabels(a chart.Axis, rows int) (labels []string, margin int) {
	labels = make([]string, rows)
	for _, t := range a.Ticks(max(2, rows/2)) {
		r := int(math.Round((1 - a.At(t.At)) * float64(rows-1)))
		if t.Label != "" && r >= 0 && r < rows && labels[r] == "" {
			labels[r] = clean(t.Label)
			margin = max(margin, table.Width(labels[r]))
		}
	}
	return labels, margin
}

// under writes the horizontal axis: a rule with a notch at each label, the labels, the title.
func (s Style) under(a chart.Axis, margin, columns int) []string {
	rule := []rune(strings.Repeat("─", columns))
	line := []rune(strings.Repeat(" ", margin+columns+4))
	free := 0
	for _, t := range a.Ticks(max(2, columns/9)) {
		if t.Label == "" {
			continue
		}
		at := int(math.Round(a.At(t.At) * float64(columns-1)))
		label := []rune(clean(t.Label))
		left := min(max(margin+1+at-len(label)/2, 0), len(line)-len(label))
		if left < free {
			continue
		}
		rule[at] = '┬'
		copy(line[left:], label)
		free = left + len(label) + 1
	}
	pad := strings.Repeat(" ", margin)
	title := clean(a.Title())
	right := strings.Repeat(" ", max(0, margin+1+columns-table.Width(title)))
	return []string{pad + s.in(quiet, "└"+string(rule)), strings.TrimRight(string(line), " "), s.in(quiet, right+title)}
}

// key names the curves and their marked points.
func (s Style) key(p chart.Panel) []string {
	var lines []string
	for i, series := range p.Series {
		text := clean(series.Label)
		var notes []string
		for _, n := range series.Notes {
			notes = append(notes, clean(n.Name+" "+p.X.Value(n.X)))
		}
		if len(notes) > 0 {
			text += ": " + strings.Join(notes, ", ")
		}
		for k, l := range wrap(text, s.width()-4) {
			letter := " "
			if k == 0 {
				letter = s.in(colour(i), letterOf(i))
			}
			lines = append(lines, letter+"  "+l)
		}
	}
	return lines
}

func letterOf(i int) string { return string(rune('a' + i%26)) }

// colour returns the escape code of a series: six of the terminal's own colours.
func colour(i int) string { return []string{"36", "33", "35", "32", "34", "31"}[i%6] }

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

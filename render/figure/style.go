package figure

import (
	"fmt"
	"strings"

	"lode/render/internal/colour"
)

// Style returns the style sheet that SVG and Narrow are drawn with. A page includes it once;
// it needs the page's own names for nothing.
func Style() string {
	light, dark := colour.Light(), colour.Dark()
	return `.figure{` + variables(light) + `font-family:system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif;display:block;width:100%;height:auto}
.figure text{fill:var(--figure-ink);stroke:none;font-variant-numeric:tabular-nums}
.figure .quiet{fill:var(--figure-quiet)}
.figure .line{fill:none;stroke:var(--figure-ink);stroke-linejoin:round;stroke-linecap:butt}
.figure .line.quiet{fill:none;stroke:var(--figure-quiet)}
.figure .grid{stroke:var(--figure-line)}
.figure .area{stroke:none;fill-rule:evenodd;fill:var(--figure-ink)}
.figure .paper{fill:var(--figure-paper)}
.figure .area.grid{fill:var(--figure-line)}
.figure .tint{fill-opacity:.16}
.figure .shade{fill-opacity:.13}
` + rows(len(light.Series)) + `.figure text.halo{stroke:var(--figure-paper);stroke-width:3px;stroke-linejoin:round;paint-order:stroke}
@media (prefers-color-scheme:dark){.figure{` + variables(dark) + `}}
@media print{.figure{` + variables(light) + `--figure-paper:#ffffff;}}
`
}

func variables(t colour.Theme) string {
	var b strings.Builder
	fmt.Fprintf(&b, "--figure-paper:%s;--figure-ink:%s;--figure-quiet:%s;--figure-line:%s;", t.Paper.Hex(), t.Ink.Hex(), t.Quiet.Hex(), t.Line.Hex())
	for i, c := range t.Series {
		fmt.Fprintf(&b, "--figure-%d:%s;", i+1, c.Hex())
	}
	return b.String()
}

func rows(count int) string {
	var b strings.Builder
	for i := 1; i <= count; i++ {
		fmt.Fprintf(&b, ".figure .row%d{stroke:var(--figure-%d)}.figure .area.row%d,.figure text.row%d{stroke:none;fill:var(--figure-%d)}.figure .area.row%d{stroke:none}\n", i, i, i, i, i, i)
	}
	return b.String()
}

// row returns the class of a series.
func row(n int) ink { return ink(fmt.Sprintf("row%d", n%colour.SeriesCount+1)) }

// dashes tell series apart without colour: one pattern a row, and others when the colours
// begin again.
var dashes = [...][]float64{nil, {8, 3}, {2.5, 2.5}, {9, 3, 2, 3}, {14, 4}, {5, 2, 1.5, 2, 1.5, 2}, {3, 5}}

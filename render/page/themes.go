package page

import (
	"fmt"

	"lode/render/internal/colour"
)

// themes declares the page's colours for bright and dark screens and for paper.
func themes() string {
	light, dark := declare(colour.Light()), declare(colour.Dark())
	return fmt.Sprintf(":root{color-scheme:light dark;%s}\n@media (prefers-color-scheme:dark){:root{%s}}\n@media print{:root{color-scheme:light;%s--paper:#ffffff;--wash:#ffffff}}\n", light, dark, light)
}

func declare(t colour.Theme) string {
	return fmt.Sprintf("--paper:%s;--ink:%s;--quiet:%s;--line:%s;--wash:%s;--link:%s;--wire:%s;--alarm:%s;",
		t.Paper.Hex(), t.Ink.Hex(), t.Quiet.Hex(), t.Line.Hex(), t.Wash.Hex(), t.Series[0].Hex(), t.Series[1].Hex(), t.Series[4].Hex())
}

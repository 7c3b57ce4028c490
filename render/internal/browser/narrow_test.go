package browser

import (
	"strings"
	"testing"

	"lode/render/page"
	"lode/render/table"
)

// broken complains of short values that are broken into lines, of line numbers that do not stand beside their value,
// of names in a list that run into the text beside them, and of knobs without a way to turn.
const broken = `(() => {
  const bad = [], lines = e => { const r = document.createRange(); r.selectNodeContents(e); return new Set([...r.getClientRects()].map(b => Math.round(b.top))).size; };
  for (const o of document.querySelectorAll(".result output")) {
    const name = o.parentNode.querySelector("code").textContent, way = o.parentNode.querySelector(".way");
    if (o.textContent.length < 24 && lines(o) > 1) bad.push("the value of " + name + " takes " + lines(o) + " lines");
    if (way && Math.abs(way.getBoundingClientRect().bottom - o.getBoundingClientRect().bottom) > 9) bad.push("the line of " + name + " is not beside its value");
    if (name.length < 12 && lines(o.parentNode.querySelector("code")) > 1) bad.push(name + " is broken");
  }
  for (const t of document.querySelectorAll("dt")) {
    const r = document.createRange(), d = t.nextElementSibling.getBoundingClientRect();
    r.selectNodeContents(t);
    for (const b of r.getClientRects()) if (b.right > d.left + 1 && b.bottom > d.top + 1) bad.push(t.textContent + " runs into its text");
  }
  for (const k of document.querySelectorAll(".knob input")) {
    k.disabled = false;
    if (k.getBoundingClientRect().width < 120) bad.push("a knob is " + k.getBoundingClientRect().width + " wide");
  }
  for (const c of document.querySelectorAll("tbody th.wordy")) if (lines(c) > 3) bad.push(c.textContent + " takes " + lines(c) + " lines");
  for (const c of document.querySelectorAll("caption")) {
    const r = document.createRange();
    r.selectNodeContents(c);
    if (r.getBoundingClientRect().right > innerWidth) bad.push(c.textContent + " is cut");
  }
  return bad;
})()`

// TestNothingBroken looks at long names beside short values, on wide and narrow screens.
func TestNothingBroken(t *testing.T) {
	for _, width := range []int64{1200, 390, 320} {
		v := open(t, longNames(t), width, "light")
		v.ask(t, "broken", broken)
		v.ask(t, "width", `document.documentElement.scrollWidth > innerWidth ? ["the page is too wide"] : []`)
	}
}

func longNames(t *testing.T) page.Document {
	cell := page.Cell{Source: "x", Line: 1}
	for label, value := range map[string]string{
		"load.From(stack).Volume(500*kΩ).Cable(5*metre).Input(1*MΩ).Resonance()": "4.256 kHz",
		"disc":                    "piezo element of 23.64 nF, 374 pC for 1 N",
		"disc.VoltagePerNewton()": "15.82 mV",
		"pair.Correction(hum, 2)": "winding 2: +2516 turns, to 3716; leaves -85.46 dB; does not fit",
	} {
		cell.Results = append(cell.Results, page.Result{Label: label, Value: value, Line: 1})
	}
	cell.Results = append(cell.Results, page.Result{Table: wordyTable(t), Line: 1})
	cautions := page.Cautions{{Name: "coil.Winding.BuildSheet", Text: "Solder burns and its fumes harm."}, {Name: "coil.Winding.CoverCapacitance", Text: "Covers have sharp edges, which cut."}}
	turning := page.Turning{Knobs: []page.Knob{{Name: "tone capacitor", Stops: []string{"1 µF", "2.2 µF", "4.7 µF"}, At: 1, Base: 1}}}
	return page.Document{Title: "Long names", Blocks: []page.Block{cautions, cell}, Turning: &turning}
}

// wordyTable has names of some words beside a text of many.
func wordyTable(t *testing.T) *table.Grid {
	long := "Wear eye protection: fine wire whips when it breaks. Keep hair, sleeves and gloves away from the winder."
	of, err := table.Of(table.Head("Quantity", "Value"), table.Row("Direction, seen from the strings", "counterclockwise"), table.Row("Cautions", long))
	if err != nil {
		t.Fatal(err)
	}
	g := of.Titled("A build sheet under a title that does not fit into one line of a narrow screen").Grid()
	g.Heads = append(g.Heads, table.Header{Name: "Value", Numeric: true})
	for i := range g.Rows {
		g.Rows[i] = append(g.Rows[i], table.Cell{Whole: strings.Repeat("1", 30)})
	}
	return &g
}

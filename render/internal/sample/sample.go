// Package sample is the page that tests look at: an invented workshop's notebook about an
// invented coil for an eight-string console steel. Nothing outside tests imports it.
package sample

import (
	"lode/render/figure"
	"lode/render/formula"
	"lode/render/internal/example"
	"lode/render/page"
	"lode/render/table"
	"lode/units"
)

// must is for inputs written below: they are right or the tests cannot begin.
func must[T any](v T, err error) T {
	if err != nil {
		panic("sample: " + err.Error())
	}
	return v
}

func working() formula.Working {
	f0 := func(l, c formula.Node) formula.Node {
		return formula.Quotient(formula.Number("1", ""), formula.Product(formula.Product(formula.Number("2", ""), formula.Name("π")), formula.Root(formula.Product(l, c))))
	}
	return formula.Working{Name: "f0", Formula: f0(formula.Name("L"), formula.Sum(formula.Name("C_coil"), formula.Name("C_cable"))),
		Filled: f0(formula.Number("3.4", "H"), formula.Sum(formula.Number("139", "pF"), formula.Number("500", "pF"))), Result: "3.415", Unit: "kHz"}
}

// Document returns the sample.
func Document() page.Document {
	found, rewound, half := example.Coil("as found", 3.4, 7200, 140e-12), example.Coil("rewound, 5 m of cable", 3.4, 7200, 640e-12), example.Coil("half the turns", 0.85, 3500, 640e-12)
	variants := must(table.Of(table.Head("variant", "turns", "resistance", "inductance", "resonance", "note"),
		table.Row("as found", 8000, units.Resistance(7200), units.Inductance(3.4), units.Frequency(7300), "one lead loose"),
		table.Row("rewound", 9250, units.Resistance(8312.4), units.Inductance(4.55), units.Frequency(6105), ""),
		table.Row("half the turns", 4000, units.Resistance(3500), units.Inductance(0.85), units.Frequency(12e3), "for the low strings"))).Titled("Three ways to wind it")
	side, turned := variants.Grid(), variants.Transposed().Grid()
	d := page.Document{Title: "A coil for the console steel", Lang: "en"}
	d.Blocks = []page.Block{
		page.Prose{Source: "# A coil for the console steel\n\nThe eight-string console needs a coil that fits the old housing. We compare *three* windings; the wire table is from [a standard](https://www.iec.ch/).\n\n## What we start from\n\nA bobbin of 71 mm and enamelled wire of 0.063 mm.\n\n- the housing stays\n- the lead is `5 m` of cable\n"},
		page.Cell{Source: "w := wire.AWG(42) // plain enamel\nb := coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, Flange: 17*mm}\nc := coil.Wind(b, w, 8000)\nc.Resistance()\nc.Inductance()\nf0 := 1 / (2*π*sqrt(L*C))\nf0",
			Results: []page.Result{{Label: "c.Resistance()", Value: units.Resistance(7200).String()}, {Label: "c.Inductance()", Value: units.Inductance(3.4).String()}, {Label: "f0", Value: units.Frequency(7312).String()}}},
		page.Cell{Source: "f0", Results: []page.Result{{Formula: working().MathML()}}},
		page.Cautions{{Name: "Solder and fumes", Text: "Work in moving air, keep the iron in its stand, wash your hands before you eat."}, {Name: "Mains gear", Text: "Leave work on mains wiring to a licensed electrician and follow the local code."}},
		page.Prose{Source: "## Side by side\n"},
		page.Cell{Source: "variants", Results: []page.Result{{Label: "variants", Table: &side}}},
		page.Cell{Source: "variants.Transposed()", Results: []page.Result{{Label: "variants.Transposed()", Table: &turned}}},
		page.Cell{Source: "figure.Response(found, rewound, half)", Results: []page.Result{{Figure: must(figure.Response(found, rewound, half)).Titled("Three windings at the amplifier").Captioned("Into 250 kΩ; the cable moves the peak more than the turns do.")}}},
		page.Prose{Source: "#### A heading that skips levels\n\nAnd <b>raw HTML</b>, a [bad link](javascript:alert(1)), and ![a picture](https://example.org/x.png).\n\n<script>alert(1)</script>\n"},
		page.Cell{Source: "figure.Lines(build)", Results: []page.Result{{Figure: must(figure.Lines(example.Winding()))}}},
		page.Cell{Source: "fmt.Println(report)", Results: []page.Result{{Label: "report", Lines: "first layer   212 turns\nlast layer     88 turns"}}},
		page.Cell{Source: "x := R + L", Fault: &page.Fault{Place: "console.md, line 41, column 6", What: "sum: quantities of different kinds", Source: "x := R + L", Start: 5, End: 10, Got: "resistance + inductance", Want: "two quantities of one kind", Hint: "an inductance becomes a resistance when multiplied by an angular frequency"}},
	}
	d.Blocks = append(d.Blocks, gallery()...)
	d.Methods = []page.Method{
		{Name: "coil.Wind", What: "lays a winding on a bobbin, layer by layer.", Source: "F. E. Terman, Radio Engineers' Handbook, 1943, section 2", Valid: "round wire, layers wound evenly", Accuracy: "2 % of the turns"},
		{Name: "wire.AWG", What: "gives the diameter of a gauge number.", Source: "ASTM B258", Accuracy: "to the printed digit"},
	}
	d.Record = []page.Entry{{Name: "lode", Text: "development version"}, {Name: "notebook", Text: "sha256 5a0c…e1"}, {Name: "seed", Text: "1"}}
	return d
}

// gallery is one figure of each of the other kinds.
func gallery() []page.Block {
	figures := []figure.Figure{
		must(must(figure.Response(example.Coil("as found", 3.4, 7200, 140e-12))).WithPhase()),
		must(figure.Impedance(example.Impedance("as found", 3.4, 7200, 140e-12), example.Impedance("half the turns", 0.85, 3500, 140e-12))),
		must(figure.Histogram(example.Spread())), must(figure.Bars(example.Budget())),
		must(figure.Map(example.Field())), must(figure.Outline(example.Section())),
	}
	var blocks []page.Block
	for _, f := range figures {
		blocks = append(blocks, page.Cell{Source: "shown", Results: []page.Result{{Figure: f}}})
	}
	return blocks
}

package page

// This file builds the sample page that the tests look at: an invented workshop's notebook
// about an invented coil for an eight-string console steel.

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"lode/render/figure"
	"lode/render/table"
	"lode/units"
	"lode/units/frame"
)

func kind(name string) units.Kind {
	k, _ := units.KindNamed(name)
	return k
}

func coil(title string, l, r, c float64) frame.Frame {
	const n = 400
	hertz, level := make([]float64, n), make([]float64, n)
	top, last := 0, 0
	for i := range n {
		hertz[i] = 20 * math.Pow(1000, float64(i)/(n-1))
		s := complex(0, 2*math.Pi*hertz[i])
		level[i] = -20 * math.Log10(cmplx.Abs(1+s*complex(r*c, 0)+s*s*complex(l*c, 0)+s*complex(l/250e3, 0)))
		if level[i] > level[top] {
			top = i
		}
		if level[i] > -3 {
			last = i
		}
	}
	return frame.Frame{Title: title,
		Columns: []frame.Column{frame.Of("frequency", kind("Frequency"), hertz), frame.Of("level", kind("Level"), level)},
		Marks:   []frame.Mark{{Name: "resonance", Of: "level", X: hertz[top], Y: level[top]}, {Name: "−3 dB", Of: "level", X: hertz[last], Y: level[last]}},
	}
}

func need[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func winding() frame.Frame {
	var turns, ohms, henries []float64
	for n := 500.0; n <= 9500; n += 250 {
		turns, ohms, henries = append(turns, n), append(ohms, 0.62*n*(1+n/3e4)), append(henries, 4.1e-8*n*n)
	}
	return frame.Frame{Title: "While the winding grows", Columns: []frame.Column{
		frame.Of("turns", units.Number(), turns), frame.Of("resistance", kind("Resistance"), ohms), frame.Of("inductance", kind("Inductance"), henries)}}
}

func sample(t testing.TB) Document {
	fig := need[figure.Figure](t)
	tab := need[table.Table](t)
	found, rewound, half := coil("as found", 3.4, 7200, 140e-12), coil("rewound, 5 m of cable", 3.4, 7200, 640e-12), coil("half the turns", 0.85, 3500, 640e-12)
	variants := tab(table.Of(table.Head("variant", "turns", "resistance", "inductance", "resonance", "note"),
		table.Row("as found", 8000, units.Resistance(7200), units.Inductance(3.4), units.Frequency(7300), "one lead loose"),
		table.Row("rewound", 9250, units.Resistance(8312.4), units.Inductance(4.55), units.Frequency(6105), ""),
		table.Row("half the turns", 4000, units.Resistance(3500), units.Inductance(0.85), units.Frequency(12e3), "for the low strings"))).Titled("Three ways to wind it")
	side, turned := variants.Grid(), variants.Transposed().Grid()
	d := Document{Title: "A coil for the console steel", Lang: "en"}
	d.Blocks = []Block{
		Prose{"# A coil for the console steel\n\nThe eight-string console needs a coil that fits the old housing. We compare *three* windings; the wire table is from [a standard](https://www.iec.ch/).\n\n## What we start from\n\nA bobbin of 71 mm and enamelled wire of 0.063 mm.\n\n- the housing stays\n- the lead is `5 m` of cable\n"},
		Cell{Source: "w := wire.AWG(42) // plain enamel\nb := coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, Flange: 17*mm}\nc := coil.Wind(b, w, 8000)\nc.Resistance()\nc.Inductance()\nf0 := 1 / (2*π*sqrt(L*C))\nf0",
			Results: []Result{{Label: "c.Resistance()", Value: units.Resistance(7200).String()}, {Label: "c.Inductance()", Value: units.Inductance(3.4).String()}, {Label: "f0", Value: units.Frequency(7312).String()}}},
		Cautions{{"Solder and fumes", "Work in moving air, keep the iron in its stand, wash your hands before you eat."}, {"Mains gear", "Leave work on mains wiring to a licensed electrician and follow the local code."}},
		Prose{"## Side by side\n"},
		Cell{Source: "variants", Results: []Result{{Label: "variants", Table: &side}}},
		Cell{Source: "variants.Transposed()", Results: []Result{{Label: "variants.Transposed()", Table: &turned}}},
		Cell{Source: "figure.Response(found, rewound, half)", Results: []Result{{Figure: fig(figure.Response(found, rewound, half)).Titled("Three windings at the amplifier").Captioned("Into 250 kΩ; the cable moves the peak more than the turns do.")}}},
		Prose{"#### A heading that skips levels\n\nAnd <b>raw HTML</b>, a [bad link](javascript:alert(1)), and ![a picture](https://example.org/x.png).\n\n<script>alert(1)</script>\n"},
		Cell{Source: "figure.Lines(build)", Results: []Result{{Figure: fig(figure.Lines(winding()))}}},
		Cell{Source: "fmt.Println(report)", Results: []Result{{Label: "report", Lines: "first layer   212 turns\nlast layer     88 turns"}}},
		Cell{Source: "x := R + L", Fault: &Fault{Place: "console.md, line 41, column 6", What: "sum: quantities of different kinds", Source: "x := R + L", Start: 5, End: 10, Got: "resistance + inductance", Want: "two quantities of one kind", Hint: "an inductance becomes a resistance when multiplied by an angular frequency"}},
	}
	for i := range 3 {
		d.Blocks = append(d.Blocks, Cell{Source: "figure.Response(found)", Results: []Result{{Figure: fig(figure.Response(coil(fmt.Sprintf("coil %d", i+1), 2+float64(i), 7000, 300e-12)))}}})
	}
	d.Methods = []Method{
		{Name: "coil.Wind", What: "lays a winding on a bobbin, layer by layer.", Source: "F. E. Terman, Radio Engineers' Handbook, 1943, section 2", Valid: "round wire, layers wound evenly", Accuracy: "2 % of the turns"},
		{Name: "wire.AWG", What: "gives the diameter of a gauge number.", Source: "ASTM B258", Accuracy: "to the printed digit"},
	}
	d.Record = []Entry{{"lode", "development version"}, {"notebook", "sha256 5a0c…e1"}, {"seed", "1"}}
	return d
}

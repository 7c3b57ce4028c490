package figure

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"lode/units"
	"lode/units/frame"
)

func kindOf(name string) units.Kind {
	k, _ := units.KindNamed(name)
	return k
}

// field is the flux density above an invented bar magnet, roughly.
func field() frame.Frame {
	var x, y, b []float64
	for j := range 31 {
		for i := range 61 {
			px, py := (float64(i)-30)*1e-3, float64(j)*0.5e-3
			x, y = append(x, px), append(y, py)
			d := func(at float64) float64 { return 1 / (1 + ((px-at)*(px-at)+py*py)/1e-4) }
			b = append(b, 0.08*(d(-12e-3)+0.7*d(12e-3)))
		}
	}
	return frame.Frame{Title: "Flux density above the poles", Columns: []frame.Column{
		frame.Of("along", kindOf("Length"), x), frame.Of("height", kindOf("Length"), y), frame.Of("flux density", kindOf("FluxDensity"), b)}}
}

func section() frame.Frame {
	names, x, y := []string{}, []float64{}, []float64{}
	add := func(name string, left, bottom, right, top float64) {
		for _, c := range [][2]float64{{left, bottom}, {right, bottom}, {right, top}, {left, top}} {
			names, x, y = append(names, name), append(x, c[0]*1e-3), append(y, c[1]*1e-3)
		}
		names, x, y = append(names, name), append(x, math.NaN()), append(y, math.NaN())
	}
	add("flange", -9, 0, 9, 1.5)
	add("flange", -9, 12, 9, 13.5)
	add("winding", -7, 1.5, -3, 12)
	add("winding", 3, 1.5, 7, 12)
	add("core", -3, -2, 3, 14)
	return frame.Frame{Title: "Section through the coil", Columns: []frame.Column{
		{Name: "part", Texts: names}, frame.Of("across", kindOf("Length"), x), frame.Of("height", kindOf("Length"), y)}}
}

func spread() frame.Frame {
	random := rand.New(rand.NewPCG(1, 1))
	ohms := make([]float64, 2000)
	for i := range ohms {
		ohms[i] = 7200 + 180*random.NormFloat64()
	}
	return frame.Frame{Title: "Spread of the resistance", Columns: []frame.Column{frame.Of("resistance", kindOf("Resistance"), ohms)},
		Marks: []frame.Mark{{Name: "5 %", X: 6904}, {Name: "nominal", X: 7200}, {Name: "95 %", X: 7496}}}
}

func budget() frame.Frame {
	return frame.Frame{Title: "What moves the resonance", Columns: []frame.Column{
		{Name: "cause", Texts: []string{"wire diameter", "turns", "cable length", "scatter of the winding", "temperature"}},
		frame.Of("shift", kindOf("Frequency"), []float64{-120, -240, -810, 95, 12})}}
}

func impedance(title string, l, r, c float64) frame.Frame {
	var hertz, ohms, phase []float64
	for i := range 300 {
		f := 20 * math.Pow(1000, float64(i)/299)
		s := complex(0, 2*math.Pi*f)
		z := 1 / (1/(complex(r, 0)+s*complex(l, 0)) + s*complex(c, 0) + 1e-6)
		hertz, ohms, phase = append(hertz, f), append(ohms, math.Hypot(real(z), imag(z))), append(phase, math.Atan2(imag(z), real(z)))
	}
	return frame.Frame{Title: title, Columns: []frame.Column{
		frame.Of("frequency", kindOf("Frequency"), hertz), frame.Of("impedance", kindOf("Resistance"), ohms), frame.Of("phase", kindOf("Angle"), phase)}}
}

// gallery is one figure of every kind.
func gallery(t testing.TB) map[string]Figure {
	t.Helper()
	all := map[string]Figure{}
	add := func(name string, f Figure, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all[name] = f
	}
	f, err := Response(three(400)...)
	add("response", f, err)
	f, err = f.WithPhase()
	add("phase", f, err)
	f, err = Impedance(impedance("as found", 3.4, 7200, 140e-12), impedance("half the turns", 0.85, 3500, 140e-12))
	add("impedance", f, err)
	f, err = Histogram(spread())
	add("histogram", f, err)
	f, err = Bars(budget())
	add("bars", f, err)
	f, err = Map(field())
	add("map", f, err)
	f, err = Outline(section())
	add("outline", f, err)
	return all
}

func TestGallery(t *testing.T) {
	for name, f := range gallery(t) {
		for size, form := range map[string]form{"wide": wide, "narrow": narrow} {
			d := f.drawing("x", form)
			if svg := d.svg(); len(svg) > 25_000 || strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
				t.Errorf("%s, %s: %d bytes, or not a number in it", name, size, len(svg))
			}
			apart(t, name+", "+size, d)
		}
		if f.Title() == "" || len(f.Description()) < 40 {
			t.Errorf("%s: title %q, description %q", name, f.Title(), f.Description())
		}
	}
}

// Package example holds invented data for the tests of the packages that draw: coils of an
// eight-string console steel that nobody has built.
package example

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"lode/units"
	"lode/units/frame"
)

// kind finds a kind by its Go type; the names below are all known.
func kind(name string) units.Kind {
	k, _ := units.KindNamed(name)
	return k
}

// Coil is the level of a coil of l henries and r ohms with c farads across it, into 250 kΩ.
func Coil(title string, l, r, c float64) frame.Frame {
	const n = 400
	hertz, level, phase := make([]float64, n), make([]float64, n), make([]float64, n)
	top, last := 0, 0
	for i := range n {
		hertz[i] = 20 * math.Pow(1000, float64(i)/(n-1))
		s := complex(0, 2*math.Pi*hertz[i])
		h := 1 / (1 + s*complex(r*c, 0) + s*s*complex(l*c, 0) + s*complex(l/250e3, 0))
		level[i], phase[i] = 20*math.Log10(cmplx.Abs(h)), cmplx.Phase(h)
		if level[i] > level[top] {
			top = i
		}
		if level[i] > -3 {
			last = i
		}
	}
	return frame.Frame{Title: title,
		Columns: []frame.Column{frame.Of("frequency", kind("Frequency"), hertz), frame.Of("level", kind("Level"), level), frame.Of("phase", kind("Angle"), phase)},
		Marks:   []frame.Mark{{Name: "resonance", Of: "level", X: hertz[top], Y: level[top]}, {Name: "−3 dB", Of: "level", X: hertz[last], Y: level[last]}},
	}
}

// Winding is how an invented coil grows with its turns.
func Winding() frame.Frame {
	var turns, ohms, henries []float64
	for n := 500.0; n <= 9500; n += 250 {
		turns, ohms, henries = append(turns, n), append(ohms, 0.62*n*(1+n/3e4)), append(henries, 4.1e-8*n*n)
	}
	return frame.Frame{Title: "While the winding grows", Columns: []frame.Column{
		frame.Of("turns", units.Number(), turns), frame.Of("resistance", kind("Resistance"), ohms), frame.Of("inductance", kind("Inductance"), henries)}}
}

// Field is the flux density above an invented bar magnet, roughly.
func Field() frame.Frame {
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
		frame.Of("along", kind("Length"), x), frame.Of("height", kind("Length"), y), frame.Of("flux density", kind("FluxDensity"), b)}}
}

// Section is a section through an invented coil: flanges, winding and core.
func Section() frame.Frame {
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
		{Name: "part", Texts: names}, frame.Of("across", kind("Length"), x), frame.Of("height", kind("Length"), y)}}
}

// Spread is a sample of invented resistances.
func Spread() frame.Frame {
	random := rand.New(rand.NewPCG(1, 1))
	ohms := make([]float64, 2000)
	for i := range ohms {
		ohms[i] = 7200 + 180*random.NormFloat64()
	}
	return frame.Frame{Title: "Spread of the resistance", Columns: []frame.Column{frame.Of("resistance", kind("Resistance"), ohms)},
		Marks: []frame.Mark{{Name: "5 %", X: 6904}, {Name: "nominal", X: 7200}, {Name: "95 %", X: 7496}}}
}

// Budget is what moves an invented resonance.
func Budget() frame.Frame {
	return frame.Frame{Title: "What moves the resonance", Columns: []frame.Column{
		{Name: "cause", Texts: []string{"wire diameter", "turns", "cable length", "scatter of the winding", "temperature"}},
		frame.Of("shift", kind("Frequency"), []float64{-120, -240, -810, 95, 12})}}
}

// Impedance is that of a coil of l henries and r ohms with c farads across it.
func Impedance(title string, l, r, c float64) frame.Frame {
	var hertz, ohms, phase []float64
	for i := range 300 {
		f := 20 * math.Pow(1000, float64(i)/299)
		s := complex(0, 2*math.Pi*f)
		z := 1 / (1/(complex(r, 0)+s*complex(l, 0)) + s*complex(c, 0) + 1e-6)
		hertz, ohms, phase = append(hertz, f), append(ohms, math.Hypot(real(z), imag(z))), append(phase, math.Atan2(imag(z), real(z)))
	}
	return frame.Frame{Title: title, Columns: []frame.Column{
		frame.Of("frequency", kind("Frequency"), hertz), frame.Of("impedance", kind("Resistance"), ohms), frame.Of("phase", kind("Angle"), phase)}}
}

package coil

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"lode/units"
)

var console = Racetrack{CoreLength: 74 * units.Millimetre, CoreWidth: 7 * units.Millimetre, Height: 9 * units.Millimetre, FlangeWidth: 20 * units.Millimetre}

// Straight strings lie a pitch apart; at a slant the row is longer by the secant.
func TestStraightStrings(t *testing.T) {
	for _, slant := range []float64{0, 0.2, -0.3} {
		along := must(Strings{Count: 8, Pitch: 9 * units.Millimetre, Slant: units.Angle(slant)}.Along())
		for i := 1; i < 8; i++ {
			if got, want := float64(along[i]-along[i-1]), 0.009/math.Cos(slant); math.Abs(got-want) > 1e-12 {
				t.Errorf("slant %g: %g, want %g", slant, got, want)
			}
		}
		if math.Abs(float64(along[0]+along[7])) > 1e-12 {
			t.Errorf("slant %g: not in the middle: %v to %v", slant, along[0], along[7])
		}
	}
}

// Fanned strings, against the crossing of two straight lines by determinants.
func TestFannedStrings(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 50 {
		s := Strings{Count: 2 + random.Intn(10), Pitch: units.Length(0.008 + 0.004*random.Float64()), NutPitch: units.Length(0.005 + 0.003*random.Float64()),
			Scale: units.Length(0.5 + 0.3*random.Float64()), FromBridge: units.Length(0.03 + 0.1*random.Float64()), Slant: units.Angle(0.6 * (random.Float64() - 0.5))}
		sin, cos := math.Sincos(float64(s.Slant))
		for i, got := range must(s.Along()) {
			k := float64(i) - float64(s.Count-1)/2
			// string: (0, k·Pitch) to (Scale, k·NutPitch); row: (FromBridge, 0) along (sin, cos)
			dx, dy := float64(s.Scale), k*float64(s.NutPitch-s.Pitch)
			rx, ry := float64(s.FromBridge), -k*float64(s.Pitch) // from the string's end at the bridge to the row's middle
			want := (dx*ry - dy*rx) / (dy*sin - dx*cos)
			if math.Abs(float64(got)-want) > 1e-12 {
				t.Errorf("%+v, string %d: %v, want %g m", s, i+1, got, want)
			}
		}
	}
}

// The outlines have the length and area of the former: the hull's and J. Steiner's terms for the rounding (1840).
func TestPlateOutlines(t *testing.T) {
	mm := units.Millimetre
	for _, f := range []Former{console, Round{CoreDiameter: 12 * mm, Height: 8 * mm, FlangeDiameter: 24 * mm},
		Rectangle{CoreLength: 60 * mm, CoreWidth: 8 * mm, CornerRadius: 2 * mm, Height: 8 * mm, FlangeWidth: 18 * mm},
		Convex{Corners: []Point{{0, 0}, {60 * mm, 0}, {60 * mm, 10 * mm}, {0, 5 * mm}}, Height: 8 * mm, Room: 4 * mm}} {
		shape := must(f.Shape())
		p := must(Flange(f, Drilling{}))
		for i, depth := range []units.Length{shape.Room, 0} {
			long, area := p.parts[i].steiner()
			if math.Abs(long/float64(shape.Perimeter(depth))-1) > 1e-9 || math.Abs(area/float64(shape.Area(depth))-1) > 1e-9 {
				t.Errorf("%v, %s: %g m around %g m², want %v around %v", f, p.parts[i].name, long, area, shape.Perimeter(depth), shape.Area(depth))
			}
		}
	}
}

func (p part) steiner() (long, area float64) {
	for i, a := range p.points {
		b := p.points[(i+1)%len(p.points)]
		long += math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		area += (float64(a.X)*float64(b.Y) - float64(a.Y)*float64(b.X)) / 2
	}
	return long + 2*math.Pi*p.radius, area + long*p.radius + math.Pi*p.radius*p.radius
}

func TestLeastWeb(t *testing.T) {
	mm := units.Millimetre
	poles := Strings{Count: 8, Pitch: 9 * mm}
	for _, c := range []struct {
		d    Drilling
		want units.Length
	}{
		{Drilling{Strings: poles, Hole: 5 * mm}, 4 * mm},
		{Drilling{Strings: poles, Hole: 5 * mm, Others: []Hole{{X: 41 * mm, Diameter: 3 * mm}}}, 1 * mm}, // the flange ends at 43.5 mm
		{Drilling{Strings: poles, Hole: 5 * mm, Offset: 6 * mm}, 1.5 * mm},                               // and at 10 mm to the sides
	} {
		p := must(Flange(console, c.d))
		if got := p.LeastWeb(); math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("%+v: %v, want %v", c.d, got, c.want)
		}
		if got := p.Mirrored().LeastWeb(); math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("%+v: mirrored %v, want %v", c.d, got, c.want)
		}
	}
}

func TestFlangeRefuses(t *testing.T) {
	mm := units.Millimetre
	poles := Strings{Count: 8, Pitch: 9 * mm}
	for _, c := range []struct {
		f    Former
		d    Drilling
		want string
	}{
		{nil, Drilling{}, "former: none"},
		{Racetrack{CoreLength: 74 * mm, CoreWidth: 7 * mm, Height: 9 * mm}, Drilling{}, "former: no flange to lay out"},
		{console, Drilling{Strings: Strings{Count: 8, Pitch: 12 * mm}, Hole: 5 * mm}, "pole 1 (hole 1): leaves the flange: got -42 mm, 0 mm, 5 mm wide, want the whole hole on the flange of 87 mm by 20 mm"},
		{console, Drilling{Strings: Strings{Count: 8, Pitch: 4 * mm}, Hole: 5 * mm}, "runs into pole 1 (hole 1): got 4 mm, want at least 5 mm"},
		{console, Drilling{Strings: poles, Hole: -1}, "drilling pole 1 (hole 1) Diameter: out of range"},
		{console, Drilling{Hole: 5 * mm}, "strings Count: out of range: got 0, want 1 to 60"},
		{console, Drilling{Strings: Strings{Count: 8}, Hole: 5 * mm}, "strings Pitch: out of range"},
		{console, Drilling{Strings: Strings{Count: 8, Pitch: 9 * mm, NutPitch: 8 * mm}, Hole: 5 * mm}, "strings Scale: out of range"},
		{console, Drilling{Strings: Strings{Count: 8, Pitch: 9 * mm, Slant: 2}, Hole: 5 * mm}, "strings Slant: out of range"},
		{console, Drilling{Corner: 11 * mm}, "drilling Corner: out of range: got 11 mm, want 0 to half the shorter side, 10 mm"},
		{console, Drilling{Others: []Hole{{X: units.Length(math.NaN()), Diameter: 3 * mm}}}, "drilling hole (hole 1): out of range"},
	} {
		if _, err := Flange(c.f, c.d); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: got %v, want %q", c.d, err, c.want)
		}
	}
}

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

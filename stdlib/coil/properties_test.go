package coil

import (
	"math"
	"math/rand"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

// Laws that every winding obeys, on bobbins at random.

// sizedUp returns a former all of whose lengths are multiplied.
func sizedUp(f Former, s units.Length) Former {
	switch f := f.(type) {
	case Racetrack:
		return Racetrack{CoreLength: s * f.CoreLength, CoreWidth: s * f.CoreWidth, Height: s * f.Height}
	case Rectangle:
		return Rectangle{CoreLength: s * f.CoreLength, CoreWidth: s * f.CoreWidth, CornerRadius: s * f.CornerRadius, Height: s * f.Height}
	case Round:
		return Round{CoreDiameter: s * f.CoreDiameter, Height: s * f.Height}
	}
	return f
}

// A winding all of whose lengths are multiplied by s has s times the inductance and 1/s times the resistance.
func TestWindingsScale(t *testing.T) {
	random := rand.New(rand.NewSource(31))
	for range 12 {
		f, turns, s := randomFormer(random), 200+random.Intn(3000), units.Length(0.5+2*random.Float64())
		small, large := must(wire.Measured(0.08*mm, 0.09*mm)), must(wire.Measured(s*0.08*mm, s*0.09*mm))
		for _, style := range []Style{{}, {Lay: Layered}, {Lay: Orthocyclic}} {
			a, b := wound(t, f, small, turns, style), wound(t, sizedUp(f, s), large, turns, style)
			by := float64(s)
			close(t, "inductance", float64(b.Inductance()), by*float64(a.Inductance()), 2e-5)
			close(t, "resistance", float64(b.Resistance()), float64(a.Resistance())/by, 1e-9)
			close(t, "area", float64(b.Area()), by*by*float64(a.Area()), 1e-9)
			close(t, "mass", float64(b.Mass()), by*by*by*float64(a.Mass()), 1e-9)
		}
	}
}

// In the same window inductance goes with the square of the turns, but for the round wires, whose part falls as turns rise.
func TestInductanceGoesWithTheSquareOfTheTurns(t *testing.T) {
	random := rand.New(rand.NewSource(32))
	for range 12 {
		f, turns := randomFormer(random), 2000+random.Intn(3000)
		d := 0.06 * mm
		a := wound(t, f, must(wire.Measured(d*0.9, d)), turns)
		b := wound(t, f, must(wire.Measured(d*0.45, d/2)), 4*turns)
		close(t, "build", float64(b.Build()), float64(a.Build()), 1e-9)
		close(t, "per square", float64(b.Inductance())/16, float64(a.Inductance()), 1e-3)
	}
}

// Two windings have the same mutual inductance either way round, and M² is below L1·L2, so that no way of joining them has
// a negative inductance.
func TestPairsAtRandom(t *testing.T) {
	random := rand.New(rand.NewSource(33))
	for range 25 {
		a := wound(t, randomFormer(random), gauge(t, 40+float64(random.Intn(5))), 300+random.Intn(2000))
		b := wound(t, randomFormer(random), gauge(t, 40+float64(random.Intn(5))), 300+random.Intn(2000))
		x, y := units.Length(20*random.Float64()-10)*mm, units.Length(20*random.Float64()-10)*mm
		z := (a.shape.Height+b.shape.Height)/2 + units.Length(10*random.Float64())*mm
		pair := must(InSeries(Placed{Winding: a}, Placed{Winding: b, X: x, Y: y, Z: z}))
		back := must(InSeries(Placed{Winding: b}, Placed{Winding: a, X: -x, Y: -y, Z: -z}))
		m, n := float64(must(pair.Mutual(1, 2))), float64(must(back.Mutual(1, 2)))
		l1, l2 := float64(a.Inductance()), float64(b.Inductance())
		if math.Abs(m-n) > 1e-4*math.Sqrt(l1*l2) {
			t.Errorf("%v and %v: %g one way, %g the other", a, b, m, n)
		}
		if m*m >= l1*l2 {
			t.Errorf("%v and %v: M² = %g, L1·L2 = %g", a, b, m*m, l1*l2)
		}
		against := must(InSeries(Placed{Winding: a}, Placed{Winding: b, X: x, Y: y, Z: z, Reversed: true}))
		close(t, "sum", float64(pair.Inductance()+against.Inductance()), 2*(l1+l2), 1e-9)
		if against.Inductance() <= 0 || pair.Inductance() <= 0 {
			t.Errorf("%v and %v: %v, %v", a, b, pair.Inductance(), against.Inductance())
		}
	}
}

// Steiner's formulas (1840) on convex polygons at random: a turn at a depth is longer than the outline by 2π of it. The witness is
// the sum of its straight sides and of the arcs around the corners, whose angles come from the sides' directions.
func TestSteinerOnRandomPolygons(t *testing.T) {
	random := rand.New(rand.NewSource(34))
	for range 50 {
		var corners []Point
		for range 3 + random.Intn(12) {
			corners = append(corners, Point{units.Length(60*random.Float64()) * mm, units.Length(20*random.Float64()) * mm})
		}
		shape, err := Convex{Corners: corners, Height: 9 * mm}.Shape()
		if err != nil {
			t.Fatal(err)
		}
		depth, length, area, n := 0.006*random.Float64(), 0.0, 0.0, len(shape.hull)
		for i, p := range shape.hull {
			q, r := shape.hull[(i+1)%n], shape.hull[(i+2)%n]
			ux, uy, vx, vy := float64(q.X-p.X), float64(q.Y-p.Y), float64(r.X-q.X), float64(r.Y-q.Y)
			side, corner := math.Hypot(ux, uy), math.Atan2(ux*vy-uy*vx, ux*vx+uy*vy)
			length += side + corner*depth
			area += float64(p.X*q.Y-q.X*p.Y)/2 + side*depth + corner*depth*depth/2
		}
		close(t, "perimeter", float64(shape.Perimeter(units.Length(depth))), length, 1e-9)
		close(t, "area", float64(shape.Area(units.Length(depth))), area, 1e-9)
	}
}

// Mass by hand: copper of 8.89 g/cm³ (IEC 60028) in enamel of 1.3 g/cm³, over the length of all turns.
func TestMassByHand(t *testing.T) {
	w := must(wire.Measured(0.0635*mm, 0.0711*mm))
	c := wound(t, Round{CoreDiameter: 12 * mm, Height: 8 * mm}, w, 6000)
	outer := 6.0e-3 + 6000*math.Pi/4*sq(0.0711e-3)/(0.65*8e-3)
	length := 6000 * math.Pi * (6e-3 + outer)
	copper, all := math.Pi/4*sq(0.0635e-3), math.Pi/4*sq(0.0711e-3)
	close(t, "mass", float64(c.Mass()), length*(copper*8890+(all-copper)*1300), 1e-9)
}

package coil

import (
	"fmt"
	"math"
	"slices"

	"lode/units"
	"lode/units/frame"
)

// Drilling is what is drilled into a flange beside the cut around it. Places are counted from the middle of the
// core, x along its length and y along its width, seen from the strings; of a convex core from the origin of its corners.
type Drilling struct {
	Strings Strings      // that the pole holes follow
	Hole    units.Length // diameter of the pole holes, up to what the flange holds; zero: no pole holes
	Offset  units.Length // of the row of poles from the core's long axis
	Others  []Hole       // for mounting screws, eyelets and leads
	Slot    bool         // the core's outline is cut out of the plate, for a blade or a core that goes through
	Corner  units.Length // radius of the flange's corners, up to half its shorter side; zero: parallel to the core
}

// Hole is a round hole.
type Hole struct {
	Name     string       // such as "mount"; empty: hole
	X        units.Length // along the core's length
	Y        units.Length // along its width
	Diameter units.Length // of the drill
}

// Plate is a flange laid out for the saw and the drill.
type Plate struct {
	former Former
	parts  []part
	below  bool // seen from below
}

// part is the convex hull of points grown by a radius: one point is a hole, two are a slot with round ends.
type part struct {
	name, work string
	points     []Point
	radius     float64
}

// Flange lays out a flange of a former: its outline, the core's outline and the holes. Template drawings are made
// from it.
//
// Source: geometry; strings that fan out from the nut to the bridge are straight lines that the row of poles crosses.
//
// Valid: whole holes on the flange that do not run into each other; up to 60 strings.
//
// Accuracy: exact on paper; marking and drilling by hand adds about 0.2 mm (common practice, no source).
//
// Caution: drill through clamped work, never hand-held; dust of fibre and laminates harms lungs: draw it off and wear a
// mask and eye protection.
//
// Example: coil.Flange(coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}, coil.Drilling{Strings: coil.Strings{Count: 8, Pitch: 9*mm}, Hole: 5*mm})
func Flange(former Former, d Drilling) (Plate, error) {
	if former == nil {
		return Plate{}, refuse("former: none", "nothing", "a bobbin, such as coil.Racetrack{...}", "")
	}
	shape, err := former.Shape()
	if err != nil {
		return Plate{}, err
	}
	rim, err := rimOf(former, shape, d.Corner)
	if err != nil {
		return Plate{}, err
	}
	core := shape.outline()
	core.name, core.work = "core", map[bool]string{false: "mark", true: "cut"}[d.Slot]
	holes, err := d.holes()
	if err != nil {
		return Plate{}, err
	}
	p := Plate{former: former, parts: append([]part{rim, core}, holes...)}
	return p, p.check()
}

// holes returns the pole holes in their order, then the others.
func (d Drilling) holes() ([]part, error) {
	var list []Hole
	if d.Hole != 0 || d.Strings.Count != 0 {
		along, err := d.Strings.Along()
		if err != nil {
			return nil, err
		}
		for i, x := range along {
			list = append(list, Hole{fmt.Sprintf("pole %d", i+1), x, d.Offset, d.Hole})
		}
	}
	var parts []part
	for i, h := range append(list, d.Others...) {
		if h.Name == "" {
			h.Name = "hole"
		}
		subject := fmt.Sprintf("drilling %s (hole %d)", h.Name, i+1)
		if err := span(subject+" Diameter", h.Diameter); err != nil {
			return nil, err
		}
		if !(math.Abs(float64(h.X)) <= float64(longest) && math.Abs(float64(h.Y)) <= float64(longest)) {
			return nil, refuse(subject+": out of range", fmt.Sprintf("%v, %v", h.X, h.Y), "at most "+longest.String()+" from the middle", "write the unit, such as 10*mm")
		}
		parts = append(parts, part{h.Name, "drill", []Point{{h.X, h.Y}}, float64(h.Diameter) / 2})
	}
	return parts, nil
}

// rounded returns the outline of a rounded rectangle around the origin.
func rounded(length, width, radius units.Length) part {
	x, y := max(0, length/2-radius), max(0, width/2-radius)
	if x < 1e-12 {
		x = 0
	}
	if y < 1e-12 {
		y = 0
	}
	switch {
	case x == 0 && y == 0:
		return part{points: []Point{{}}, radius: float64(radius)}
	case y == 0:
		return part{points: []Point{{-x, 0}, {x, 0}}, radius: float64(radius)}
	case x == 0:
		return part{points: []Point{{0, -y}, {0, y}}, radius: float64(radius)}
	}
	return part{points: []Point{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, radius: float64(radius)}
}

// outline is that of the core.
func (s Shape) outline() part {
	if len(s.hull) == 0 {
		return rounded(s.Length, s.Width, s.CornerRadius)
	}
	return part{points: slices.Clone(s.hull)}
}

// rimOf is the outline of the flange.
func rimOf(former Former, s Shape, corner units.Length) (part, error) {
	if math.IsInf(float64(s.Room), 1) {
		return part{}, refuse("former: no flange to lay out", former, "a flange", "set FlangeWidth or FlangeLength, FlangeDiameter of a round former, or Room of a convex one")
	}
	length, width, radius := s.Length+2*s.Room, s.Width+2*s.Room, s.CornerRadius+s.Room
	switch f := former.(type) {
	case Racetrack:
		length, width = max(length, f.FlangeLength), max(width, f.FlangeWidth)
		radius = min(length, width) / 2
	case Rectangle:
		length, width = max(length, f.FlangeLength), max(width, f.FlangeWidth)
	}
	if corner != 0 {
		radius = corner
	}
	if most := min(length, width) / 2; !(radius >= 0 && radius <= most*(1+1e-12)) {
		return part{}, refuse("drilling Corner: out of range", corner, "0 to half the shorter side, "+most.String(), "")
	}
	rim := rounded(length, width, radius)
	if len(s.hull) > 0 {
		rim = s.outline()
		rim.radius = float64(s.Room)
	}
	rim.name, rim.work = "flange", "cut"
	return rim, nil
}

// size tells the length and width of a part.
func (p part) size() string {
	var length, width float64
	for _, a := range p.points {
		for _, b := range p.points {
			length, width = max(length, float64(a.X-b.X)), max(width, float64(a.Y-b.Y))
		}
	}
	return inMillimetres(length+2*p.radius) + " by " + inMillimetres(width+2*p.radius)
}

// inMillimetres writes a length as drawings do, nothing included.
func inMillimetres(metres float64) string { return units.Digits(1000*metres, 4) + " mm" }

// check refuses holes that leave the flange or run into each other.
func (p Plate) check() error {
	rim, holes := p.parts[0], p.parts[2:]
	for i, h := range holes {
		subject := fmt.Sprintf("drilling %s (hole %d)", h.name, i+1)
		if rim.margin(h) < 0 {
			return refuse(subject+": leaves the flange", fmt.Sprintf("%s, %s, %s wide", inMillimetres(float64(h.points[0].X)), inMillimetres(float64(h.points[0].Y)), inMillimetres(2*h.radius)), "the whole hole on the flange of "+rim.size(), "")
		}
		for j, other := range holes[:i] {
			if between(h, other) < 0 {
				return refuse(fmt.Sprintf("%s: runs into %s (hole %d)", subject, other.name, j+1),
					units.Length(distance(h, other)), fmt.Sprintf("at least %v from middle to middle", units.Length(h.radius+other.radius)), "")
			}
		}
	}
	return nil
}

// LeastWeb returns the narrowest bridge of material between two holes, or between a hole and the edge.
func (p Plate) LeastWeb() units.Length {
	least := math.Inf(1)
	for i, h := range p.holes() {
		least = min(least, p.parts[0].margin(h))
		for _, other := range p.holes()[:i] {
			least = min(least, between(h, other))
		}
	}
	return units.Length(least)
}

func (p Plate) holes() []part {
	if len(p.parts) < 2 {
		return nil
	}
	return p.parts[2:]
}

// Mirrored returns the plate as seen from below.
func (p Plate) Mirrored() Plate {
	turned := Plate{former: p.former, below: !p.below}
	for _, old := range p.parts {
		var points []Point
		for i := range old.points {
			points = append(points, Point{-old.points[len(old.points)-1-i].X, old.points[len(old.points)-1-i].Y})
		}
		old.points = points
		turned.parts = append(turned.parts, old)
	}
	return turned
}

// Frame lays the plate out: each part is the hull of its points, rounded to a diameter. A row alone is a hole.
func (p Plate) Frame() frame.Frame {
	columns := map[string][]any{}
	add := func(name string, cell any) { columns[name] = append(columns[name], cell) }
	for _, part := range p.parts {
		for _, at := range part.points {
			add("Part", part.name)
			add("Work", part.work)
			add("x", at.X)
			add("y", at.Y)
			add("Diameter", units.Length(2*part.radius))
		}
	}
	f := frame.Frame{Title: "Flange, seen from " + map[bool]string{false: "the strings", true: "below"}[p.below]}
	for _, name := range []string{"Part", "Work", "x", "y", "Diameter"} {
		f.Columns = append(f.Columns, frame.Collect(name, columns[name]))
	}
	return f
}

// String sums the plate up in one line.
func (p Plate) String() string {
	if len(p.parts) == 0 {
		return "no plate"
	}
	text := fmt.Sprintf("flange of a %v, %d holes", p.former, len(p.holes()))
	if len(p.holes()) == 1 {
		text = fmt.Sprintf("flange of a %v, 1 hole", p.former)
	}
	if web := p.LeastWeb(); !math.IsInf(float64(web), 1) {
		text += fmt.Sprintf(", narrowest web %v", web)
	}
	return text
}

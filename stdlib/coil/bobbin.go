package coil

import (
	"fmt"
	"math"

	"lode/units"
)

// Racetrack is a bobbin whose core has two straight sides and two half-round ends. Without flange dimensions it is open,
// as for an air coil.
type Racetrack struct {
	CoreLength   units.Length // over the round ends, up to 2 m
	CoreWidth    units.Length // between the straight sides, up to the length
	Height       units.Length // between the flanges, up to 2 m
	FlangeLength units.Length // over all, more than the core's; zero: the flange stands out as far as at the sides
	FlangeWidth  units.Length // over all, more than the core's; zero: as far as at the ends, or no flange at all
}

// Rectangle is a bobbin with a rectangular core, sharp or rounded. Without flange dimensions it is open, as for an air
// coil.
type Rectangle struct {
	CoreLength   units.Length // the long side, up to 2 m
	CoreWidth    units.Length // the short side, up to 2 m
	CornerRadius units.Length // of the core's four corners in plan view, up to half the short side; zero: sharp
	Height       units.Length // between the flanges, up to 2 m
	FlangeLength units.Length // over all, more than the core's; zero: the flange stands out as far as at the sides
	FlangeWidth  units.Length // over all, more than the core's; zero: as far as at the ends, or no flange at all
}

// Round is a bobbin with a round core. Without a flange diameter it is open, as for an air coil.
type Round struct {
	CoreDiameter   units.Length // that the first layer lies on, up to 2 m
	Height         units.Length // between the flanges, up to 2 m
	FlangeDiameter units.Length // over all, more than the core's and up to 2 m; zero: no flange
}

// Shape checks the dimensions and returns what the wire sees of them.
func (r Racetrack) Shape() (Shape, error) {
	if r.CoreWidth > r.CoreLength {
		return Shape{}, refuse("racetrack CoreWidth: too wide", r.CoreWidth, "at most the CoreLength of "+r.CoreLength.String(), "")
	}
	return bobbin("racetrack", Rectangle{r.CoreLength, r.CoreWidth, r.CoreWidth / 2, r.Height, r.FlangeLength, r.FlangeWidth})
}

// Shape checks the dimensions and returns what the wire sees of them.
func (r Rectangle) Shape() (Shape, error) {
	if most := min(r.CoreLength, r.CoreWidth) / 2; !(r.CornerRadius >= 0 && r.CornerRadius <= max(most, 0)) {
		return Shape{}, refuse("rectangle CornerRadius: out of range", r.CornerRadius, "0 to half the shorter side, "+most.String(), "")
	}
	return bobbin("rectangle", r)
}

// Shape checks the dimensions and returns what the wire sees of them.
func (r Round) Shape() (Shape, error) {
	d := r.CoreDiameter
	if err := span("round CoreDiameter", d); err != nil {
		return Shape{}, err
	}
	s := Shape{Length: d, Width: d, CornerRadius: d / 2, Height: r.Height}
	var err error
	if s.Room, err = overhang("round FlangeDiameter", r.FlangeDiameter, d); err != nil {
		return Shape{}, err
	}
	return s, span("round Height", r.Height)
}

// String names the bobbin and its main dimensions.
func (r Racetrack) String() string { return named("racetrack", r.CoreLength, r.CoreWidth, r.Height) }

// String names the bobbin and its main dimensions.
func (r Rectangle) String() string { return named("rectangle", r.CoreLength, r.CoreWidth, r.Height) }

// String names the bobbin and its main dimensions.
func (r Round) String() string {
	return fmt.Sprintf("round, core %v, %v high", r.CoreDiameter, r.Height)
}

func named(kind string, length, width, height units.Length) string {
	return fmt.Sprintf("%s, core %v by %v, %v high", kind, length, width, height)
}

// bobbin makes the shape of a flanged core from checked dimensions.
func bobbin(kind string, r Rectangle) (Shape, error) {
	for _, x := range []struct {
		name  string
		value units.Length
	}{{"CoreLength", r.CoreLength}, {"CoreWidth", r.CoreWidth}, {"Height", r.Height}} {
		if err := span(kind+" "+x.name, x.value); err != nil {
			return Shape{}, err
		}
	}
	ends, err := overhang(kind+" FlangeLength", r.FlangeLength, r.CoreLength)
	if err != nil {
		return Shape{}, err
	}
	sides, err := overhang(kind+" FlangeWidth", r.FlangeWidth, r.CoreWidth)
	return Shape{Length: r.CoreLength, Width: r.CoreWidth, CornerRadius: r.CornerRadius, Height: r.Height, Room: min(ends, sides)}, err
}

// overhang returns how far a flange stands out over its core; without a flange it limits nothing.
func overhang(subject string, flange, core units.Length) (units.Length, error) {
	if flange == 0 {
		return units.Length(math.Inf(1)), nil
	}
	if !(flange > core && flange <= longest) {
		return 0, refuse(subject+": out of range", flange, fmt.Sprintf("more than the core's %v and at most %v, or 0 for none", core, longest), "")
	}
	return (flange - core) / 2, nil
}

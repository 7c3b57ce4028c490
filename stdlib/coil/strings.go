package coil

import (
	"fmt"
	"math"

	"lode/units"
)

// This file finds where a row of poles meets the strings.

// Strings is a set of strings over a row of poles. Its zero values are parallel strings square to the row.
type Strings struct {
	Count      int          // of strings, 1 to 60
	Pitch      units.Length // from string to string at the bridge
	NutPitch   units.Length // from string to string at the nut; zero: parallel strings
	Scale      units.Length // from nut to bridge, up to 2 m; needed with NutPitch
	FromBridge units.Length // to the middle of the row, up to the scale
	Slant      units.Angle  // of the row against square to the strings, within 60°
}

// mostStrings is more than any instrument of this kind has.
const mostStrings = 60

// Along returns where the strings cross the row, counted from its middle.
//
// Source: geometry of straight lines: strings that fan out, and a row at a slant across them.
//
// Valid: all strings one pitch apart at the bridge, and at the nut.
//
// Accuracy: exact for straight strings.
//
// Example: coil.Strings{Count: 8, Pitch: 9.5*mm, NutPitch: 8*mm, Scale: 610*mm, FromBridge: 40*mm}.Along()
func (s Strings) Along() ([]units.Length, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	fan := 0.0 // pitch gained per length towards the nut
	if s.NutPitch != 0 {
		fan = float64((s.NutPitch - s.Pitch) / s.Scale)
	}
	sin, cos := math.Sincos(float64(s.Slant))
	pitch := float64(s.Pitch) + fan*float64(s.FromBridge)
	var along []units.Length
	for i := range s.Count {
		k := float64(i) - float64(s.Count-1)/2
		along = append(along, units.Length(k*pitch/(cos-k*fan*sin)))
	}
	return along, nil
}

func (s Strings) check() error {
	if s.Count < 1 || s.Count > mostStrings {
		return refuse("strings Count: out of range", s.Count, fmt.Sprintf("1 to %d", mostStrings), "")
	}
	if err := span("strings Pitch", s.Pitch); err != nil {
		return err
	}
	if !(math.Abs(float64(s.Slant)) <= math.Pi/3) {
		return refuse("strings Slant: out of range", s.Slant, "-60° to 60°", "write the unit, such as 12*deg")
	}
	if s.NutPitch == 0 {
		return nil
	}
	if err := span("strings NutPitch", s.NutPitch); err != nil {
		return err
	}
	if err := span("strings Scale", s.Scale); err != nil {
		return err
	}
	if !(s.FromBridge >= 0 && s.FromBridge <= s.Scale) {
		return refuse("strings FromBridge: out of range", s.FromBridge, "0 to the scale of "+s.Scale.String(), "")
	}
	return nil
}

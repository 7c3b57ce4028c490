package coil

import (
	"fmt"
	"math"

	"lode/units"
)

// thin is how many wires a scatter winding has to hold in each direction for its turns to be
// taken as spread evenly: common practice, no source.
const thin = 5

// Warnings lists where the winding leaves the ranges that its figures are valid for.
func (c Winding) Warnings() []string {
	if c.turns == 0 {
		return nil
	}
	var list []string
	across, along := float64(c.layout.build)/float64(c.wire.Overall()), float64(c.height())/float64(c.wire.Overall())
	if c.style.Lay == Scatter && min(across, along) < thin {
		list = append(list, fmt.Sprintf("the window is only %s %s: taking scattered turns as spread evenly wants %d or more; coil.Style{Lay: coil.Layered} says where they lie",
			wires(min(across, along)), direction(across, along), thin))
	}
	if fit := c.Fit(); math.IsInf(float64(fit.Room), 1) && fit.Build.Value > fit.HoldsItself().Value {
		list = append(list, fit.standing())
	}
	if fit := c.Fit(); fit.OK() && c.style.Lay == Scatter && float64(fit.RoomLeft()) < 0.05*float64(c.layout.build) {
		list = append(list, "the winding fills the flanges to the brim; wound looser than usual it will not fit")
	}
	return list
}

// wires words a number of wires.
func wires(n float64) string {
	if text := units.Digits(n, 2); text != "1" {
		return text + " wires"
	}
	return "one wire"
}

func direction(across, along float64) string {
	if across < along {
		return "deep"
	}
	return "high"
}

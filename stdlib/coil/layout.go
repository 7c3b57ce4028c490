package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
)

// This file puts the wires into the window. All lengths are in metres.

// layout is where the turns of a winding lie.
type layout struct {
	build, low, high float64 // depth of the winding, usual and its range
	perLayer         int     // turns side by side in a full layer
	layers           int     // begun
	pitch            float64 // from turn to turn along a layer
	rise             float64 // from layer to layer
	fit              int     // turns that the room holds, usual build
	meanTurn         float64 // mean length of a turn
	meanArea         float64 // mean area in a turn
}

// lay puts turns of a wire of overall diameter d on a shape.
func (s Style) lay(shape Shape, d float64, turns int) layout {
	if s.Lay == Scatter {
		return s.scatter(shape, d, turns)
	}
	return s.inLayers(shape, d, turns)
}

// scatter spreads the turns evenly over the window.
func (s Style) scatter(shape Shape, d float64, turns int) layout {
	h, room, n := float64(shape.Height), float64(shape.Room), float64(turns)
	dense, usual, loose := s.packings()
	spacing := kernel.RowSpacing(d, usual)
	o := layout{
		build: kernel.ScatterBuild(n, d, h, usual), low: kernel.ScatterBuild(n, d, h, dense), high: kernel.ScatterBuild(n, d, h, loose),
		perLayer: max(1, kernel.Rows(h, d, spacing)), pitch: spacing, rise: spacing,
	}
	o.layers = int(math.Ceil(n/float64(o.perLayer) - 1e-9))
	if room >= d && h >= d {
		o.fit = capped(kernel.ScatterTurns(room, d, h, usual))
	}
	P, S := float64(shape.corePerimeter()), float64(shape.coreArea())
	o.meanTurn = kernel.MeanTurnLength(P, 0, o.build)
	o.meanArea = kernel.MeanTurnArea(P, S, 0, o.build)
	return o
}

// bulge is how much deeper layered windings come out than their wires add up to: common
// practice, no source.
const bulge = 1.1

// inLayers counts the turns of each layer, which lies at one depth.
func (s Style) inLayers(shape Shape, d float64, turns int) layout {
	h, room := float64(shape.Height), float64(shape.Room)
	pitch, rise, high := s.spacing(d)
	o := layout{perLayer: max(1, kernel.Rows(h, d, pitch)), pitch: pitch, rise: rise}
	o.layers = (turns + o.perLayer - 1) / o.perLayer
	gaps := float64(o.layers - 1)
	groove := kernel.GrooveRise(d, pitch)
	o.build, o.low, o.high = d+gaps*rise, d+gaps*min(rise, groove), d*high+gaps*rise*high
	if room >= d && h >= d {
		o.fit = capped(math.Floor((room-d)/rise+1+1e-9) * float64(o.perLayer))
	}
	P, S := shape.corePerimeter(), shape.coreArea()
	for k, left := 0, turns; left > 0; k, left = k+1, left-o.perLayer {
		n, t := float64(min(left, o.perLayer)), d/2+float64(k)*rise
		o.meanTurn += n * kernel.TurnLength(P, t) / float64(turns)
		o.meanArea += n * kernel.TurnArea(P, S, t) / float64(turns)
	}
	return o
}

// spacing returns the pitch, the rise from layer to layer and how much more than its wires
// the winding may come out.
func (s Style) spacing(d float64) (pitch, rise, high float64) {
	pitch = float64(s.Pitch)
	if s.Lay == Orthocyclic {
		pitch = max(d, pitch)
		return pitch, kernel.GrooveRise(d, pitch), 1.03
	}
	if pitch == 0 {
		pitch = usualPitch * d
	}
	return pitch, d, bulge
}

// capped turns a count into an int; a window without flanges has no limit of its own.
func capped(n float64) int { return int(math.Min(math.Floor(n+1e-9), mostTurns)) }

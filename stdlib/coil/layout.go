package coil

import (
	"math"

	"lode/stdlib/coil/internal/kernel"
)

// This file puts the wires into the window. All lengths are in metres; with several strands
// every strand of every turn is a wire.

// layout is where the wires of a winding lie.
type layout struct {
	build, low, high float64 // depth of the winding, usual and its range
	wires            int
	perLayer         int      // wires side by side in a full layer
	layers           int      // begun
	pitch            float64  // from wire to wire along a layer
	rise             float64  // from layer to layer, without tape
	fit              int      // turns that the room holds at the usual build
	meanTurn         float64  // mean length of a turn
	meanArea         float64  // mean area in a turn
	cut              bool     // a part of another winding, its build by share
	blocks           []filled // of such a part, if it is laid
}

// lay puts turns of a wire of overall diameter d on a shape.
func (s Style) lay(shape Shape, d float64, turns int) layout {
	if s.Lay == Scatter {
		return s.scatter(shape, d, turns)
	}
	return s.inLayers(shape, d, turns)
}

// scatter spreads the wires evenly over the window.
func (s Style) scatter(shape Shape, d float64, turns int) layout {
	h, room, wires := float64(shape.Height), shape.standing(d), turns*s.strands()
	dense, usual, loose := s.packings()
	spacing, n := kernel.RowSpacing(d, usual), float64(wires)
	o := layout{
		build: kernel.ScatterBuild(n, d, h, usual), low: kernel.ScatterBuild(n, d, h, dense), high: kernel.ScatterBuild(n, d, h, loose),
		wires: wires, perLayer: max(1, kernel.Rows(h, d, spacing)), pitch: spacing, rise: spacing,
	}
	o.layers = int(math.Ceil(n/float64(o.perLayer) - 1e-9))
	if room >= d && h >= d {
		o.fit = s.whole(kernel.ScatterTurns(room, d, h, usual))
	}
	P, S := shape.corePerimeter(), shape.coreArea()
	o.meanTurn = kernel.MeanTurnLength(P, 0, o.build)
	o.meanArea = kernel.MeanTurnArea(P, S, 0, o.build)
	return o
}

// inLayers counts the wires of each layer, which lies at one depth.
func (s Style) inLayers(shape Shape, d float64, turns int) layout {
	h, room, wires := float64(shape.Height), shape.standing(d), turns*s.strands()
	pitch, rise := s.spacing(d)
	o := layout{wires: wires, perLayer: max(1, kernel.Rows(h-s.shift(pitch), d, pitch)), pitch: pitch, rise: rise}
	o.layers = (wires + o.perLayer - 1) / o.perLayer
	o.build = s.depth(o.layers-1, rise) + d
	o.low = s.depth(o.layers-1, min(rise, kernel.GrooveRise(d, pitch))) + d
	o.high = o.build * s.bulge()
	if room >= d && h >= d {
		o.fit = s.whole(float64(s.layersIn(room-d, rise)) * float64(o.perLayer))
	}
	P, S := shape.corePerimeter(), shape.coreArea()
	for k, left := 0, wires; left > 0; k, left = k+1, left-o.perLayer {
		share, t := float64(min(left, o.perLayer))/float64(wires), d/2+s.depth(k, rise)
		o.meanTurn += share * kernel.TurnLength(P, t)
		o.meanArea += share * kernel.TurnArea(P, S, t)
	}
	return o
}

// depth returns how far layer k lies over the first one.
func (s Style) depth(k int, rise float64) float64 {
	tapes := 0
	if s.Tape > 0 {
		tapes = k / max(1, s.TapeEvery)
	}
	return float64(k)*rise + float64(tapes)*float64(s.Tape)
}

// layersIn returns how many layers begin within a depth over the first one.
func (s Style) layersIn(depth, rise float64) int {
	every := max(1, s.TapeEvery)
	period := float64(every)*rise + float64(s.Tape)
	if !(depth < mostTurns*period) || rise == 0 {
		return mostTurns
	}
	depth += 1e-9 * rise
	whole := math.Floor(depth / period)
	rest := math.Min(float64(every-1), math.Floor((depth-whole*period)/rise))
	return 1 + int(whole)*every + int(rest)
}

// spacing returns the pitch along a layer and the rise from layer to layer.
func (s Style) spacing(d float64) (pitch, rise float64) {
	switch {
	case s.Lay == Orthocyclic:
		pitch = max(d, float64(s.Pitch))
		return pitch, kernel.GrooveRise(d, pitch)
	case s.Pitch > 0:
		return float64(s.Pitch), d
	}
	return usualPitch * d, d
}

// shift is how far every second layer is moved along to lie in the grooves of the one below. All layers have the same
// number of turns, so that the window must be higher by as much.
//
// Source: W. L. Lenders, The orthocyclic method of coil winding, Philips Technical Review 23 (1961) 365-379 (from memory).
func (s Style) shift(pitch float64) float64 {
	if s.Lay == Orthocyclic {
		return pitch / 2
	}
	return 0
}

// bulge is how much deeper windings come out than their layers add up to: common practice,
// no source.
func (s Style) bulge() float64 {
	if s.Lay == Orthocyclic {
		return 1.03
	}
	return 1.1
}

// whole turns a count of wires into whole turns, no more than anyone winds.
func (s Style) whole(wires float64) int {
	return int(math.Min(math.Floor(wires/float64(s.strands())+1e-9), mostTurns))
}

// Package coil winds wire on bobbins and tells what comes of it.
//
// A former is a core that wire is wound on: Racetrack, Rectangle, Round, or Convex for a
// free outline. Wind puts turns of wire on it and gives a Winding, which knows its
// resistance, inductance, capacitance, size and mass. Fits answers whether a winding fits
// without failing when it does not. Winding.BuildSheet is the page for the bench.
//
//	w := wire.AWG(42)
//	b := coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}
//	c := coil.Wind(b, w, 6000)
//	c.Resistance()
//
// A former without flange dimensions is open, as for an air coil that holds itself or is taken off a form. Style says
// how the wire is laid: layered, orthocyclic, with tape and insulation, in several strands (bifilar with two of them).
// Tapped brings out taps, InSections divides a bobbin, Stacked and InSeries join windings on bobbins of their own.
// TurnsThatFit, DepthAt, FitWithin and Inside say what goes where; TurnsFromResistance goes back from a measurement.
//
// All values are those of the winding alone: no iron, no magnets, no cover, no leads.
package coil

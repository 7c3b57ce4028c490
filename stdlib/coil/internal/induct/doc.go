// Package induct computes self- and mutual inductances of windings without iron, and the
// fields of such windings, in SI units and float64.
//
// A winding is a rectangular window, filled evenly with current, around a rounded-rectangle core
// (circle, racetrack and rectangle are cases) or around a free convex outline. The turns are
// parallel curves: straight sides keep their length, corners grow by the depth.
//
//	Self, SelfTo              a winding by itself
//	Coaxial, CoaxialTo        two windings on one axis: stacked, or one around the other
//	Pair, PairTo              two windings in any position
//	DiscreteSelf, DiscreteValue   round wire, turn by turn
//	RoundWire, BegunLayer     what round wire has more than a filled window
//	SelfValue, PairValue, SelfPart, CoaxialPart, PairPart   without the estimate of the error, in less time
//	SelfOutline, ParallelOutlines   free outlines
//	Potential, Field          vector potential and flux density at a point
//	AreaTurns                 what a uniform field links
//
// Every inductance comes with an estimate of its error in henry. The default effort keeps Self,
// Coaxial and Pair with parallel axes within about 1e-5 of the value (3e-5 for needle-like or very
// deep windows, up to 1e-4 for a few in a thousand that touch), Pair within 1e-4 with tilted axes;
// the To functions climb to what is asked. Small values that are the difference of large ones, as
// of crossed coils, are less accurate relative to themselves: see the estimate.
//
// Arguments are not checked. Lengths must be finite and not negative, the corner radius at
// most half of each side, height and build not both 0 (the result is then infinite), and
// the windows of two coils must not overlap.
package induct

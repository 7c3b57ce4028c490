// Package induct computes self- and mutual inductances, without iron, of windings with a
// rectangular window on rounded-rectangle cores or on free convex outlines, in SI float64.
package induct

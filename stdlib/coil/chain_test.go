package coil

import (
	"slices"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

// TestChainFrame wants places in the table only where a winding is out of the middle, or tilted.
func TestChainFrame(t *testing.T) {
	w, err := wire.AWG(42)
	if err != nil {
		t.Fatal(err)
	}
	one, err := Wind(console, w, 3000)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		second Placed
		want   []string
	}{
		{Placed{Z: -14 * units.Millimetre}, []string{"z"}}, {Placed{Y: 30 * units.Millimetre, Reversed: true}, []string{"y"}},
		{Placed{X: 120 * units.Millimetre, Tilt: 0.2}, []string{"x", "Tilt"}},
	} {
		c.second.Winding = one
		chain, err := InSeries(Placed{Winding: one}, c.second)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, column := range chain.Frame().Columns {
			got = append(got, column.Name)
		}
		want := slices.Concat([]string{"Winding", "Turns", "Sense"}, c.want, []string{"Resistance", "Inductance", "Share of the chain"})
		if !slices.Equal(got, want) {
			t.Errorf("got columns %v, want %v", got, want)
		}
	}
	parts, err := one.Tapped(1000)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(parts.Frame().Columns); n != 6 {
		t.Errorf("a tapped winding has %d columns, want 6 without places", n)
	}
}

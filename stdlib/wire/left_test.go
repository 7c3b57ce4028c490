package wire

import (
	"strings"
	"testing"

	"lode/units"
)

func TestStrengthLeft(t *testing.T) {
	copper, err := AWG(42)
	if err != nil {
		t.Fatal(err)
	}
	if list := append(copper.breakingLoadLeft(), copper.windingTensionLeft()...); len(list) > 0 {
		t.Errorf("copper: got %q", list)
	}
	own, err := copper.MadeOf(Material{Name: "bronze", Resistivity: 1e-7, Density: 8800, Coldest: units.Celsius(0), Hottest: units.Celsius(100)})
	if err != nil {
		t.Fatal(err)
	}
	list := append(own.breakingLoadLeft(), own.windingTensionLeft()...)
	if len(list) != 2 || !strings.HasPrefix(list[0], "strength of bronze: got none, valid with ") || !strings.HasPrefix(list[1], "winding stress of bronze: got none") {
		t.Errorf("a metal without strengths: got %q", list)
	}
	if own.BreakingLoad().High != 0 || own.WindingTension().High != 0 {
		t.Error("without strengths there are forces, so that nothing has to be warned of")
	}
	if list := (Wire{}).breakingLoadLeft(); list != nil {
		t.Errorf("no wire: got %q", list)
	}
}

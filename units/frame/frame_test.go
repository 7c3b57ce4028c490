package frame

import (
	"math"
	"reflect"
	"testing"

	"lode/units"
)

func TestCollect(t *testing.T) {
	c := Collect("R", []any{units.Resistance(10), nil, units.Resistance(30)})
	if c.Kind.Type != "Resistance" || c.Values[2] != 30 || !math.IsNaN(c.Values[1]) || c.Texts != nil {
		t.Errorf("resistances with a gap: got %+v", c)
	}
	c = Collect("n", []any{1, 2.5})
	if c.Kind.Type != "" || !reflect.DeepEqual(c.Values, []float64{1, 2.5}) {
		t.Errorf("numbers: got %+v", c)
	}
	c = Collect("mixed", []any{units.Resistance(10), units.Length(1), true, nil, "words", 0.5})
	if want := []string{"10 Ω", "1 m", "yes", "", "words", "0.5"}; !reflect.DeepEqual(c.Texts, want) {
		t.Errorf("mixed cells: got %q, want %q", c.Texts, want)
	}
}

func TestColumns(t *testing.T) {
	length, _ := units.KindNamed("Length")
	f := Frame{Columns: []Column{{Name: "part", Texts: []string{"a", "b"}}, Of("x", length, []float64{1, 2})}}
	if c, ok := f.OfKind("Length"); !ok || c.Name != "x" || f.Rows() != 2 {
		t.Errorf("got %+v, %v, %d rows", c, ok, f.Rows())
	}
	if _, ok := f.OfKind("Mass"); ok {
		t.Error("found a column of mass")
	}
	if c, ok := f.Named("part"); !ok || c.Len() != 2 {
		t.Errorf("got %+v, %v", c, ok)
	}
}

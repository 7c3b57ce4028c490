package coil

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"lode/units"
)

// follow walks along the chain as the sheet's leads say, from ground to output, and returns the sum of turns with the sign that they
// are passed in: a winding entered at its finish counts against the others.
func follow(t *testing.T, s Sheets) (turns int, order []int) {
	t.Helper()
	number, lead := 0, ""
	for i, sheet := range s.sheets {
		for name, to := range map[string]string{"start": sheet.order.Start, "finish": sheet.order.Finish} {
			if to == "ground" {
				number, lead = i+1, name
			}
		}
	}
	for range len(s.sheets) {
		sheet := must(s.Sheet(number))
		order = append(order, number)
		to := sheet.order.Finish
		if lead == "start" {
			turns += sheet.winding.turns
		} else {
			turns -= sheet.winding.turns
			to = sheet.order.Start
		}
		if to == "output" {
			return turns, order
		}
		if _, err := fmt.Sscanf(to, "%s of winding %d", &lead, &number); err != nil {
			t.Fatalf("lead to %q: %v", to, err)
		}
	}
	t.Fatalf("never comes out, after %v", order)
	return 0, nil
}

// The leads of a chain lead through every winding once, against the sense of the reversed ones.
func TestLeadsOfSheets(t *testing.T) {
	c := wound(t, steel, gauge(t, 42), 3000)
	at := func(i int, reversed bool) Placed {
		return Placed{Winding: must(c.With(3000 + 100*i)), Z: units.Length(-12*i) * mm, Reversed: reversed}
	}
	for mask := range 8 {
		chain := must(InSeries(at(0, mask&1 > 0), at(1, mask&2 > 0), at(2, mask&4 > 0)))
		want := 0
		for i := range 3 {
			want += (3000 + 100*i) * (1 - 2*(mask>>i&1))
		}
		if got, order := follow(t, must(chain.BuildSheet())); got != want || fmt.Sprint(order) != "[1 2 3]" {
			t.Errorf("reversed %03b: %d turns through %v, want %d", mask, got, order, want)
		}
	}
}

func TestSheetsOfAChain(t *testing.T) {
	up := wound(t, Racetrack{CoreLength: 71 * mm, CoreWidth: 6.5 * mm, Height: 4 * mm, FlangeWidth: 17 * mm}, gauge(t, 42), 2000)
	low := wound(t, Racetrack{CoreLength: 71 * mm, CoreWidth: 8 * mm, Height: 6 * mm, FlangeWidth: 19 * mm}, gauge(t, 40), 1500, Style{Strands: 2, Over: 0.2 * mm})
	chain := must(Stacked(2*mm, up, low))
	s := must(chain.BuildSheet(Order{Name: "pair", Temperature: units.Celsius(25), Waste: 0.1}))
	// IEC 60028: 1 + 0.00393·5; resistances in series add up
	close(t, "resistance", float64(s.Resistance().Value), 1.01965*float64(up.Resistance()+low.Resistance()), 1e-9)
	close(t, "at 25 °C", float64(must(chain.ResistanceAt(units.Celsius(25)))), float64(s.Resistance().Value), 1e-12)
	close(t, "range", float64(must(chain.ResistanceRangeAt(units.Celsius(25))).High), float64(s.Resistance().High), 1e-12)
	close(t, "wire", float64(s.WireToBuy()), 1.1*float64(chain.WireLength()), 1e-12)
	close(t, "mass", float64(chain.Mass()), float64(up.Mass()+low.Mass()), 1e-12)
	if r := s.Resistance(); !s.Pass(r.Value) || s.Pass(r.High*1.001) || s.Pass(units.Resistance(math.NaN())) {
		t.Errorf("passes outside of %v", r)
	}
	f := s.Frame()
	cell := func(row string, column int) string {
		for i, name := range f.Columns[0].Texts {
			if name == row {
				return f.Columns[column].Texts[i]
			}
		}
		return "no row " + row
	}
	for _, c := range []struct {
		row    string
		column int
		want   string
	}{{"Turns", 1, "2000"}, {"Turns", 2, "1500"}, {"Turns", 3, "3500"}, {"Strands, side by side", 1, ""}, {"Strands, side by side", 2, "2"},
		{"Wrap over the wire", 2, "0.2 mm"}, {"Finish to", 1, "start of winding 2"}, {"Pass to", 3, s.Resistance().High.String()}} {
		if got := cell(c.row, c.column); got != c.want {
			t.Errorf("%s, column %d: got %q, want %q", c.row, c.column, got, c.want)
		}
	}
	if f.Title != "Build sheet, pair: 2 windings in series" || chain.Turns() != 3500 {
		t.Errorf("%q, %d turns", f.Title, chain.Turns())
	}
	for want, err := range map[string]error{
		"order Taps: not for windings in series: got 1":                 third(chain.BuildSheet(Order{Taps: []int{5}})),
		"order: more than one: got 2":                                   third(chain.BuildSheet(Order{}, Order{})),
		"chain: no windings: got no windings":                           third(Chain{}.BuildSheet()),
		"winding 1 of the chain: temperature: out of range: got 900 °C": third(chain.BuildSheet(Order{Temperature: units.Celsius(900)})),
		"chain: parts of one winding: got 2 windings in series":         third(must(up.Tapped(500)).BuildSheet()),
		"chain: parts of one winding: got 2 windings":                   third(must(low.StrandsInSeries()).BuildSheet()),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %q", err, want)
		}
	}
	if _, err := s.Sheet(3); err == nil || !strings.Contains(err.Error(), "got 3, want 1 to 2") {
		t.Errorf("sheet 3: %v", err)
	}
}

func third(_ Sheets, err error) error { return err }

// Taps on the sheet agree with the parts of the winding cut there.
func TestTapsOnTheSheet(t *testing.T) {
	for _, style := range []Style{{}, {Lay: Layered}, {Strands: 2}, {Under: 0.2 * mm}} {
		c := wound(t, steel, gauge(t, 43), 3000, style)
		s := must(c.BuildSheet(Order{Taps: []int{1000, 2500}, Temperature: units.Celsius(25)}))
		cut := must(c.Tapped(1000, 2500))
		first, next := must(cut.Coil(1)), must(cut.Coil(2))
		close(t, "first tap", float64(s.taps[0].Value), 1.01965*float64(first.Resistance()), 1e-9)
		close(t, "second tap", float64(s.taps[1].Value), 1.01965*float64(first.Resistance()+next.Resistance()), 1e-9)
	}
	c := wound(t, steel, gauge(t, 43), 3000)
	for _, bad := range [][]int{{0}, {3000}, {2000, 1000}, {500, 500}, {-1}} {
		if _, err := c.BuildSheet(Order{Taps: bad}); err == nil || !strings.Contains(err.Error(), "order Taps: out of range: got ") || !strings.Contains(err.Error(), "1 to 2999") {
			t.Errorf("taps %v: %v", bad, err)
		}
	}
}

// Windings that are alike share a column; the first of 7000 turns in three sections has one turn more.
func TestSheetsOfSections(t *testing.T) {
	f := Round{CoreDiameter: 12 * mm, Height: 9 * mm, FlangeDiameter: 30 * mm}
	for turns, want := range map[int][]string{
		6999: {"Quantity", "Windings 1 to 3, each", "All"},
		7000: {"Quantity", "Winding 1", "Windings 2 and 3, each", "All"},
	} {
		sheet := must(must(InSections(f, gauge(t, 42), turns, 3, mm)).BuildSheet()).Frame()
		var heads []string
		for _, c := range sheet.Columns {
			heads = append(heads, c.Name)
		}
		if fmt.Sprint(heads) != fmt.Sprint(want) {
			t.Errorf("%d turns: %q, want %q", turns, heads, want)
		}
		for i, name := range sheet.Columns[0].Texts {
			if got := sheet.Columns[1].Texts[i]; turns == 6999 && name == "Start to" && got != "1: ground; 2: finish of winding 1; 3: finish of winding 2" {
				t.Errorf("leads: %q", got)
			}
			if got := sheet.Columns[len(sheet.Columns)-1].Texts[i]; name == "Turns" && got != fmt.Sprint(turns) {
				t.Errorf("turns of all: %q", got)
			}
		}
	}
}

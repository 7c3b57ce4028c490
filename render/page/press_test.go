package page_test

import (
	"slices"
	"testing"

	"lode/render/internal/sample"
	"lode/render/page"
)

// pressed writes a page and prepares some of its results ahead.
func pressed(t testing.TB, p *page.Press, d page.Document, ahead bool) page.Pieces {
	t.Helper()
	p.Begin(d)
	cell := 0
	for _, b := range d.Blocks {
		c, ok := b.(page.Cell)
		if !ok {
			continue
		}
		cell++
		figures := 0
		for i, r := range c.Results {
			if ahead {
				if err := p.Prepare(cell, i, figures, r); err != nil {
					t.Fatal(err)
				}
			}
			if r.Figure != nil {
				figures++
			}
		}
	}
	pieces, err := p.Pieces(d)
	if err != nil {
		t.Fatal(err)
	}
	return pieces
}

// changed returns the sample with another value in its first plain result and other words in front.
func changed(prose bool) page.Document {
	d := sample.Document()
	d.Blocks = slices.Clone(d.Blocks)
	d.Record = []page.Entry{{Name: "turn", Text: "another"}}
	if prose {
		d.Blocks = slices.Insert(d.Blocks, 0, page.Block(page.Prose{Source: "## Words in front"}))
	}
	for i, b := range d.Blocks {
		c, ok := b.(page.Cell)
		if !ok || len(c.Results) == 0 {
			continue
		}
		c.Results = slices.Clone(c.Results)
		c.Results[0] = page.Result{Label: c.Results[0].Label, Value: "another value"}
		d.Blocks[i] = c
		break
	}
	return d
}

// A press gives what Write gives, whatever it takes over from the pages before.
func TestPress(t *testing.T) {
	p := page.NewPress()
	for i, d := range []page.Document{sample.Document(), changed(false), changed(false), changed(true), sample.Document(), {Title: "empty"}, sample.Document()} {
		if got, want := pressed(t, p, d, i%2 == 0), written(t, d); got.String() != want || got.Len() != len(want) {
			t.Errorf("page %d is another than that of Write", i)
		}
	}
}

// Between two pages of the same text only elements differ, and only those that changed.
func TestPieces(t *testing.T) {
	p := page.NewPress()
	a, b := pressed(t, p, sample.Document(), true), pressed(t, p, changed(false), true)
	if !slices.Equal(a.Around, b.Around) || len(a.Elements) != len(b.Elements) || len(a.Around) != len(a.Elements)+1 {
		t.Fatalf("the pages have %d and %d elements and other text around", len(a.Elements), len(b.Elements))
	}
	differ := 0
	for i := range a.Elements {
		if a.Elements[i] != b.Elements[i] {
			differ++
		}
	}
	if differ != 2 { // the value and the record
		t.Errorf("%d elements differ, want 2", differ)
	}
}

func BenchmarkPress(b *testing.B) {
	p := page.NewPress()
	for b.Loop() {
		pressed(b, p, sample.Document(), true)
	}
}

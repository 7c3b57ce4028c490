package session_test

import (
	"context"
	"os"
	"strings"
	"testing"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/session"
)

// TestMain lets the test's program be the child that evaluates.
func TestMain(m *testing.M) {
	if evaluate.IsChild(os.Args) {
		if evaluate.Serve(os.Stdin, os.Stdout) != nil {
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

// talk enters lines one by one; each has to be taken.
func talk(t *testing.T, entries ...string) *session.Session {
	t.Helper()
	s := session.New(evaluate.Run, "unnamed.md", "")
	for _, e := range entries {
		if out := s.Enter(context.Background(), e); !out.Taken {
			t.Fatalf("%s: %v", e, out.Issues)
		}
	}
	return s
}

func enter(s *session.Session, code string) session.Outcome {
	return s.Enter(context.Background(), code)
}

func TestRedefinitionTellsWhatMoved(t *testing.T) {
	s := talk(t, "R := 6*kΩ", "R * 2", "L := 2*H", "L")
	out := enter(s, "R := 9*kΩ")
	if !out.Taken || len(out.Moved) != 1 || out.Moved[0].Label != "R * 2" || out.Moved[0].Before != "12 kΩ" || out.Moved[0].After != "18 kΩ" || out.Moved[0].Relative != "+50.0 %" {
		t.Errorf("got %+v", out)
	}
	if len(out.Replaced) != 1 || out.Replaced[0] != "R" || strings.Count(s.Text(), "R :=") != 1 {
		t.Errorf("replaced %v in\n%s", out.Replaced, s.Text())
	}
	if out, any := s.Undo(context.Background()); !any || !out.Taken || !strings.Contains(s.Text(), "R := 6*kΩ") {
		t.Errorf("undo gave %+v\n%s", out, s.Text())
	}
}

// TestOldResultsAreNotShownAgain redefines by code that holds the text of the last cell.
func TestOldResultsAreNotShownAgain(t *testing.T) {
	s := talk(t, "x := 3*mm", "x")
	if out := enter(s, "x := 4*mm"); !out.Taken || out.Shown != "" || len(out.Moved) != 1 {
		t.Errorf("got %+v", out)
	}
	if out := enter(s, "x := 5*mm\n2*x"); !out.Taken || !strings.Contains(out.Shown, "10 mm") || strings.Contains(out.Shown, "5 mm\n") {
		t.Errorf("got %+v", out)
	}
}

func TestRefusedEntryLeavesTheNotebook(t *testing.T) {
	s := talk(t, "R := 6*kΩ", "L := 2*H", "R / L")
	before := s.Text()
	for _, code := range []string{"R := 3*mm + 1*Ω", "nothing", "x := []int{1}[5]", "for {"} {
		if out := enter(s, code); out.Taken || len(out.Issues) == 0 || s.Text() != before {
			t.Errorf("%s: %+v\n%s", code, out, s.Text())
		}
	}
}

// TestLaterNamesMoveUp redefines by what stands below, directly, through another name, and by a
// function.
func TestLaterNamesMoveUp(t *testing.T) {
	s := talk(t, "a := 1*mm", "b := 2*a", "b", "c := 5*mm", "d := c*2", "func f() units.Length { return d }")
	out := enter(s, "a := d/2 + c")
	if !out.Taken || len(out.Moved) != 1 || out.Moved[0].After != "20 mm" {
		t.Fatalf("got %+v\n%s", out, s.Text())
	}
	if i, j, k := strings.Index(s.Text(), "c := 5*mm"), strings.Index(s.Text(), "d := c*2"), strings.Index(s.Text(), "a := d/2 + c"); i < 0 || i > j || j > k {
		t.Errorf("the order is\n%s", s.Text())
	}
	if strings.Count(s.Text(), "c := 5*mm") != 1 || strings.Count(s.Text(), "d := c*2") != 1 {
		t.Errorf("a definition stands twice:\n%s", s.Text())
	}
	s = talk(t, "a := 1*mm", "a", "d := 7*mm", "func f() units.Length { return d }")
	if out := enter(s, "a := f()"); !out.Taken || len(out.Moved) != 1 || out.Moved[0].After != "7 mm" {
		t.Errorf("by a function: %+v\n%s", out, s.Text())
	}
}

// TestCirclesAreRefused wants both places named and nothing moved.
func TestCirclesAreRefused(t *testing.T) {
	s := talk(t, "a := 1*mm", "b := 2*a", "b")
	before := s.Text()
	out := enter(s, "a := b/2")
	if out.Taken || s.Text() != before || len(out.Issues) == 0 {
		t.Fatalf("got %+v\n%s", out, s.Text())
	}
	if i := out.Issues[0]; !strings.Contains(i.Got, "the definition at line") || !strings.Contains(i.Hint, "b needs a: definitions that need each other") {
		t.Errorf("got %v", i)
	}
}

func TestForksStandApart(t *testing.T) {
	s := talk(t, "R := 6*kΩ", "R")
	if err := s.Fork("thick"); err != nil {
		t.Fatal(err)
	}
	enter(s, "R := 60*Ω")
	if err := s.Take("first"); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(s.Text(), "6*kΩ") || s.Now() != "first" || len(s.Experiments()) != 2 {
		t.Errorf("%s: %v\n%s", s.Now(), s.Experiments(), s.Text())
	}
}

// TestTablesTellWhatMoved wants the number of cells and the largest step, not the table.
func TestTablesTellWhatMoved(t *testing.T) {
	s := talk(t, "n := 2.0", `table.Of(table.Head("what", "R", "L"), table.Row("a", n*kΩ, 2*H), table.Row("b", 5*kΩ, n*H))`, "figure.Lines(study.Over(func(x float64) float64 { return n * x }, 0, 1, 5))")
	out := enter(s, "n := 3.0")
	if len(out.Moved) != 2 || out.Moved[0].Before != "" || out.Moved[0].After != "2 of 6 values moved, most in R, row 1: 2 kΩ → 3 kΩ" || !strings.Contains(out.Moved[1].After, "4 of 10 values moved") {
		t.Errorf("got %+v", out.Moved)
	}
	if out := enter(s, "n := 3.0"); len(out.Moved) != 0 {
		t.Errorf("nothing changed, and %+v", out.Moved)
	}
}

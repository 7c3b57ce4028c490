package library_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"lode/cmd/internal/present"
	"lode/engine"
	"lode/render/text"
)

// TestAgain runs every cell of the corpus and every notebook that ships three times in a row: later runs,
// for which nothing is read again, show what the first one did.
func TestAgain(t *testing.T) {
	lib, texts := load(t), cells(t)
	files, err := filepath.Glob("../../../notebooks/*.md")
	if err != nil || len(files) == 0 {
		t.Fatal("no notebooks: ", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[file] = string(text)
	}
	ran := 0
	for name, text := range texts {
		file := "cell.lode"
		if filepath.Ext(name) == ".md" {
			file = name
		}
		n := engine.Open(lib, file, []byte(text))
		n.Limits.Depth, n.Limits.Steps = 300, 300_000
		if len(n.Issues) > 0 {
			continue
		}
		ran++
		first := everything(n)
		for range 2 {
			if again := everything(n); again != first {
				t.Errorf("%s: first\n%s\nand then\n%s", name, first, again)
			}
		}
	}
	if ran < 150 {
		t.Errorf("%d notebooks ran, want at least 150", ran)
	}
}

// everything is all that a run shows, with the issue that ended it.
func everything(n *engine.Notebook) (all string) {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	failed := n.Run(ctx, func(r engine.Result) {
		all += fmt.Sprintln(r.Line, present.Terminal(text.Style{Width: 100}, []present.Shown{present.Result(r)}))
	})
	return all + fmt.Sprint(failed)
}

// TestAgainFromZero turns a knob between two runs whose variables grow.
func TestAgainFromZero(t *testing.T) {
	n := engine.Open(load(t), "cell.lode", []byte(`
at := knob("at", 3.0, 1.0, 9.0)
var list []float64
list = append(list, at, 2)
grow := func() { list = append(list, at) }
grow()
var m map[string]float64
m == nil
m = map[string]float64{}
m["x"] += at
m["x"]
list
`))
	if len(n.Issues) > 0 {
		t.Fatal(n.Issues)
	}
	first := everything(n)
	n.Turned = map[string]float64{"at": 5}
	if turned := everything(n); turned == first {
		t.Error("the knob does not turn")
	}
	n.Turned = nil
	if again := everything(n); again != first {
		t.Errorf("first\n%s\nand then\n%s", first, again)
	}
}

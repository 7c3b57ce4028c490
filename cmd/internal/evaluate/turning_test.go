package evaluate

import (
	"bufio"
	"bytes"
	"testing"

	"lode/cmd/internal/knobbed"
	"lode/cmd/internal/library"
	"lode/engine"
)

// BenchmarkTurn runs each notebook that ships as a served page does: in a child that stays,
// with a knob elsewhere each time. It runs in this process, so that it can be profiled.
func BenchmarkTurn(b *testing.B) {
	all, err := knobbed.In("../../../notebooks")
	if err != nil {
		b.Fatal(err)
	}
	lib, err := library.Load()
	if err != nil {
		b.Fatal(err)
	}
	k := newKept(lib)
	for _, n := range all {
		b.Run(n.Name, func(b *testing.B) {
			knob := engine.Open(lib, n.Name+".md", []byte(n.Source)).Knobs()[0]
			for i := 0; b.Loop(); i++ {
				r := Request{File: n.Name + ".md", Source: n.Source, Live: true, Stay: true}
				r.Turned = map[string]float64{knob.Name: knob.Low + (knob.High-knob.Low)*float64(10+i%80)/100}
				var out bytes.Buffer
				newChild(r, bufio.NewWriter(&out)).serve(k)
				if !bytes.Contains(out.Bytes(), []byte(`{"Served":`)) {
					b.Fatalf("no page: %.2000s", out.Bytes())
				}
			}
		})
	}
}

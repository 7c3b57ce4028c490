package formula

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"
)

func resonance(l, c Node) Node {
	return Quotient(Number("1", ""), Product(Product(Number("2", ""), Name("pi")), Root(Product(l, c))))
}

func TestText(t *testing.T) {
	a, b, c := Name("a"), Name("b"), Name("c")
	for want, n := range map[string]Node{
		"1/(2·pi·√(L·C))": resonance(Name("L"), Name("C")),
		"a − (b − c)":     Difference(a, Difference(b, c)),
		"a − b − c":       Difference(Difference(a, b), c),
		"(a + b)·c":       Product(Sum(a, b), c),
		"a/(b·c)":         Quotient(a, Product(b, c)),
		"a/b·c":           Product(Quotient(a, b), c),
		"a·(b/c)":         Product(a, Quotient(b, c)),
		"(a·b)^2":         Power(Product(a, b), Number("2", "")),
		"a^(b + c)":       Power(a, Sum(b, c)),
		"−(a + b)":        Negative(Sum(a, b)),
		"a·(−3)":          Product(a, Number("−3", "")),
		"3.4 H·220 pF":    Product(Number("3.4", "H"), Number("220", "pF")),
		"(3 V)^2/(7 kΩ)":  Quotient(Power(Number("3", "V"), Number("2", "")), Number("7", "kΩ")),
		"max(a, |b|)":     Call("max", a, Magnitude(b)),
		"a + b < c":       Relation("<", Sum(a, b), c),
	} {
		if got := n.Text(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestWorking(t *testing.T) {
	w := Working{Name: "f0", Formula: resonance(Name("L"), Name("C")), Filled: resonance(Number("3.4", "H"), Number("140", "pF")), Result: "7.295", Unit: "kHz"}
	if got, want := w.Text(), "f0 = 1/(2·pi·√(L·C)) = 1/(2·pi·√(3.4 H·140 pF)) = 7.295 kHz"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	math := string(w.MathML())
	for _, want := range []string{"<msub><mi>f</mi><mtext>0</mtext></msub>", "<mi>π</mi>", "<msqrt>", "<mfrac>", "<mtext>kHz</mtext>", "<mn>7.295</mn>"} {
		if !strings.Contains(math, want) {
			t.Errorf("%s is missing in %s", want, math)
		}
	}
	if got := strings.Count(math, "<mtr>"); got != 3 {
		t.Errorf("%d lines, want 3", got)
	}
	short := Working{Name: "R", Formula: Number("7.2", "kΩ"), Filled: Number("7.2", "kΩ"), Result: "7.2", Unit: "kΩ"}
	if got := short.Text(); got != "R = 7.2 kΩ" {
		t.Errorf("repetitions stay: %q", got)
	}
}

func TestMarkup(t *testing.T) {
	for want, n := range map[string]Node{
		`<msub><mi mathvariant="normal">cable</mi><mtext>C</mtext></msub>`: Name("cable_C"),
		`<mi>ω</mi>`: Name("omega"),
		`<mrow><mn>2</mn><mo>·</mo><mn>3</mn></mrow>`: Product(Number("2", ""), Number("3", "")),
		`<msup><mn>10</mn><mn>−7</mn></msup>`:         Number("4·10⁻⁷", "H/m"),
		`<mo form="prefix">(</mo>`:                    Product(Name("a"), Sum(Name("b"), Name("c"))),
		`<mi mathvariant="normal">x&lt;y</mi>`:        Name("x<y"),
		`<mfrac><mrow><mi>a</mi></mrow>`:              Quotient(Name("a"), Name("b")),
	} {
		got := string(n.MathML())
		if !strings.Contains(got, want) {
			t.Errorf("%s is missing in %s", want, got)
		}
		decoder := xml.NewDecoder(strings.NewReader(got))
		for {
			if _, err := decoder.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%v in %s", err, got)
			}
		}
	}
	// A fraction needs no brackets on the page, though it does in a line of text.
	if got := string(Product(Name("a"), Quotient(Name("b"), Name("c"))).MathML()); strings.Contains(got, "(") {
		t.Errorf("needless brackets in %s", got)
	}
}

package browser

import (
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"lode/render/figure"
	"lode/render/internal/example"
	"lode/render/internal/sample"
	"lode/render/page"
	"lode/units"
	"lode/units/frame"
)

// By keyboard alone the cursor reads the value that the data holds.
func TestReadout(t *testing.T) {
	data := example.Coil("as found", 3.4, 7200, 140e-12)
	f, err := figure.Response(data)
	if err != nil {
		t.Fatal(err)
	}
	v := open(t, page.Document{Blocks: []page.Block{page.Cell{Results: []page.Result{{Figure: f}}}}}, 1200, "light")
	text := func() string {
		return run(t, v, chromedp.Evaluate[string](`document.querySelector(".readout").getAttribute("aria-valuetext")`))
	}
	run(t, v, chromedp.Focus(".readout"))
	for _, key := range []string{kb.End, kb.PageDown, kb.PageDown, kb.PageDown, kb.PageDown, kb.ArrowLeft, kb.ArrowRight, kb.PageUp} {
		run(t, v, chromedp.KeyEvent(key))
	}
	checkReading(t, data, text(), 20*math.Pow(1000, 0.85))
	run(t, v, chromedp.KeyEvent(kb.Escape))
	if got := text(); !strings.Contains(got, "arrow keys") {
		t.Errorf("after Escape: %q", got)
	}
	run(t, v, chromedp.MouseClickXY(600, 300))
	if got := text(); !strings.Contains(got, "as found") {
		t.Errorf("after a click: %q", got)
	}
}

func checkReading(t *testing.T, data frame.Frame, text string, hertz float64) {
	t.Helper()
	left, right, found := strings.Cut(strings.ReplaceAll(text, "\u00a0", " "), ": as found ")
	x, errX := units.Parse(left)
	y, errY := units.Parse(strings.ReplaceAll(strings.ReplaceAll(right, "−", "-"), " dB", ""))
	if !found || errX != nil || errY != nil {
		t.Fatalf("got %q (%v, %v)", text, errX, errY)
	}
	best := 0
	for i, f := range data.Columns[0].Values {
		if math.Abs(f-hertz) < math.Abs(data.Columns[0].Values[best]-hertz) {
			best = i
		}
	}
	want := data.Columns[1].Values[best]
	if math.Abs(x.Value/hertz-1) > 0.01 || math.Abs(y.Value-want) > 0.2 {
		t.Errorf("got %q, want %.1f dB at %.0f Hz", text, want, hertz)
	}
}

// Without script the page says the same, save for the cursor.
func TestWithoutScript(t *testing.T) {
	v := open(t, sample.Document(), 1200, "light")
	text := `[...document.querySelectorAll(".readout")].forEach(e => e.remove()); document.body.innerText`
	with := run(t, v, chromedp.Evaluate[string](text))
	call(t, v, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	run(t, v, chromedp.Reload())
	readouts := run(t, v, chromedp.Evaluate[int](`document.querySelectorAll(".readout").length`))
	without := run(t, v, chromedp.Evaluate[string](text))
	if readouts != 0 || with != without || len(without) < 1000 {
		t.Errorf("without script: %d readouts, %d letters, want 0 and %d", readouts, len(without), len(with))
	}
}

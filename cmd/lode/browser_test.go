package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"lode/cmd/internal/knobbed"
	"lode/cmd/internal/watch"
	"lode/engine/issue"
)

// This file turns knobs in a browser: on a page from disk, and on one that is served.

// threeKnobs is a notebook with three knobs and five figures.
const threeKnobs = `# Three knobs

` + "```go" + `
turns := knob("turns", 6800, 5000, 9000)
tone := knob("tone", 500*kΩ, 100*kΩ, 1*MΩ)
lead := knob("lead", 6*metre, 1*metre, 12*metre)
bobbin := coil.Racetrack{CoreLength: 74*mm, CoreWidth: 7*mm, Height: 9*mm, FlangeWidth: 17*mm}
c := coil.Wind(bobbin, wire.AWG(42), turns)
c.Resistance()
line := load.From(c).Tone(tone, 22*nF).Volume(500*kΩ).Cable(lead).Input(1*MΩ)
short := load.From(c).Tone(tone, 10*nF).Volume(250*kΩ).Cable(lead).Input(1*MΩ)
` + "```" + `

` + "```go working" + `
f0 := 1/(2*π*sqrt(c.Inductance()*(c.Capacitance() + lead*load.CableCapacitance)))
` + "```" + `

` + "```go" + `
line.Peak()
a := line.Named("one").Sweep(20*Hz, 20*kHz)
b := short.Named("two").Sweep(20*Hz, 20*kHz)
figure.Response(a)
figure.Response(b)
figure.Response(a, b)
figure.Response(line.Named("three").Sweep(100*Hz, 10*kHz)).Titled("Near the peak")
figure.Response(line.Named("four").Sweep(1*kHz, 100*kHz), b).Titled("Above")
` + "```" + `
`

// tab is one page in a browser.
type tab struct {
	context.Context
	mu       sync.Mutex
	trouble  []string
	requests []string
}

func browse(t testing.TB, url string) *tab {
	t.Helper()
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("needs a browser: set LODE_OUTSIDE=1")
	}
	v := &tab{}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()), chromedp.WindowSize(1200, 900))
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stopAllocator)
	browser, stopBrowser := chromedp.NewContext(allocator, chromedp.WithListener(v.listen))
	t.Cleanup(stopBrowser)
	ctx, stop := context.WithTimeout(browser, 90*time.Second)
	t.Cleanup(stop)
	v.Context = ctx
	if _, err := chromedp.Call(v, network.Enable, network.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(v, log.Enable, cdp.Empty{}); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Run(v, chromedp.Navigate(url)); err != nil {
		t.Fatal(err)
	}
	return v
}

func (v *tab) listen(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		v.requests = append(v.requests, e.Request.URL)
	case *log.EventEntryAdded:
		v.trouble = append(v.trouble, e.Entry.Text)
	case *runtime.EventExceptionThrown:
		v.trouble = append(v.trouble, e.ExceptionDetails.Text)
	}
}

// text evaluates a script whose value is a text.
func (v *tab) text(t testing.TB, script string) string {
	t.Helper()
	text, err := chromedp.Run(v, chromedp.Evaluate[string](script))
	if err != nil {
		t.Fatalf("%v in %s", err, script)
	}
	return text
}

// wait asks until a script's value is true.
func (v *tab) wait(t testing.TB, script string) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if v.text(t, "String("+script+")") == "true" {
			return
		}
	}
	t.Fatalf("never true: %s\n%s", script, v.text(t, `JSON.stringify(document.documentElement.dataset) + document.body.innerText.slice(0, 300)`))
}

func (v *tab) quiet(t testing.TB) {
	t.Helper()
	v.mu.Lock()
	defer v.mu.Unlock()
	if len(v.trouble) > 0 {
		t.Errorf("the browser complains: %q", v.trouble)
	}
}

// outputs are the plain results of a page, without its knobs, the label in front.
const outputs = `[...document.querySelectorAll("p.result")].map(p => p.querySelector("code").textContent + " " + p.querySelector("output").textContent).join("\n")`

// drawn are the curves of a page.
const drawn = `[...document.querySelectorAll(".plate .wide svg path[data-name]")].map(p => p.getAttribute("d")).join("\n")`

func setTo(knob, stop int) string {
	return fmt.Sprintf(`(() => { const i = document.querySelector("#knob-%d"); i.value = %d; i.dispatchEvent(new Event("input", { bubbles: true })); return i.parentNode.querySelector("output").textContent; })()`, knob, stop)
}

// TestKnobsOnAPage turns knobs on a page from disk, and holds what it shows against runs
// with the knobs at the same values.
func TestKnobsOnAPage(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "x.md")
	if err := os.WriteFile(file, []byte(threeKnobs), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, fault, code := call("run", file); code != exitFine {
		t.Fatal(fault)
	}
	html, err := os.ReadFile(filepath.Join(folder, "x.html"))
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("the page has %d bytes", len(html))
	if len(html) > 300_000 {
		t.Errorf("the page has %d bytes, want 300000", len(html))
	}
	v := browse(t, "file://"+filepath.Join(folder, "x.html"))
	v.wait(t, `document.querySelector(".turning").dataset.ready !== undefined`)
	before, curves := v.text(t, outputs), v.text(t, drawn)

	for knob, name := range []string{"turns", "tone", "lead"} {
		value := v.text(t, setTo(knob, 0))
		other := filepath.Join(folder, "other.html")
		if _, fault, code := call("run", file, "-o", other, "-knob", name+"="+value); code != exitFine {
			t.Fatal(fault)
		}
		w := browse(t, "file://"+other)
		if got, want := v.text(t, outputs), w.text(t, outputs); got != want || got == before && name != "tone" {
			t.Errorf("%s at %s shows\n%s\nwant\n%s", name, value, got, want)
		}
		if got, want := v.text(t, drawn), w.text(t, drawn); got != want || got == curves {
			t.Errorf("%s at %s draws other curves than a run", name, value)
		}
		if n := v.text(t, `String(document.querySelectorAll(".readout").length)`); n != "5" {
			t.Errorf("%s figures can be read off, want 5", n)
		}
	}
	_ = v.text(t, `(document.querySelector(".turning button").click(), "")`)
	if v.text(t, outputs) != before || v.text(t, drawn) != curves {
		t.Error("the page does not find back")
	}
	if got := v.text(t, `[...document.querySelectorAll(".turning input")].every(i => i.labels.length === 1 && i.getAttribute("aria-valuetext") && !i.disabled) + " " + document.activeElement.id`); got != "true knob-0" {
		t.Errorf("labels, texts and focus: %s", got)
	}
	v.quiet(t)
	v.mu.Lock()
	defer v.mu.Unlock()
	if len(v.requests) != 1 {
		t.Errorf("requests %q, want the page alone", v.requests)
	}
}

// TestWatchInABrowser turns a knob on the served page of the first notebook, breaks the
// notebook and mends it.
func TestWatchInABrowser(t *testing.T) {
	source, err := os.ReadFile("../../notebooks/first-rewind.md")
	if err != nil {
		t.Fatal(err)
	}
	text, err := knobbed.With(string(source))
	if err != nil {
		t.Fatal(err)
	}
	v, save := watched(t, text)
	before := v.text(t, outputs)
	v.turn(t, 10)
	if v.text(t, outputs) == before {
		t.Error("the turned page shows the same results")
	}

	save(strings.Replace(text, "room\n", "romo\n", 1))
	v.wait(t, `document.querySelector(".trouble")?.textContent.includes("romo")`)
	if n := v.text(t, `String(document.querySelectorAll(".plate").length)`); n == "0" {
		t.Error("the last good page is gone")
	}
	save(strings.Replace(text, "# Rewinding", "# Mended: rewinding", 1))
	v.wait(t, `!document.querySelector(".trouble") && document.querySelector("h1").textContent.startsWith("Mended")`)
	v.quiet(t)
}

// TestTwoPagesInABrowser turns a knob on one of two pages of a notebook: the other shows the same, and so does
// one that is opened later; and when both are left alone all results are those of a run.
func TestTwoPagesInABrowser(t *testing.T) {
	v, _ := watched(t, threeKnobs)
	w := browse(t, v.text(t, "location.href"))
	w.wait(t, `document.querySelector(".turning")?.dataset.ready !== undefined`)
	stands := `[...document.querySelectorAll(".turning input")].map(i => i.value).join(" ")`
	v.turn(t, 30)
	w.wait(t, `document.querySelector("#knob-0").value === "30"`)
	_ = w.text(t, setTo(1, 20))
	v.wait(t, `document.querySelector("#knob-1").value === "20"`)
	later := browse(t, v.text(t, "location.href"))
	later.wait(t, `document.querySelector(".turning")?.dataset.ready !== undefined`)
	want := v.text(t, stands)
	if !strings.HasPrefix(want, "30 20 ") {
		t.Fatalf("the knobs stand at %s", want)
	}
	for _, other := range []*tab{w, later} {
		other.wait(t, fmt.Sprintf("%s === %q && %s === %q && %s === %q", stands, want, outputs, v.text(t, outputs), drawn, v.text(t, drawn)))
		other.quiet(t)
	}
	if v.text(t, `document.querySelector(".turning button").hidden + ""`) != "false" || later.text(t, `document.querySelector(".turning button").hidden + ""`) != "false" {
		t.Error("a page does not offer the way back")
	}
	_ = later.text(t, `(document.querySelector(".turning button").click(), "")`)
	v.wait(t, `document.querySelector(".turning button").hidden`)
	v.quiet(t)
}

// watched serves a notebook and opens it in a browser; save writes the notebook anew.
func watched(t testing.TB, text string) (v *tab, save func(string)) {
	t.Helper()
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("needs a browser: set LODE_OUTSIDE=1")
	}
	file := filepath.Join(t.TempDir(), "x.md")
	save = func(text string) {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	save(text)
	ctx, stop := context.WithCancel(context.Background())
	pool := &watch.Pool{}
	ready, done := make(chan string, 1), make(chan error, 1)
	w := watch.Watch{File: file, Run: pool.Run, Ready: func(a string) { ready <- a }, Tell: func(list []issue.Issue) { t.Log(list) }}
	go func() { done <- w.Serve(ctx) }()
	t.Cleanup(func() {
		stop()
		if err := <-done; err != nil {
			t.Error(err)
		}
		pool.Close()
	})
	v = browse(t, <-ready)
	v.wait(t, `document.querySelectorAll(".results").length > 0 && document.querySelector(".turning")?.dataset.ready !== undefined`)
	return v, save
}

// turn turns the first knob of a served page to a stop and returns how many milliseconds it
// took until the page that answers was painted.
func (v *tab) turn(t testing.TB, stop int) float64 {
	t.Helper()
	_ = v.text(t, fmt.Sprintf(`(() => {
		delete window.took;
		const done = took => { window.took = took; };
		const start = performance.now(), root = document.documentElement, i = document.querySelector("#knob-0");
		const want = String(+(root.dataset.number || 0) + 1);
		new MutationObserver((_, o) => { if (!(+root.dataset.number >= +want)) return; o.disconnect(); requestAnimationFrame(() => setTimeout(() => done(String(performance.now() - start)))); }).observe(root, { attributes: true });
		i.value = %d; i.dispatchEvent(new Event("input", { bubbles: true }));
		return "";
	})()`, stop))
	v.wait(t, "window.took !== undefined")
	var took float64
	if err := json.Unmarshal([]byte(v.text(t, "window.took")), &took); err != nil {
		t.Fatal(err)
	}
	return took
}

// BenchmarkTurn turns a knob of each notebook that ships, as a person does, and reports the
// median from the turn to the painted page. The last figure, or what there is instead, is in sight.
func BenchmarkTurn(b *testing.B) {
	all, err := knobbed.In("../../notebooks")
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range all {
		b.Run(n.Name, func(b *testing.B) {
			v, _ := watched(b, n.Source)
			_ = v.text(b, `(([...document.querySelectorAll(".plate")].pop() || [...document.querySelectorAll(".results > *")].pop()).scrollIntoView({ block: "center" }), "")`)
			var times []float64
			for i := 0; b.Loop(); i++ {
				times = append(times, v.turn(b, 10+3*i%80))
				time.Sleep(120 * time.Millisecond) // a person's next move; children get ready meanwhile
			}
			sort.Float64s(times)
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(times[len(times)/2], "ms/median")
			b.ReportMetric(times[0], "ms/best")
			b.ReportMetric(times[len(times)*9/10], "ms/90%")
		})
	}
}

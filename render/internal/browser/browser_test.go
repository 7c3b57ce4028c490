package browser

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"lode/render/internal/sample"
	"lode/render/page"
)

// visit is one look at a page.
type visit struct {
	context.Context
	mu       sync.Mutex
	trouble  []string
	requests []string
}

// open writes a document to disk and opens it in a fresh browser of the given width.
func open(t *testing.T, d page.Document, width int64, scheme string) *visit {
	t.Helper()
	if os.Getenv("LODE_OUTSIDE") != "1" {
		t.Skip("needs a browser: set LODE_OUTSIDE=1")
	}
	path := filepath.Join(t.TempDir(), "page.html")
	file, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := page.Write(file, d); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	v := &visit{}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()))
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stopAllocator)
	browser, stopBrowser := chromedp.NewContext(allocator, chromedp.WithListener(v.listen))
	t.Cleanup(stopBrowser)
	ctx, stop := context.WithTimeout(browser, 60*time.Second)
	t.Cleanup(stop)
	v.Context = ctx
	call(t, v, network.Enable, network.EnableParams{})
	call(t, v, log.Enable, cdp.Empty{})
	call(t, v, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: width, Height: 900, DeviceScaleFactor: 1})
	call(t, v, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
	run(t, v, chromedp.Navigate("file://"+path))
	return v
}

func (v *visit) listen(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		v.requests = append(v.requests, e.Request.URL)
	case *log.EventEntryAdded:
		v.trouble = append(v.trouble, e.Entry.Text)
	case *runtime.EventConsoleAPICalled:
		v.trouble = append(v.trouble, "console: "+e.Type.String())
	case *runtime.EventExceptionThrown:
		v.trouble = append(v.trouble, e.ExceptionDetails.Text)
	}
}

// call runs a command of the protocol, run an action.
func call[P, R any](t *testing.T, v *visit, command cdp.Command[P, R], params P) R {
	t.Helper()
	result, err := chromedp.Call(v, command, params)
	if err != nil {
		t.Fatal(err)
	}
	return result
}

func run[T any](t *testing.T, v *visit, action chromedp.Action[T]) T {
	t.Helper()
	result, err := chromedp.Run(v, action)
	if err != nil {
		t.Fatal(err)
	}
	return result
}

// ask evaluates a script that returns a list of complaints and fails for each.
func (v *visit) ask(t *testing.T, name, script string) {
	t.Helper()
	for _, c := range run(t, v, chromedp.Evaluate[[]string](script)) {
		t.Errorf("%s: %s", name, c)
	}
}

func TestPage(t *testing.T) {
	for _, c := range []struct {
		width  int64
		scheme string
	}{{1200, "light"}, {1200, "dark"}, {375, "light"}, {320, "dark"}} {
		v := open(t, sample.Document(), c.width, c.scheme)
		v.ask(t, c.scheme+" texts", texts)
		v.ask(t, c.scheme+" contrast", contrast)
		v.ask(t, c.scheme+" width", `document.documentElement.scrollWidth > innerWidth ? ["the page is " + document.documentElement.scrollWidth + " wide in " + innerWidth] : []`)
		v.ask(t, "names", `[...document.querySelectorAll("svg")].filter(s => !s.querySelector("title").textContent || !s.querySelector("desc").textContent).map(s => s.id + " has no title or description")`)
		v.mu.Lock()
		if len(v.trouble) > 0 {
			t.Errorf("%d %s: the browser complains: %q", c.width, c.scheme, v.trouble)
		}
		if len(v.requests) != 1 || !strings.HasPrefix(v.requests[0], "file://") {
			t.Errorf("%d %s: requests %q, want the page alone", c.width, c.scheme, v.requests)
		}
		v.mu.Unlock()
	}
}

// texts complains of texts in a figure that overlap or leave it.
const texts = `(() => {
  const bad = [];
  for (const svg of document.querySelectorAll("svg")) {
    const frame = svg.getBoundingClientRect();
    if (!frame.width) continue;
    const all = [...svg.querySelectorAll("text")].map(e => ({ name: svg.id + ": " + e.textContent, box: e.getBoundingClientRect() }));
    all.forEach((a, i) => {
      if (a.box.left < frame.left - 1 || a.box.right > frame.right + 1 || a.box.top < frame.top - 1 || a.box.bottom > frame.bottom + 1) bad.push(a.name + " leaves the figure");
      for (const b of all.slice(0, i)) {
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        const line = Math.min(a.box.height, b.box.height);
        if (wide > 0.5 && high > 0.3 * line) bad.push(a.name + " overlaps " + b.name);
      }
    });
  }
  return bad;
})()`

// contrast complains of texts with less than 4.5 to 1 against what is behind them.
const contrast = `(() => {
  const parse = text => (text.match(/[\d.]+/g) || []).map(Number);
  const part = x => (x /= 255) <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4;
  const luminance = ([r, g, b]) => 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  const behind = e => {
    for (; e; e = e.parentElement) {
      const c = parse(getComputedStyle(e).backgroundColor);
      if (c.length === 3 || c[3] > 0) return c;
    }
    return [255, 255, 255];
  };
  const bad = [], seen = new Set();
  for (const e of document.querySelectorAll("body *:not(style):not(script):not(title):not(desc)")) {
    if (![...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()) || !e.getBoundingClientRect().width) continue;
    const style = getComputedStyle(e);
    const front = luminance(parse(e.namespaceURI.endsWith("svg") ? style.fill : style.color)), back = luminance(behind(e));
    const ratio = (Math.max(front, back) + 0.05) / (Math.min(front, back) + 0.05);
    const name = e.tagName + "." + e.getAttribute("class") + " has contrast " + ratio.toFixed(2);
    if (!(ratio >= 4.5) && !seen.has(name)) { seen.add(name); bad.push(name); }
  }
  return bad;
})()`

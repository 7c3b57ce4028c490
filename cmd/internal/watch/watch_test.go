package watch

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"lode/cmd/internal/evaluate"
	"lode/engine/issue"
	"lode/render/page"
)

// echo is an evaluator whose page is the source and the position of a knob.
func echo(_ context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue {
	if strings.Contains(r.Source, "bad") {
		take(evaluate.Event{Issues: []issue.Issue{{What: "it is bad"}}})
		return nil
	}
	take(evaluate.Event{Served: &page.Pieces{Around: []string{"<p>" + r.Source, "</p>"}, Elements: []string{fmt.Sprint(" turns ", r.Turned["turns"])}}})
	return nil
}

// served watches a file with a text and returns where.
func served(t *testing.T, run Evaluator, text string) (file, address string) {
	t.Helper()
	file = filepath.Join(t.TempDir(), "x.md")
	write(t, file, text)
	ctx, stop := context.WithCancel(context.Background())
	ready, done := make(chan string, 1), make(chan error, 1)
	w := Watch{File: file, Run: run, Ready: func(a string) { ready <- a }}
	go func() { done <- w.Serve(ctx) }()
	t.Cleanup(func() {
		stop()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	return file, <-ready
}

// write saves a text at once: what is read in the middle of a save is the matter of TestHalfSaved.
func write(t *testing.T, file, text string) {
	t.Helper()
	if err := os.WriteFile(file+".part", []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(file+".part", file); err != nil {
		t.Fatal(err)
	}
}

// seen is a sight and the page that it leads to.
type seen struct {
	sight
	text string
}

// followed returns the sights that a page gets.
func followed(t *testing.T, address string) <-chan seen {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	t.Cleanup(stop)
	request, _ := http.NewRequestWithContext(ctx, "GET", address+"events", nil)
	answer, err := http.DefaultClient.Do(request)
	if err != nil {
		t.Fatal(err)
	}
	sights := make(chan seen, 100)
	go func() {
		defer answer.Body.Close()
		var now page.Pieces
		lines := bufio.NewScanner(answer.Body)
		for lines.Scan() {
			if data, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				var s sight
				_ = json.Unmarshal([]byte(data), &s)
				if s.Page != nil {
					now = *s.Page
				}
				for i, text := range s.Changed {
					now.Elements[i] = text
				}
				sights <- seen{s, now.String()}
			}
		}
	}()
	return sights
}

// until waits for a sight.
func until(t *testing.T, sights <-chan seen, what string, is func(seen) bool) seen {
	t.Helper()
	end := time.After(10 * time.Second)
	for {
		select {
		case s := <-sights:
			if is(s) {
				return s
			}
		case <-end:
			t.Fatal("no sight of ", what)
		}
	}
}

func holds(text string) func(seen) bool {
	return func(s seen) bool { return strings.Contains(s.text, text) && s.Fault == "" }
}

func turnTo(t *testing.T, address string, number int, value string) {
	t.Helper()
	code := request(t, "POST", address+"turn", fmt.Sprintf(`{"Number":%d,"Values":{"turns":%q}}`, number, value), map[string]string{
		"Content-Type": "application/json", "Origin": address[:strings.LastIndex(address[:len(address)-1], "/")]})
	if code != http.StatusOK {
		t.Fatalf("turning answers %d", code)
	}
}

// request returns the answer's code. A header Host names another host.
func request(t *testing.T, method, url, body string, header map[string]string) int {
	t.Helper()
	r, err := http.NewRequest(method, url, strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	for name, value := range header {
		r.Header.Set(name, value)
	}
	if header["Host"] != "" {
		r.Host = header["Host"]
	}
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	_ = answer.Body.Close()
	if got := answer.Header.Get("Cache-Control"); got != "no-store" {
		t.Errorf("%s %s may be cached: %q", method, url, got)
	}
	if answer.Header.Get("Access-Control-Allow-Origin") != "" {
		t.Errorf("%s %s lets other origins read", method, url)
	}
	return answer.StatusCode
}

func TestSavesAndTurns(t *testing.T) {
	file, address := served(t, echo, "one")
	sights := followed(t, address)
	until(t, sights, "the first page", holds("one turns 0"))
	turnTo(t, address, 1, "6000")
	if s := until(t, sights, "the turned page", holds("one turns 6000")); s.Number != 1 || s.Order != 1 || s.Values["turns"] != "6000" || s.Page != nil {
		t.Errorf("got %+v, want the changed element and the turn that it answers", s.sight)
	}
	write(t, file, "two")
	until(t, sights, "the saved page", holds("two turns 6000"))

	write(t, file, "bad")
	s := until(t, sights, "an issue", func(s seen) bool { return s.Fault != "" })
	if !strings.Contains(s.Fault, "it is bad") || s.Page != nil || s.Changed != nil {
		t.Errorf("got %+v, want the issue alone", s)
	}
	if got := string(body(t, address)); !strings.Contains(got, "two turns 6000") {
		t.Errorf("the last good page is gone: %q", got)
	}

	// As an editor saves that writes another file and renames it.
	other := file + "~"
	write(t, other, "three")
	if err := os.Rename(other, file); err != nil {
		t.Fatal(err)
	}
	until(t, sights, "the renamed file", holds("three"))

	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	until(t, sights, "the file's absence", func(s seen) bool { return strings.Contains(s.Fault, "cannot be read") })
	write(t, file, "three")
	until(t, sights, "the file that is back", holds("three"))
}

// TestData changes a data file beside the notebook that a run asks for, then one that no run asks for.
func TestData(t *testing.T) {
	var mu sync.Mutex
	runs := 0
	reading := func(_ context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue {
		mu.Lock()
		runs++
		mu.Unlock()
		name := "measured.csv"
		take(evaluate.Event{Wants: &name})
		text, err := os.ReadFile(filepath.Join(filepath.Dir(r.File), name))
		if err != nil {
			return &issue.Issue{What: "no such data"}
		}
		take(evaluate.Event{Served: &page.Pieces{Around: []string{"<p>", "</p>"}, Elements: []string{string(text)}}})
		return nil
	}
	file, address := served(t, reading, "one")
	folder := filepath.Dir(file)
	sights := followed(t, address)
	until(t, sights, "the missing file", func(s seen) bool { return strings.Contains(s.Fault, "no such data") })
	write(t, filepath.Join(folder, "measured.csv"), "1,2")
	until(t, sights, "the data", holds("1,2"))
	write(t, filepath.Join(folder, "measured.csv"), "1,2,3")
	until(t, sights, "the new data", holds("1,2,3"))
	mu.Lock()
	before := runs
	mu.Unlock()
	write(t, filepath.Join(folder, "other.csv"), "4")
	time.Sleep(5 * every)
	mu.Lock()
	defer mu.Unlock()
	if runs != before {
		t.Errorf("a file that no run asked for made %d runs", runs-before)
	}
}

// TestTwoPages turns a knob for one page and looks what another learns.
func TestTwoPages(t *testing.T) {
	_, address := served(t, echo, "one")
	one, other := followed(t, address), followed(t, address)
	until(t, one, "the first page", holds("one turns 0"))
	turnTo(t, address, 7, "6000")
	for _, sights := range []<-chan seen{one, other} {
		if s := until(t, sights, "the turned page", holds("one turns 6000")); s.Order != 1 || s.Values["turns"] != "6000" {
			t.Errorf("got %+v, want where the knob stands", s.sight)
		}
	}
	turnTo(t, address, 1, "5000")
	if s := until(t, other, "the page turned back", holds("one turns 5000")); s.Order != 2 {
		t.Errorf("got %+v, want the second turn of all", s.sight)
	}
}

func body(t *testing.T, url string) []byte {
	t.Helper()
	answer, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	var b strings.Builder
	if _, err := bufio.NewReader(answer.Body).WriteTo(&b); err != nil {
		t.Fatal(err)
	}
	return []byte(b.String())
}

func TestFileReplacedByFolder(t *testing.T) {
	l := looker{file: t.TempDir()}
	if s, news := l.look(); !news || s.problem == nil {
		t.Errorf("a folder passes for a notebook: %+v", s)
	}
}

// TestHalfSaved holds that a text counts only when it stays the same for two looks.
func TestHalfSaved(t *testing.T) {
	file := filepath.Join(t.TempDir(), "x.md")
	l := looker{file: file}
	write(t, file, "whole")
	if s, news := l.look(); !news || s.text != "whole" {
		t.Fatalf("the first look gives %+v, %v", s, news)
	}
	write(t, file, "")
	if _, news := l.look(); news {
		t.Error("an empty file counts at once")
	}
	write(t, file, "whole again")
	if _, news := l.look(); news {
		t.Error("a change counts at once")
	}
	if s, news := l.look(); !news || s.text != "whole again" {
		t.Errorf("the steady text gives %+v, %v", s, news)
	}
	if _, news := l.look(); news {
		t.Error("the same text is told twice")
	}
}

func TestRefusals(t *testing.T) {
	_, address := served(t, echo, "one")
	host := strings.Split(address, "/")[2]
	origin := "http://" + host
	json := map[string]string{"Content-Type": "application/json", "Origin": origin}
	with := func(name, value string) map[string]string {
		h := map[string]string{name: value}
		for k, v := range json {
			if k != name {
				h[k] = v
			}
		}
		return h
	}
	if !strings.HasPrefix(host, "127.0.0.1:") {
		t.Errorf("it listens at %s", host)
	}
	if len(strings.Split(address, "/")[3]) < 32 {
		t.Errorf("%s is easily guessed", address)
	}
	for _, c := range []struct {
		name, method, url, body string
		header                  map[string]string
		want                    int
	}{
		{"the page", "GET", address, "", nil, 200},
		{"from the address bar", "GET", address, "", map[string]string{"Sec-Fetch-Site": "none"}, 200},
		{"no word", "GET", origin + "/", "", nil, 404},
		{"another word", "GET", origin + "/" + strings.Repeat("0", 32) + "/", "", nil, 404},
		{"no such path", "GET", address + "x", "", nil, 404},
		{"a link on another page", "GET", address, "", map[string]string{"Sec-Fetch-Site": "cross-site"}, 403},
		{"another port's page", "GET", address + "events", "", map[string]string{"Sec-Fetch-Site": "same-site"}, 403},
		{"a script elsewhere", "GET", address, "", map[string]string{"Origin": "https://example.com"}, 403},
		{"a name that leads here", "GET", address, "", map[string]string{"Host": "example.com"}, 403},
		{"a name with the port", "GET", address, "", map[string]string{"Host": "example.com:" + strings.Split(host, ":")[1]}, 403},
		{"turning", "POST", address + "turn", `{}`, json, 200},
		{"turning without origin", "POST", address + "turn", `{}`, map[string]string{"Content-Type": "application/json"}, 403},
		{"turning from elsewhere", "POST", address + "turn", `{}`, with("Origin", "null"), 403},
		{"a form", "POST", address + "turn", `{}`, with("Content-Type", "text/plain"), 415},
		{"no JSON", "POST", address + "turn", `{`, json, 400},
		{"too much", "POST", address + "turn", `{"Values":{"x":"` + strings.Repeat("1", longestTurn) + `"}}`, json, 400},
		{"a preflight", "OPTIONS", address + "turn", "", with("Origin", "https://example.com"), 403},
		{"turning by a link", "GET", address + "turn", "", nil, 405},
	} {
		if got := request(t, c.method, c.url, c.body, c.header); got != c.want {
			t.Errorf("%s: answer %d, want %d", c.name, got, c.want)
		}
	}
}

// TestLatestWins turns a knob while a run hangs: the run is cut short and the newest
// position runs, not those between.
func TestLatestWins(t *testing.T) {
	var mu sync.Mutex
	var ran []float64
	slow := func(ctx context.Context, r evaluate.Request, take func(evaluate.Event)) *issue.Issue {
		mu.Lock()
		ran = append(ran, r.Turned["turns"])
		mu.Unlock()
		if r.Turned["turns"] == 1 {
			<-ctx.Done()
			return &issue.Issue{What: "stopped"}
		}
		return echo(ctx, r, take)
	}
	_, address := served(t, slow, "one")
	sights := followed(t, address)
	until(t, sights, "the first page", holds("one"))
	for i := 1; i <= 5; i++ {
		turnTo(t, address, i, fmt.Sprint(i))
	}
	until(t, sights, "the last turn", func(s seen) bool { return s.Number == 5 && s.Fault == "" })
	mu.Lock()
	defer mu.Unlock()
	if last := ran[len(ran)-1]; last != 5 || len(ran) > 4 {
		t.Errorf("ran %v, want the first, perhaps one between, and 5", ran)
	}
}

// What is wrong is told once, and once that nothing is any more.
func TestMendedIsTold(t *testing.T) {
	var told []int
	w := Watch{Run: echo, Tell: func(list []issue.Issue) { told = append(told, len(list)) }, data: &data{}}
	w.board.listeners = map[chan struct{}]bool{}
	for _, text := range []string{"good", "good", "bad", "bad", "good again", "good"} {
		w.once(context.Background(), save{text: text}, turn{})
	}
	if fmt.Sprint(told) != "[1 0]" {
		t.Errorf("told %v issues, want [1 0]", told)
	}
}

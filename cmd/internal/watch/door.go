package watch

import (
	"bytes"
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"mime"
	"net/http"
	"strings"

	"lode/render/page"
)

// This file is the door of the server. It listens on the loopback address alone, and lets
// in who knows a word that is new each time; other pages in the same browser cannot talk to
// it, whatever name they give to this machine.

// door knows who may come in.
type door struct {
	host string // as the browser writes it
	word string
}

func newDoor(host string) (*door, error) {
	word := make([]byte, 16)
	if _, err := rand.Read(word); err != nil {
		return nil, err
	}
	return &door{host, hex.EncodeToString(word)}, nil
}

func (d *door) address() string { return "http://" + d.host + "/" + d.word + "/" }

// guard refuses what does not come from the page itself or from the address bar.
func (d *door) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range map[string]string{
			"Cache-Control": "no-store", "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer", "X-Frame-Options": "DENY",
			"Cross-Origin-Resource-Policy": "same-origin", "Cross-Origin-Opener-Policy": "same-origin", "Content-Security-Policy": "frame-ancestors 'none'",
		} {
			w.Header().Set(name, value)
		}
		word, rest, _ := strings.Cut(strings.TrimPrefix(r.URL.Path, "/"), "/")
		switch {
		case r.Host != d.host || !d.ours(r):
			http.Error(w, "not from here", http.StatusForbidden)
		case subtle.ConstantTimeCompare([]byte(word), []byte(d.word)) != 1:
			http.NotFound(w, r)
		default:
			r.URL.Path = "/" + rest
			next.ServeHTTP(w, r)
		}
	})
}

// ours reports whether a request comes from our own page, or from a person.
func (d *door) ours(r *http.Request) bool {
	origin, site := r.Header.Get("Origin"), r.Header.Get("Sec-Fetch-Site")
	if origin != "" && origin != "http://"+d.host || origin == "" && r.Method != http.MethodGet {
		return false
	}
	return site == "" || site == "same-origin" || site == "none"
}

func (w *Watch) routes(d *door) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", w.page)
	mux.HandleFunc("GET /events", w.events)
	mux.HandleFunc("POST /turn", w.turn)
	return mux
}

// page serves the last good page, or an empty one that waits for the first.
func (w *Watch) page(out http.ResponseWriter, _ *http.Request) {
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	if html := w.board.last(); html != "" {
		_, _ = out.Write([]byte(html))
		return
	}
	_ = page.Write(out, page.Document{Title: w.File, Turning: &page.Turning{Live: true}})
}

// events tells a page what changes.
func (w *Watch) events(out http.ResponseWriter, r *http.Request) {
	out.Header().Set("Content-Type", "text/event-stream")
	flush := http.NewResponseController(out)
	w.board.follow(r.Context(), func(s sight) error {
		var data bytes.Buffer
		j := json.NewEncoder(&data)
		j.SetEscapeHTML(false)
		err := j.Encode(s) // ends its line
		if err == nil {
			_, err = fmt.Fprintf(out, "data: %s\n", data.Bytes())
		}
		if err == nil {
			err = flush.Flush()
		}
		return err
	})
}

// longestTurn is the size of a request to turn knobs.
const longestTurn = 64 << 10

func (w *Watch) turn(out http.ResponseWriter, r *http.Request) {
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		http.Error(out, "want JSON", http.StatusUnsupportedMediaType)
		return
	}
	var t turn
	if err := json.NewDecoder(http.MaxBytesReader(out, r.Body, longestTurn)).Decode(&t); err != nil {
		http.Error(out, "want JSON", http.StatusBadRequest)
		return
	}
	out.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(out).Encode(map[string]int{"Order": w.want(t)})
}

// want puts a turn behind those of all pages and returns its number among them.
func (w *Watch) want(t turn) int {
	w.turning.Lock()
	defer w.turning.Unlock()
	w.order++
	t.order = w.order
	select {
	case w.turns <- t:
	case <-w.running.Done():
	}
	return t.order
}

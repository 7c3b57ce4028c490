package library_test

import (
	"context"
	"reflect"
	"slices"
	"strings"
	"testing"

	"lode/cmd/internal/library"
	"lode/engine"
)

// TestRanges wants what tells where a call left its range to take what the function takes, the receiver first, to
// return the warnings, and the function to say in its help what is valid.
func TestRanges(t *testing.T) {
	lib, valid := load(t), map[string]bool{}
	for _, topic := range library.Topics() {
		valid[topic.Name] = topic.Valid != ""
	}
	for name, check := range lib.Ranges {
		if !valid[name] {
			t.Errorf("%s: its help does not say what is valid", name)
		}
		got, want := reflect.TypeOf(check), typeOf(t, lib.Symbols, strings.Split(name, "."))
		if got.Kind() != reflect.Func || got.NumOut() != 1 || got.Out(0) != reflect.TypeFor[[]string]() || got.IsVariadic() != want.IsVariadic() || got.NumIn() != want.NumIn() {
			t.Errorf("%s: its range is told by a %v, want func of the parameters of %v, []string", name, got, want)
			continue
		}
		for i := range got.NumIn() {
			if got.In(i) != want.In(i) {
				t.Errorf("%s: parameter %d is a %v, want %v", name, i, got.In(i), want.In(i))
			}
		}
	}
}

func typeOf(t *testing.T, symbols map[string]map[string]reflect.Value, parts []string) reflect.Type {
	t.Helper()
	names := symbols["lode/stdlib/"+parts[0]]
	if len(parts) == 2 {
		return names[parts[1]].Type()
	}
	m, ok := names[parts[1]].Type().Elem().MethodByName(parts[2])
	if !ok {
		t.Fatalf("%s: no such method", strings.Join(parts, "."))
	}
	return m.Type
}

// TestWarnsAgain runs a notebook twice, whose last statement of the first run is the first of the second, and wants
// the same warnings, of the last of many calls.
func TestWarnsAgain(t *testing.T) {
	n := engine.Open(load(t), "cell.lode", []byte(`for f := 1*Hz; f < 2.99*kHz; f += 10*Hz {
	_ = transformer.Limits{Voltage: 1*V, Frequency: 290*Hz}.At(f)
}`))
	if len(n.Issues) > 0 {
		t.Fatal(n.Issues[0])
	}
	var told [2][]string
	for i := range told {
		if failed := n.Run(context.Background(), func(r engine.Result) {
			if m, ok := r.Value.(engine.Minds); ok {
				told[i] = append(told[i], m.Texts()...)
			}
		}); failed != nil {
			t.Fatal(failed)
		}
	}
	want := "line 1, transformer.Limits.At: frequency: got 2.981 kHz, valid at low frequency, up to ten times that of the limit, 2.9 kHz"
	if len(told[0]) != 1 || !slices.Equal(told[0], told[1]) {
		t.Errorf("got %q, then %q, want %q twice", told[0], told[1], want)
	}
	if told := strings.Join(told[0], ""); !strings.HasPrefix(told, want[:80]) {
		t.Errorf("got %q, want %q", told, want)
	}
}

package library_test

import (
	"reflect"
	"strings"
	"testing"

	"lode/cmd/internal/library"
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

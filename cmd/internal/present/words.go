package present

import (
	"fmt"
	"reflect"
	"sort"
	"strings"

	"lode/units"
)

// This file writes values that are neither table nor figure. A value may hold itself, or
// the same part over and over, so the number of parts that are written is bounded.

const (
	longestList = 12   // elements of a list that are written out
	mostParts   = 2000 // of one value
	deepestPart = 12   // parts within parts
)

// teller writes one value.
type teller struct{ parts, depth int }

func words(v any) string { return (&teller{}).words(reflect.ValueOf(v)) }

func (t *teller) words(v reflect.Value) string {
	if !v.IsValid() {
		return "nothing"
	}
	if t.parts++; t.parts > mostParts || t.depth > deepestPart {
		return "…"
	}
	t.depth++
	defer func() { t.depth-- }()
	if v.CanInterface() {
		switch x := v.Interface().(type) {
		case reflect.Value:
			return t.words(x)
		case fmt.Stringer:
			if v.Kind() != reflect.Pointer || !v.IsNil() {
				return x.String()
			}
		case error:
			return x.Error()
		case float64:
			return units.Digits(x, 6)
		}
	}
	return t.plain(v)
}

func (t *teller) plain(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Slice, reflect.Array:
		return t.list(v)
	case reflect.Map:
		return t.pairs(v)
	case reflect.Struct:
		return t.fields(v)
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return "nothing"
		}
		return t.words(v.Elem())
	case reflect.Func:
		return "a function"
	}
	return fmt.Sprint(v)
}

func (t *teller) list(v reflect.Value) string {
	if v.Len() == 0 {
		return "(none)"
	}
	var parts []string
	for i := range min(v.Len(), longestList) {
		parts = append(parts, t.words(v.Index(i)))
	}
	text := strings.Join(parts, ", ")
	if v.Len() > longestList {
		text += fmt.Sprintf(", and %d more", v.Len()-longestList)
	}
	return text
}

// pairs writes a map in the order of its keys; what stands behind the last part that is
// written depends on nothing but the keys either.
func (t *teller) pairs(v reflect.Value) string {
	keys := map[string]reflect.Value{}
	var order []string
	for _, k := range v.MapKeys() {
		text := (&teller{depth: t.depth}).words(k)
		keys[text] = k
		order = append(order, text)
	}
	if len(order) == 0 {
		return "(none)"
	}
	sort.Strings(order)
	var parts []string
	for _, text := range order {
		if t.parts > mostParts {
			return strings.Join(append(parts, fmt.Sprintf("and %d more", len(order)-len(parts))), ", ")
		}
		parts = append(parts, text+": "+t.words(v.MapIndex(keys[text])))
	}
	return strings.Join(parts, ", ")
}

// fields writes a struct of the notebook's own; the interpreter may put an X in front of
// names that Go would not let reflection see.
func (t *teller) fields(v reflect.Value) string {
	var parts []string
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.IsExported() {
			parts = append(parts, strings.TrimPrefix(f.Name, "X")+" "+t.words(v.Field(i)))
		}
	}
	return strings.Join(parts, ", ")
}

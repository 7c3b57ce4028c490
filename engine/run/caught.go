package run

import (
	"errors"
	"reflect"
	"regexp"
	"runtime"
	"strings"
	"sync"

	"lode/engine/lower"
)

// This file tells a notebook what it recovered from.

// machinery tells panics of the interpreter from those of the notebook.
var machinery = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(reflect[.:]|\d+:\d+: interface conversion: )`)
})

// caught rewords a panic of Go's own or of the interpreter's machinery.
func caught(v any) any {
	if r, ok := v.(reflect.Value); ok && r.IsValid() && r.CanInterface() { // as the interpreter panics with errors
		v = r.Interface()
	}
	text := ""
	switch v := v.(type) {
	case runtime.Error:
		text = v.Error()
	case string:
		if !machinery().MatchString(v) {
			return v
		}
		text = v
	case failure:
		return v
	case *mistake:
		return v.value
	case error:
		if text = v.Error(); !machinery().MatchString(text) {
			return v
		}
	default:
		return v
	}
	for _, r := range lower.Rewordings() {
		if strings.Contains(text, r.Part) {
			return errors.New(r.Text)
		}
	}
	return v
}

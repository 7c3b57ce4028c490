package run

import (
	"errors"
	"reflect"
)

// This file carries errors that are values of the notebook's own types. The interpreter's own
// errors lose their type on the way.

// mistake is such an error: the value, labelled with its type, and its method.
type mistake struct {
	value any
	text  func() string
}

func (m *mistake) Error() string { return m.text() }

// Is lets errors.Is compare the values.
func (m *mistake) Is(other error) bool {
	o, ok := other.(*mistake)
	return ok && reflect.TypeOf(m.value).Comparable() && m.value == o.value
}

// inside returns what an error is: the labelled value, or the error itself.
func inside(err error) any {
	if m, ok := err.(*mistake); ok {
		return m.value
	}
	if err == nil {
		return nil
	}
	return err
}

// search hands an error and those that it wraps to a function until it takes one.
func search(err error, takes func(any) bool) bool {
	for ; err != nil; err = errors.Unwrap(err) {
		if takes(inside(err)) {
			return true
		}
		if many, ok := err.(interface{ Unwrap() []error }); ok {
			for _, one := range many.Unwrap() {
				if search(one, takes) {
					return true
				}
			}
		}
	}
	return false
}

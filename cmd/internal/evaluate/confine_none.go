//go:build !linux && !darwin

package evaluate

import "runtime/debug"

// confine asks the runtime to keep to the memory limit; the system offers no more that is
// simple.
func confine(l Limits) error {
	debug.SetMemoryLimit(l.Memory + headroom/2)
	return nil
}

//go:build linux || darwin

package evaluate

import (
	"runtime/debug"
	"syscall"
	"time"
)

// confine gives up, for good, what computing does not need. The kernel enforces it.
func confine(l Limits) error {
	debug.SetMemoryLimit(l.Memory + headroom/2)
	time.Sleep(time.Nanosecond) // the runtime opens what it waits with at the first wait
	seconds := uint64(l.Time.Seconds()) + 2
	for _, r := range append([]bound{
		{syscall.RLIMIT_CPU, 2 * seconds},
		{syscall.RLIMIT_NOFILE, 0}, // what is open stays open, and nothing more can be
		{syscall.RLIMIT_FSIZE, 0},
		{syscall.RLIMIT_CORE, 0},
	}, bounds(l)...) {
		if err := syscall.Setrlimit(r.resource, &syscall.Rlimit{Cur: r.most, Max: r.most}); err != nil {
			return err
		}
	}
	return seal()
}

// bound is the most of a resource that the child may use.
type bound struct {
	resource int
	most     uint64
}

package evaluate

import (
	"runtime/debug"
	"syscall"
)

// headroom is memory for the program itself. Only pages that can be written count against
// RLIMIT_DATA, so that address space which the runtime merely reserves does not.
const headroom = 256 << 20

// confine bounds the child's memory and processor time, and keeps it from writing files and
// from dumping its memory. The kernel enforces it.
func confine(l Limits) error {
	debug.SetMemoryLimit(l.Memory * 3 / 4)
	seconds := uint64(l.Time.Seconds()) + 2
	for _, r := range []struct {
		resource int
		value    uint64
	}{
		{syscall.RLIMIT_DATA, uint64(l.Memory) + headroom},
		{syscall.RLIMIT_CPU, 2 * seconds},
		{syscall.RLIMIT_FSIZE, 0},
		{syscall.RLIMIT_CORE, 0},
	} {
		if err := syscall.Setrlimit(r.resource, &syscall.Rlimit{Cur: r.value, Max: r.value}); err != nil {
			return err
		}
	}
	return nil
}

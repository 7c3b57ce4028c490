package evaluate

import "syscall"

// bounds limits memory. Only pages that can be written count against RLIMIT_DATA, so that
// address space which the runtime merely reserves does not.
func bounds(l Limits) []bound {
	return []bound{{syscall.RLIMIT_DATA, uint64(l.Memory) + headroom}}
}

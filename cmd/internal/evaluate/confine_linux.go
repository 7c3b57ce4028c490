package evaluate

import "syscall"

func bounds(l Limits) []bound {
	return []bound{{syscall.RLIMIT_DATA, uint64(l.Memory) + headroom}}
}

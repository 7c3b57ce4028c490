package evaluate

import "golang.org/x/sys/unix"

const architecture = unix.AUDIT_ARCH_X86_64

// plainHere lists calls that only this architecture has.
var plainHere = []uint32{unix.SYS_EPOLL_WAIT}

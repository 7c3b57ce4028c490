//go:build linux && (amd64 || arm64)

package evaluate

import (
	"errors"
	"fmt"
	"os"
	"unsafe"

	"golang.org/x/sys/unix"
)

// This file gives the kernel the list of calls that the child still needs: the memory,
// threads, waiting and signals of the runtime, and reading and writing what is open.
// Everything else is refused with EPERM: opening, connecting, starting a program, asking
// about the system. The form of the list is that of seccomp(2), "SECCOMP_SET_MODE_FILTER":
// a program for the kernel's packet filter over the number and arguments of a call.

// seal puts the list into force for all threads, for good. A kernel that was built without
// it is left to the bounds.
func seal() error {
	if err := unix.Prctl(unix.PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0); err != nil {
		return fmt.Errorf("giving up privileges: %w", err)
	}
	filter := calls()
	program := unix.SockFprog{Len: uint16(len(filter)), Filter: &filter[0]}
	_, _, failed := unix.Syscall(unix.SYS_SECCOMP, unix.SECCOMP_SET_MODE_FILTER, unix.SECCOMP_FILTER_FLAG_TSYNC, uintptr(unsafe.Pointer(&program)))
	if failed != 0 && !errors.Is(failed, unix.ENOSYS) && !errors.Is(failed, unix.EINVAL) {
		return fmt.Errorf("giving up system calls: %w", failed)
	}
	return nil
}

// plain lists the calls that may have any arguments.
var plain = append([]uint32{
	unix.SYS_READ, unix.SYS_WRITE, unix.SYS_CLOSE,
	unix.SYS_FUTEX, unix.SYS_SCHED_YIELD, unix.SYS_NANOSLEEP, unix.SYS_CLOCK_NANOSLEEP, unix.SYS_CLOCK_GETTIME, unix.SYS_GETTIMEOFDAY, unix.SYS_RESTART_SYSCALL,
	unix.SYS_EPOLL_PWAIT, unix.SYS_EPOLL_CTL,
	unix.SYS_BRK, unix.SYS_MREMAP, unix.SYS_MUNMAP, unix.SYS_MADVISE, unix.SYS_MINCORE,
	unix.SYS_RT_SIGACTION, unix.SYS_RT_SIGPROCMASK, unix.SYS_RT_SIGRETURN, unix.SYS_SIGALTSTACK,
	unix.SYS_GETPID, unix.SYS_GETTID, unix.SYS_SCHED_GETAFFINITY, unix.SYS_SET_ROBUST_LIST, unix.SYS_RSEQ,
	unix.SYS_EXIT, unix.SYS_EXIT_GROUP,
}, plainHere...)

// Offsets into what the filter sees: the number of the call, the architecture, and from
// there on eight bytes for each argument, the lower half first.
const (
	numberAt       = 0
	architectureAt = 4
	argumentsAt    = 16
)

const (
	allow   = unix.SECCOMP_RET_ALLOW
	refuse  = unix.SECCOMP_RET_ERRNO | uint32(unix.EPERM)
	unknown = unix.SECCOMP_RET_ERRNO | uint32(unix.ENOSYS)
)

func calls() []unix.SockFilter {
	f := []unix.SockFilter{load(architectureAt), equal(architecture, 1, 0), give(unix.SECCOMP_RET_KILL_PROCESS), load(numberAt)}
	for _, number := range plain {
		f = append(f, equal(number, 0, 1), give(allow))
	}
	// A thread may be started, a process not. What clone3 is asked cannot be seen here; a C
	// library that does not find it asks clone.
	f = append(f, when(unix.SYS_CLONE3, give(unknown))...)
	f = append(f, when(unix.SYS_CLONE, load(argumentsAt), bits(unix.CLONE_THREAD, 1, 0), give(refuse), give(allow))...)
	// The C library asks for threads by clone3, whose flags a filter cannot see; where it is
	// said not to exist, clone is taken.
	f = append(f, when(unix.SYS_CLONE3, give(unix.SECCOMP_RET_ERRNO|uint32(unix.ENOSYS)))...)
	// Memory may be mapped and protected, but not made to be executed.
	for _, number := range []uint32{unix.SYS_MMAP, unix.SYS_MPROTECT} {
		f = append(f, when(number, load(argumentsAt+2*8), bits(unix.PROT_EXEC, 0, 1), give(refuse), give(allow))...)
	}
	// Signals go to threads of the child itself.
	f = append(f, when(unix.SYS_TGKILL, load(argumentsAt), equal(uint32(os.Getpid()), 1, 0), give(refuse), give(allow))...)
	return append(f, give(refuse))
}

// when is a piece of filter that decides about one call.
func when(number uint32, decide ...unix.SockFilter) []unix.SockFilter {
	return append([]unix.SockFilter{equal(number, 0, uint8(len(decide)))}, decide...)
}

func load(offset uint32) unix.SockFilter {
	return unix.SockFilter{Code: unix.BPF_LD | unix.BPF_W | unix.BPF_ABS, K: offset}
}

// equal skips yes instructions where what was loaded is value, else no instructions.
func equal(value uint32, yes, no uint8) unix.SockFilter {
	return unix.SockFilter{Code: unix.BPF_JMP | unix.BPF_JEQ | unix.BPF_K, Jt: yes, Jf: no, K: value}
}

// bits skips yes instructions where one of the bits is set, else no instructions.
func bits(mask uint32, yes, no uint8) unix.SockFilter {
	return unix.SockFilter{Code: unix.BPF_JMP | unix.BPF_JSET | unix.BPF_K, Jt: yes, Jf: no, K: mask}
}

func give(verdict uint32) unix.SockFilter {
	return unix.SockFilter{Code: unix.BPF_RET | unix.BPF_K, K: verdict}
}

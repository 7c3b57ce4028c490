//go:build unix && !linux

package evaluate

import (
	"os/exec"
	"syscall"
)

// detach keeps the terminal's interrupt from the child: the parent decides when it ends.
func detach(cmd *exec.Cmd) { cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} }

package evaluate

import (
	"os/exec"
	"syscall"
)

// detach keeps the terminal's interrupt from the child: the parent decides when it ends.
// Should the parent be killed, the kernel ends the child.
func detach(cmd *exec.Cmd) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true, Pdeathsig: syscall.SIGKILL}
}

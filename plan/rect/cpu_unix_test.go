//go:build unix

package rect_test

import (
	"syscall"
	"time"
)

// cpu is the processor time used: the machine may be busy with other things.
func cpu() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

//go:build unix && !linux

package guard

import "golang.org/x/sys/unix"

const getModes, setModes = unix.TIOCGETA, unix.TIOCSETA

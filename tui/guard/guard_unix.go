//go:build unix

package guard

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"

	"golang.org/x/sys/unix"
)

// variable tells a copy of the program that it is to stand by, and holds the
// terminal's modes.
const variable = "MATSIDE_STANDS_BY"

// goodbye is written to the pipe when all is in order.
const goodbye = "goodbye"

// usual leaves the alternate screen, shows the cursor, and turns off colours,
// the pointer and the marks about what is pasted.
const usual = "\x1b[0m\x1b[?1002l\x1b[?1003l\x1b[?1006l\x1b[?2004l\x1b[?25h\x1b[?1049l\r"

// Terminal keeps watch over a terminal, as it is now, until release is called.
// The copy is started beside the caller, for the first picture can't wait.
func Terminal(tty *os.File) (release func()) {
	modes, err := unix.IoctlGetTermios(int(tty.Fd()), getModes)
	if err != nil {
		return func() {}
	}
	var text bytes.Buffer
	if err := binary.Write(&text, binary.NativeEndian, modes); err != nil {
		return func() {}
	}
	started := make(chan func(), 1)
	go func() { started <- start(tty, hex.EncodeToString(text.Bytes())) }()
	return func() { (<-started)() }
}

// start starts the copy and returns what ends it.
func start(tty *os.File, modes string) (end func()) {
	self, err := os.Executable()
	if err != nil {
		return func() {}
	}
	ours, theirs, err := os.Pipe()
	if err != nil {
		return func() {}
	}
	defer ours.Close()
	by := exec.Command(self)
	by.Env = append(os.Environ(), variable+"="+modes)
	by.Stdin, by.Stdout = ours, tty
	if err := by.Start(); err != nil {
		theirs.Close()
		return func() {}
	}
	// What the runtime says last goes to the one that stands by, for on the
	// alternate screen nobody could read it.
	_ = debug.SetCrashOutput(theirs, debug.CrashOptions{})
	return func() {
		_ = debug.SetCrashOutput(nil, debug.CrashOptions{})
		_, _ = theirs.WriteString(goodbye)
		theirs.Close()
		_ = by.Wait()
	}
}

// StandBy is called first thing in main. In the program itself it returns at
// once; the copy stands by in it and never comes back.
func StandBy() {
	text := os.Getenv(variable)
	if text == "" {
		return
	}
	// The shell has the terminal by then; writing to it must not stop us. The
	// program's own signals are none of ours: its end is told by the pipe.
	signal.Ignore(syscall.SIGTTOU, syscall.SIGHUP, syscall.SIGINT, syscall.SIGTERM, syscall.SIGQUIT)
	last, _ := io.ReadAll(io.LimitReader(os.Stdin, 1<<20))
	if string(last) != goodbye {
		giveBack(text, string(last))
	}
	os.Exit(0)
}

func giveBack(text, last string) {
	if b, err := hex.DecodeString(text); err == nil {
		var modes unix.Termios
		if binary.Read(bytes.NewReader(b), binary.NativeEndian, &modes) == nil {
			_ = unix.IoctlSetTermios(int(os.Stdout.Fd()), setModes, &modes)
		}
	}
	_, _ = io.WriteString(os.Stdout, usual+"matside was ended from outside, or by a mistake of ours. What was shown as done is saved.\r\n")
	if why, _, _ := strings.Cut(last, "\n"); why != "" {
		_, _ = io.WriteString(os.Stdout, why+"\r\n")
	}
}

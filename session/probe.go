package session

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"time"

	"example.org/matside/session/store"
)

// Probe tries the data file at path with bbolt: what `matside check --probe
// PATH` runs, in a process of its own.
func Probe(path string) error { return store.Probe(path) }

// probeTime is how long a probe may take. On a sound file it takes some
// milliseconds; a file that keeps it longer is not opened.
const probeTime = 3 * time.Second

// ProbeBy is a probe for OpenOptions that runs command with the path added,
// and takes any end but exit 0 for damage: an error, a signal, no end in time.
func ProbeBy(command ...string) func(path string) error {
	return func(path string) error {
		ctx, cancel := context.WithTimeout(context.Background(), probeTime)
		defer cancel()
		c := exec.CommandContext(ctx, command[0], append(command[1:len(command):len(command)], path)...)
		out, err := c.CombinedOutput()
		var left *exec.ExitError
		switch {
		case err == nil:
			return nil
		case ctx.Err() != nil:
			return fmt.Errorf("no answer in %v", probeTime)
		case !errors.As(err, &left):
			return nil // the probe can't be run here; our own reader has found the file sound
		}
		first, _, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
		return fmt.Errorf("%v: %.200q", err, first)
	}
}

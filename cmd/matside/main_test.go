package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// program is matside, built once for all tests that run it for real.
var program = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "matside-test-")
	if err != nil {
		return "", err
	}
	name := filepath.Join(folder, "matside")
	out, err := exec.Command("go", "build", "-o", name, ".").CombinedOutput()
	if err != nil {
		err = &exec.Error{Name: string(out), Err: err}
	}
	return name, err
})

// commands runs matside's commands in this process: in plain lines, with
// nothing typed, all of them in one home.
func commands(t *testing.T) func(args ...string) (said, errs string, code int) {
	env := map[string]string{"HOME": t.TempDir(), "MATSIDE_PLAIN": "1"}
	return func(args ...string) (string, string, int) {
		var out, errs bytes.Buffer
		w := world{in: strings.NewReader(""), out: &out, err: &errs, getenv: func(name string) string { return env[name] }}
		code := run(t.Context(), w, args)
		return out.String(), errs.String(), code
	}
}

// cleaned runs the tests and removes the program they built.
type cleaned struct{ *testing.M }

func (c cleaned) Run() int {
	code := c.M.Run()
	if name, err := program(); err == nil {
		os.RemoveAll(filepath.Dir(name))
	}
	return code
}

// TestMain lets the scripts call matside as a command. It is matside itself
// where a command under test has started this very program to probe its data
// file: the tests would else begin again within each of them.
func TestMain(m *testing.M) {
	if len(os.Args) > 2 && os.Args[1] == "check" {
		main()
		return
	}
	testscript.Main(cleaned{m}, map[string]func(){"matside": main})
}

package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "example.org/matside"

// layers in the order in which an import may point: each may import itself
// and what stands behind it.
var layers = []string{"cmd", "tui", "session", "plan"}

// owners names the one layer that may import a package.
var owners = map[string]string{
	"github.com/charmbracelet/bubbletea": "tui",
	"go.etcd.io/bbolt":                   "session",
	"github.com/spf13/cobra":             "cmd",
}

// effects are what plan, being pure, does without: no terminal, no data
// file, no clock, no unseeded randomness.
var effects = []string{"os", "os/exec", "os/signal", "net", "net/http", "time", "math/rand", "math/rand/v2", "syscall", "log"}

// dated is the one package of plan that may say a date: a PDF without a fixed
// one would bear the clock's.
const dated = module + "/plan/paper"

type listed struct {
	ImportPath string
	Imports    []string
}

// TestArrows reads the imports of every package and says which points the
// wrong way.
func TestArrows(t *testing.T) {
	packages := listPackages(t)
	if len(packages) < len(layers) {
		t.Fatalf("go list found only %d packages", len(packages))
	}
	for _, p := range packages {
		for _, i := range p.Imports {
			if reason := wrongArrow(p.ImportPath, i); reason != "" {
				t.Errorf("%s imports %s: %s", p.ImportPath, i, reason)
			}
		}
	}
}

// TestWrongArrow shows that the check can fail.
func TestWrongArrow(t *testing.T) {
	for _, c := range []struct {
		from, to string
		wrong    bool
	}{
		{module + "/plan", module + "/plan/length", false},
		{module + "/plan/pack", module + "/session", true},
		{module + "/session", module + "/tui", true},
		{module + "/tui", module + "/session", false},
		{module + "/cmd/matside", module + "/plan/report", false},
		{module + "/plan/rect", "time", true},
		{dated, "time", false},
		{dated, "os", true},
		{module + "/session", "time", false},
		{module + "/tui", "go.etcd.io/bbolt", true},
		{module + "/session/ledger", "go.etcd.io/bbolt", false},
		{module + "/cmd/matside", "github.com/charmbracelet/bubbletea", true},
	} {
		if got := wrongArrow(c.from, c.to) != ""; got != c.wrong {
			t.Errorf("%s to %s: wrong is %v, want %v", c.from, c.to, got, c.wrong)
		}
	}
}

func wrongArrow(from, to string) string {
	layer := layerOf(from)
	if owner, ok := owners[to]; ok && layer != owner {
		return "only " + owner + " may"
	}
	if to == "time" && from == dated {
		return ""
	}
	if layer == "plan" && slices.Contains(effects, to) {
		return "plan is pure"
	}
	if !strings.HasPrefix(to, module+"/") || strings.HasPrefix(to, module+"/testdata/") {
		return ""
	}
	if slices.Index(layers, layerOf(to)) < slices.Index(layers, layer) {
		return "imports point from cmd to tui to session to plan"
	}
	return ""
}

func layerOf(path string) string {
	layer, _, _ := strings.Cut(strings.TrimPrefix(path, module+"/"), "/")
	return layer
}

func listPackages(t *testing.T) []listed {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", module+"/...").Output()
	if err != nil {
		t.Skipf("go list: %v", err)
	}
	var packages []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return packages
		} else if err != nil {
			t.Fatal(err)
		}
		packages = append(packages, p)
	}
}

package main

import (
	"path/filepath"
	"testing"

	"example.org/matside/plan"
	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
	"example.org/matside/testdata/cutlists"
)

// TestExamples plans the six examples: there is fabric enough for all of them,
// and some are in inches, some in centimeters.
func TestExamples(t *testing.T) {
	units := map[length.Unit]int{}
	for _, name := range cutlists.Examples {
		t.Run(name, func(t *testing.T) {
			list, err := cutlist.Read(name, cutlists.Read(name), nil)
			if err != nil {
				t.Fatal(err)
			}
			units[list.Unit]++
			q := plan.Make(list, plan.Options{Effort: rect.Quick})
			for _, fault := range check.Check(q) {
				t.Error(fault)
			}
			if len(q.Short) > 0 {
				t.Errorf("there is too little fabric: %v", q.Short)
			}
		})
	}
	if len(cutlists.Examples) != 6 || len(units) != 2 {
		t.Errorf("%d examples in %d units", len(cutlists.Examples), len(units))
	}
}

// TestEveryListIsListed keeps a new cut list from being forgotten: it is an
// example or known not to be one.
func TestEveryListIsListed(t *testing.T) {
	all, err := filepath.Glob("../../testdata/cutlists/*.cutlist")
	if err != nil {
		t.Fatal(err)
	}
	const benchmark = "postage-meadow.cutlist"
	known := map[string]bool{benchmark: true}
	for _, name := range cutlists.Examples {
		known[name] = true
	}
	for _, path := range all {
		if !known[filepath.Base(path)] {
			t.Errorf("%s is neither an example nor the benchmark's", path)
		}
	}
}

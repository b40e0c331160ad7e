package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/matside/plan/cutlist"
)

// inTopics calls f with each indented block of the help topics.
func inTopics(t *testing.T, f func(t *testing.T, block string)) {
	for _, topic := range topics() {
		t.Run(topic.name, func(t *testing.T) {
			for _, part := range strings.Split("\n"+topic.text, "\n\n") {
				if strings.HasPrefix(strings.TrimLeft(part, "\n"), "    ") {
					f(t, strings.ReplaceAll("\n"+part, "\n    ", "\n")[1:]+"\n")
				}
			}
		})
	}
}

// TestTopicLists reads every cut list that a help topic shows.
func TestTopicLists(t *testing.T) {
	n := 0
	inTopics(t, func(t *testing.T, block string) {
		if !strings.HasPrefix(block, "quilt ") {
			return
		}
		n++
		if _, err := cutlist.Read("help", []byte(block), nil); err != nil {
			t.Errorf("%v\nin\n%s", err, block)
		}
	})
	if n < 5 {
		t.Errorf("%d cut lists were found in the help", n)
	}
}

// TestTopicCommands runs every command line that a help topic shows, in a
// folder with the examples in it, one after the other.
func TestTopicCommands(t *testing.T) {
	t.Chdir(t.TempDir())
	matside := commands(t)
	for _, line := range []string{"examples -o .", "cut first-nine-patch.cutlist --effort quick"} {
		if _, errs, code := matside(strings.Fields(line)...); code != exitDone {
			t.Fatalf("matside %s: exit code %d: %s", line, code, errs)
		}
	}
	n := 0
	inTopics(t, func(t *testing.T, block string) {
		for _, line := range strings.Split(block, "\n") {
			line, ok := strings.CutPrefix(line, "$ matside ")
			if !ok {
				continue
			}
			n++
			line, to, _ := strings.Cut(line, " > ")
			said, errs, code := matside(strings.Fields(line)...)
			if code != exitDone {
				t.Errorf("matside %s: exit code %d: %s", line, code, errs)
			}
			if to == "" {
				continue
			}
			if err := os.WriteFile(to, []byte(said), 0o600); err != nil {
				t.Fatal(err)
			}
		}
	})
	if n < 15 {
		t.Errorf("%d command lines were found in the help", n)
	}
}

// TestTopicSizes works out the table of finished and cut sizes again.
func TestTopicSizes(t *testing.T) {
	page, err := os.ReadFile("topics/sizes.md")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, row := range strings.Split(string(page), "\n") {
		cells := strings.Split(strings.Trim(row, "| "), " | ")
		if !strings.HasPrefix(row, "| ") || len(cells) != 2 || cells[0] == "finished" || strings.HasPrefix(cells[0], "---") {
			continue
		}
		n++
		exact, ruler := cutSize(t, "exact", cells[0]), cutSize(t, "ruler", cells[0])
		want := exact
		if exact != ruler {
			want = fmt.Sprintf("%s by the book, %s exactly", ruler, exact)
		}
		if cells[1] != want {
			t.Errorf("%s: the help says %q, and it is %q", cells[0], cells[1], want)
		}
	}
	if n < 3 {
		t.Errorf("%d rows were found", n)
	}
}

// cutSize is the size that a finished piece is cut at.
func cutSize(t *testing.T, allowance, piece string) string {
	text := fmt.Sprintf("quilt Q\nallowance %s\nfabric Ink\ncut from Ink\n1 %s finished\n", allowance, piece)
	list, err := cutlist.Read("row", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	return list.Lines[0].Size
}

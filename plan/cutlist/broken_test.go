package cutlist

import (
	"errors"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
)

var update = flag.Bool("update", false, "write the messages expected of testdata/cutlists/broken anew")

const testdata = "../../testdata/cutlists"

// TestBroken: every broken cut list gives the messages that stand beside it,
// and none of them holds a character that could move a cursor.
func TestBroken(t *testing.T) {
	files, err := filepath.Glob(testdata + "/broken/*.cutlist")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d broken cut lists, %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		l, err := Read(filepath.Base(file), text, beside)
		var mistakes Mistakes
		if l != nil || !errors.As(err, &mistakes) || len(mistakes) == 0 {
			t.Errorf("%s: no mistakes: %v", file, err)
			continue
		}
		unprintable(t, file, mistakes.Error())
		golden := strings.TrimSuffix(file, ".cutlist") + ".txt"
		if *update {
			if err := os.WriteFile(golden, []byte(mistakes.Error()+"\n"), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if got := mistakes.Error() + "\n"; got != string(want) {
			t.Errorf("%s:\n%s\nwant\n%s", file, got, want)
		}
	}
}

// beside opens files beside the broken cut lists.
func beside(name string) ([]byte, error) {
	b, err := os.ReadFile(filepath.Join(testdata, "broken", name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errors.New("there is no such file")
	}
	return b, err
}

func unprintable(t *testing.T, what, s string) {
	t.Helper()
	for i, r := range s {
		if r != '\n' && !unicode.IsPrint(r) {
			t.Errorf("%s: %q at byte %d can't be printed", what, r, i)
			return
		}
	}
}

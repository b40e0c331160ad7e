package cutlist

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// FuzzRead: laws (1) to (3) of Read, on any bytes.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{"/*.cutlist", "/broken/*.cutlist"} {
		files, err := filepath.Glob(testdata + pattern)
		if err != nil || len(files) == 0 {
			f.Fatalf("no cut lists: %v", err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) { readLaws(t, text) })
}

// failer is what tests, fuzzing and rapid have in common.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// readLaws checks what Read promises of any text.
func readLaws(t failer, text []byte) {
	t.Helper()
	l, err := Read("a.cutlist", text, nothingBeside)
	again, errAgain := Read("a.cutlist", text, nothingBeside)
	if !reflect.DeepEqual(l, again) || !reflect.DeepEqual(err, errAgain) {
		t.Fatalf("reads differently the second time:\n%+v, %v\n%+v, %v", l, err, again, errAgain)
	}
	if err != nil {
		var mistakes Mistakes
		if l != nil || !errors.As(err, &mistakes) || len(mistakes) == 0 {
			t.Fatalf("neither a list nor mistakes: %+v, %v", l, err)
		}
		mistakesLaws(t, mistakes, text)
		return
	}
	listLaws(t, l)
}

func nothingBeside(string) ([]byte, error) { return nil, errors.New("no \x1bfile") }

// mistakesLaws: in the order of the file, at places that are in it, and safe to
// print.
func mistakesLaws(t failer, mistakes Mistakes, text []byte) {
	t.Helper()
	lines := strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n")
	line, column := 0, 0
	for _, m := range mistakes {
		switch {
		case m.Line < line || m.Line == line && m.Column < column:
			t.Fatalf("%d:%d comes after %d:%d", m.Line, m.Column, line, column)
		case m.Line < 1 || m.Line > len(lines) || m.Column < 1 || m.Column > utf8.RuneCountInString(lines[m.Line-1])+1:
			t.Fatalf("%d:%d is not in the file", m.Line, m.Column)
		case m.What.Silent() || m.Width < 1 || m.Mark+m.Width > window+2:
			t.Fatalf("a mark %d wide at %d: %+v", m.Width, m.Mark, m)
		}
		line, column = m.Line, m.Column
	}
	printable(t, strings.ReplaceAll(mistakes.Error(), "\n", ""))
}

func printable(t failer, s string) {
	t.Helper()
	if !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }) {
		t.Fatalf("%q can't be printed", s)
	}
}

// listLaws: a list is whole, within the limits, and every piece fits.
func listLaws(t failer, l *List) {
	t.Helper()
	if l.Quilt == "" || len(l.Lines) == 0 {
		t.Fatalf("an empty list: %+v", l)
	}
	printable(t, l.Quilt)
	for _, f := range l.Fabrics {
		printable(t, f.Name+f.Setting)
		if f.Name == "" || slices.ContainsFunc(f.Stock, func(p Panel) bool { return p.Width <= 0 || p.Height <= 0 }) {
			t.Fatalf("a fabric of nothing: %+v", f)
		}
	}
	w, h := l.Mat.Inside(l.Margin)
	pieces := 0
	for _, line := range l.Lines {
		printable(t, line.Say()+line.Label)
		if pieces += line.Count; pieces > MaxPieces || line.Count < 1 && line.Kind != Binding {
			t.Fatalf("%d pieces with %+v", pieces, line)
		}
		switch oneWay := l.Fabrics[line.Fabric].OneWay; {
		case line.Kind == Strips || line.Kind == Binding:
			if line.Outline != nil || line.StripWidth <= 0 {
				t.Fatalf("strips of %+v", line)
			}
		case !line.Outline.Simple() || line.Kind == OnMat && !Fits(line.Outline, line.Grain, oneWay, w, h):
			t.Fatalf("a piece that can't be cut: %+v", line)
		}
	}
}

// TestMutated: cut lists with bytes flipped, lines cut, doubled or swapped, and
// numbers swollen keep the laws too.
func TestMutated(t *testing.T) {
	first, err := os.ReadFile(testdata + "/first-nine-patch.cutlist")
	if err != nil {
		t.Fatal(err)
	}
	every, err := os.ReadFile(testdata + "/broken/outlines.cutlist")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		text := slices.Clone(rapid.SampledFrom([][]byte{first, every}).Draw(t, "text"))
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			text = mutate(t, text)
		}
		readLaws(t, text)
	})
}

func mutate(t *rapid.T, text []byte) []byte {
	at := func(n int) int { return rapid.IntRange(0, max(n-1, 0)).Draw(t, "at") }
	lines := bytes.SplitAfter(text, []byte("\n"))
	i := at(len(lines))
	switch rapid.SampledFrom([]string{"flip", "cut", "double", "swap", "swell", "clip"}).Draw(t, "how") {
	case "flip":
		if len(text) > 0 {
			text[at(len(text))] ^= byte(1 << at(8))
		}
		return text
	case "cut":
		lines = slices.Delete(lines, i, i+1)
	case "double":
		lines = slices.Insert(lines, i, lines[i])
	case "swap":
		j := at(len(lines))
		lines[i], lines[j] = lines[j], lines[i]
	case "swell":
		digits := strings.Repeat("9", 1<<at(8))
		return bytes.Replace(text, []byte("2"), []byte(digits), 1+at(4))
	case "clip":
		return text[:at(len(text))]
	}
	return bytes.Join(lines, nil)
}

var longCases = []struct{ start, again string }{
	{"", "\n"}, {"", "#"}, {"", "9"}, {"", "1 "}, {"", "a"}, {"", "a "}, {"", "a-"}, {"", `"`}, {"", ` "`}, {"", "\x00"}, {"", "\xff"}, {"", "é"},
	{"", " "}, {"quilt ", "a "}, {"quilt ", " "}, {"1 squares ", "9"}, {"1 squares ", "1/"}, {"1 squares ", "2 x "}, {"1 squares ", "2 "},
	{"1 squares 2", ","}, {"1 squares 2", ",x"}, {"1 squares 2", ", fussy"}, {"1 squares 2", " fussy"}, {"1 squares 2", " finished"},
	{"1 squares 2", " for A"}, {"1 squares 2", ` for "A"`}, {"1 squares 2", ` "`}, {"1 squares 2 for ", "any grain "}, {"1 squares 2", " fro A"},
	{"1 squares ", "side "}, {"1 outlines ", "for "}, {"1 outlines L ", "finished "}, {"1 diamonds ", "60 "}, {"1 ", "half-"},
	{"fabric G", ", 1 x 1"}, {"fabric G", ", sheds"}, {"fabric G", ", 1 of"}, {"fabric G, shrinks ", "1% x "}, {"fabric G ", "fat quarter "},
	{"outline O:", " 0,0"}, {"outline O:", " 0"}, {"outline O: 0,", "0 "}, {"outline O: 0,", "0  "}, {"outline O:", ","}, {"outline ", "O from "},
	{"cut from ", "F, "}, {"binding ", "2 around "}, {"mat ", "1 x "}, {"", "squaers\n"}, {"", "1 square 2\n"}, {"", "1 circle 10\n"},
	{"", "cut from aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\nfabric aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\n"},
}

// TestLongLines: a mebibyte of anything (an eighth of it in the short form) is
// read in one pass, more or less. What takes the square of it would sit here
// for an hour.
func TestLongLines(t *testing.T) {
	const head = "quilt Q\nfabric F\noutline L: 0,0 1,0 1,1\ncut from F\n"
	size := MaxBytes / 8
	if os.Getenv("MATSIDE_LONG") == "1" {
		size = MaxBytes
	}
	for _, c := range longCases {
		text := head + c.start + strings.Repeat(c.again, (size-len(head)-len(c.start))/len(c.again))
		l, err := Read("a.cutlist", []byte(text), nothingBeside)
		if err != nil {
			var mistakes Mistakes
			if !errors.As(err, &mistakes) {
				t.Fatalf("%q: %v", c.again, err)
			}
			mistakesLaws(t, mistakes, []byte(text))
		} else {
			listLaws(t, l)
		}
	}
}

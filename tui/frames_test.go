package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/look"
)

// fits fails unless the frame fits its window and holds no control character
// but the sequences that set colours.
func fits(t failer, d *desk) {
	t.Helper()
	frame := d.f.View()
	lines := strings.Split(frame, "\n")
	if len(lines) > max(d.f.h, 1) {
		t.Fatalf("%dx%d: %d lines", d.f.w, d.f.h, len(lines))
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > max(d.f.w, 0) {
			t.Fatalf("%dx%d: a line is %d wide: %q", d.f.w, d.f.h, w, l)
		}
	}
	plain := ansi.Strip(frame)
	for _, r := range plain {
		if r != '\n' && (r < ' ' || r >= 0x7f && r < 0xa0) {
			t.Fatalf("a control character %q is drawn", r)
		}
	}
}

func TestEveryWindowSizeIsFilledWhole(t *testing.T) {
	for w := 1; w <= 130; w += 9 {
		for h := 1; h <= 50; h += 11 {
			d := newDesk(t, w, h)
			for range 11 {
				fits(t, d)
				d.key("enter")
			}
		}
	}
}

func TestWhatMatStateAndActionAreOnEveryScreen(t *testing.T) {
	for _, size := range sizes {
		d := newDesk(t, size[0], size[1])
		for range 9 {
			d.sees("mat One", "since its wash", "load ", "pieces", "Enter", "q leave", "? keys", "demo: nothing here is kept")
			d.key("enter")
		}
	}
}

func TestSmallWindowSaysSo(t *testing.T) {
	d := newDesk(t, 100, 19)
	d.sees("Make this window larger: matside needs 60 by 20, this is 100 by 19.")
	d.key("enter")
	if d.q().Step != session.Fabric {
		t.Error("a key counted on a screen that can't be seen")
	}
	d.key("q")
	if !d.quit {
		t.Error("q does not leave")
	}
}

func TestNastyNamesAreHarmless(t *testing.T) {
	d := newDesk(t, 80, 24)
	q := d.f.view().quilt
	q.Name = "\x1b]0;owned\x07Room\u009b2J"
	q.List().Fabrics[0].Name = "\x1b[2JPlum\x1b]52;c;eA==\x07"
	q.List().Lines[0].Label = "A\a"
	q.List().Fabrics[0].Setting = "\u202egnihtyna"
	for range 5 {
		fits(t, d)
		if frame := d.f.View(); strings.ContainsAny(frame, "\a\u009b\u202e") || strings.Contains(frame, "\x1b]") || strings.Contains(frame, "\x1b[2J") {
			t.Fatalf("a nasty name got through: %q", frame)
		}
		d.key("enter")
	}
}

func TestLongNamesFit(t *testing.T) {
	d := newDesk(t, 60, 20)
	q := d.f.view().quilt
	q.Name = strings.Repeat("Very Long 漢字 ", 20)
	for i := range q.List().Fabrics {
		q.List().Fabrics[i].Name = strings.Repeat("Plumoat漢", 12)
	}
	for range 10 {
		fits(t, d)
		d.sees("Enter", "q leave", "load ", "pieces")
		d.key("enter")
	}
}

// crowded is a load of 200 pieces.
func crowded(d *desk) {
	q := d.f.view().quilt
	l := q.InHand()
	l.Pieces = nil
	side := 11 * inch / 15
	for i := range 200 {
		x, y := inch/2+length.Len(i%15)*side, inch/2+length.Len(i/15)*side
		o := rectangle(x, y, side, side)
		if i%2 == 0 {
			o = outline.Outline{{X: x, Y: y}, {X: x + side, Y: y}, {X: x, Y: y + side}}
		}
		l.Pieces = append(l.Pieces, queue.Placement{Line: i % 2, Copy: i, Outline: o})
	}
}

func BenchmarkView(b *testing.B) {
	for _, size := range sizes {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			d := newDesk(b, size[0], size[1])
			d.looks(&look.Dark, termenv.ANSI256)
			d.key("enter", "enter")
			crowded(d)
			b.ReportAllocs()
			for b.Loop() {
				d.f.last = drawn{} // the mat drawn anew, as on a change
				_ = d.f.View()
			}
		})
	}
}

// BenchmarkKey is a key press taken in and drawn.
func BenchmarkKey(b *testing.B) {
	d := newDesk(b, 200, 60)
	d.key("enter", "enter", "enter", "enter")
	crowded(d)
	for b.Loop() {
		d.send(keyMsg("up"))
		_ = d.f.View()
		d.send(keyMsg("down"))
		_ = d.f.View()
	}
}

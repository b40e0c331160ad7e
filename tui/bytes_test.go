package tui

import (
	"bytes"
	"strings"
	"sync"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/matside/tui/look"
)

// wire counts what is written to it.
type wire struct {
	mu  sync.Mutex
	all bytes.Buffer
}

func (w *wire) Write(p []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.all.Write(p)
}

func (w *wire) len() int {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.all.Len()
}

// still waits until nothing has been written for a while.
func (w *wire) still() int {
	last, since := -1, time.Now()
	for time.Since(since) < 200*time.Millisecond {
		if n := w.len(); n != last {
			last, since = n, time.Now()
		}
		time.Sleep(5 * time.Millisecond)
	}
	return last
}

// A frame costs the rows that changed and a few bytes to get to them; what
// changes nothing costs nothing.
func TestOnlyChangedRowsAreSent(t *testing.T) {
	at := func() *desk {
		d := newDesk(t, 120, 40)
		d.looks(&look.Dark, termenv.ANSI256)
		d.key("enter", "enter", "enter", "enter")
		return d
	}
	d, twin := at(), at() // the program has the one, the other says what it draws
	var out wire
	p := tea.NewProgram(d.f, tea.WithInput(nil), tea.WithOutput(&out), tea.WithoutSignals())
	done := make(chan error, 1)
	go func() { _, err := p.Run(); done <- err }()
	p.Send(tea.WindowSizeMsg{Width: 120, Height: 40})
	before, sent := twin.f.View(), out.still()
	if sent < len(before)/2 {
		t.Fatalf("the first frame took %d bytes only", sent)
	}
	for _, c := range []struct {
		does string
		msg  tea.Msg
	}{
		{"a key that means nothing", keyMsg("z")},
		{"a count", keyMsg("3")},
		{"a cursor on the picture", keyMsg("right")},
		{"a minute", minute{}},
	} {
		p.Send(c.msg)
		twin.send(c.msg)
		took := out.still() - sent
		after := twin.f.View()
		want := 0
		for y, row := range strings.Split(after, "\n") {
			if row != strings.Split(before, "\n")[y] {
				want += len(row) + 16
			}
		}
		if want > 0 {
			want += 16 * 40 // to go past the rows that stay
		}
		if took > want {
			t.Errorf("%s: %d bytes, the rows that changed are %d", c.does, took, want)
		}
		t.Logf("%s: %d bytes of a frame of %d", c.does, took, len(after))
		before, sent = after, sent+took
	}
	p.Quit()
	if err := <-done; err != nil {
		t.Fatal(err)
	}
}

package tui

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
	"example.org/matside/tui/plain"
)

// evenings are scripts of an evening: as keys at the screen, and as answers
// to the plain lines, one for each.
var evenings = []struct{ name, keys, answers string }{
	{"to the end", strings.Repeat("enter ", 10), strings.Repeat("1 ", 10)},
	{"spoiled, lifted, ragged and a step back",
		"enter enter backspace enter enter enter f r 2 enter backspace 3 enter",
		"1 1 2 1 1 1 7 8 6 2 2 6 3"},
	{"which of them were spoiled", strings.Repeat("enter ", 9) + "3 enter 1 enter", strings.Repeat("1 ", 9) + "6 3 1"},
	{"a wash, taken back, and once more; on a wet mat", "enter enter enter enter enter w u w enter enter enter enter", "1 1 1 1 1 3 6 3 2 4 3 1 1 1 1"},
	{"a second mat", "m n down m enter enter", "6 3 3 6 3 3 8 1"},
	{"when it is due, and a new blade", "m + + - d b y", "6 3 2 5 6 3 2 5 6 3 2 6 6 3 2 7 6 3 4 2"},
	{"loads moved, put off and joined", "o down n down p enter o c", "6 2 2 2 6 2 2 5 6 2 1 6"},
	{"a pause", "p enter", "6 4 1"},
	{"put aside and taken up", "s a a", "6 6 2 3 1"},
}

// TestScreenAndPlainLeaveTheSameRecord: the same evening through the screen
// and through plain lines leaves the same events, but for their times.
func TestScreenAndPlainLeaveTheSameRecord(t *testing.T) {
	for _, e := range evenings {
		byScreen := record(t, func(l *session.Ledger, id session.QuiltID, now func(time.Duration) time.Time) {
			d := newDesk(t, 80, 24)
			d.f.act(opened{Opened{Book: l, Quilt: id}})
			for key := range strings.FieldsSeq(e.keys) {
				d.key(key)
				now(time.Minute)
			}
			if err := d.f.sayGoodbye(); err != nil {
				t.Fatal(err)
			}
		})
		inLines := record(t, func(l *session.Ledger, id session.QuiltID, now func(time.Duration) time.Time) {
			var out bytes.Buffer
			in := strings.NewReader(strings.Join(strings.Fields(e.answers), "\n") + "\n")
			if err := plain.Run(context.Background(), l, id, plain.Options{In: in, Out: &out, Now: func() time.Time { return now(0) }}); err != nil {
				t.Fatal(err)
			}
		})
		if !slices.Equal(byScreen, inLines) {
			t.Errorf("%s:\nscreen\n%s\nplain\n%s", e.name, strings.Join(byScreen, "\n"), strings.Join(inLines, "\n"))
		}
		if len(byScreen) < 4 {
			t.Errorf("%s: only %d events", e.name, len(byScreen))
		}
	}
}

// record is what an evening leaves, event by event, without times.
func record(t *testing.T, evening func(*session.Ledger, session.QuiltID, func(time.Duration) time.Time)) []string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.db")
	at := time.Date(2026, 11, 25, 18, 0, 0, 0, time.UTC)
	now := func(d time.Duration) time.Time { at = at.Add(d); return at }
	opt := session.OpenOptions{Now: func() time.Time { return now(0) }, Planner: fixture.OneByOne}
	l, err := session.Open(path, opt)
	if err != nil {
		t.Fatal(err)
	}
	list, q := fixture.LampRoom()
	id, _, err := l.Start(session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := l.Do(id, session.SitDown{}); err != nil {
		t.Fatal(err)
	}
	evening(l, id, now)
	if err := l.Close(); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := session.Export(path, &out, opt); err != nil {
		t.Fatal(err)
	}
	var log struct {
		Events []struct {
			Quilt int             `json:"quilt"`
			Kind  string          `json:"kind"`
			C     json.RawMessage `json:"c"`
		} `json:"events"`
	}
	if err := json.Unmarshal(out.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	var events []string
	for _, e := range log.Events {
		var c bytes.Buffer
		if err := json.Compact(&c, e.C); err != nil && len(e.C) > 0 {
			t.Fatal(err)
		}
		events = append(events, fmt.Sprintf("%d %s %s", e.Quilt, e.Kind, c.String()))
	}
	return events
}

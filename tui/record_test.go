package tui

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/matside/plan/say"
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
	{"picked by their place", "enter enter enter enter right right x right x f enter", "1 1 1 1 7 9 2,3 _"},
	{"picked, and one of them not", "enter enter enter enter right x right x x enter", "1 1 1 1 9 1 2 2 _"},
	{"back from the end, and one spoiled", strings.Repeat("enter ", 10) + "backspace 1 enter 1 enter w", strings.Repeat("1 ", 10) + "2 6 1 1 3"},
	{"washed at the end", strings.Repeat("enter ", 10) + "w", strings.Repeat("1 ", 10) + "3"},
	{"washed in a pause", "p w enter", "6 4 3 1"},
	{"a mat renamed, another thrown away", "m r O l d enter n down x y", "6 3 2 9 Old 6 3 3 6 3 3 10 2"},
	{"sprayed", "m a u a", "6 3 2 3 6 3 2 4 6 3 2 3"},
	{"another name, and finished", "s r H i enter f y", "6 6 2 4 Hi 6 6 2 5 2"},
	{"taken off the shelf", "s x y", "6 6 2 6 2"},
	{"two spoiled, planned together", "enter enter enter enter 2 enter o c", "1 1 1 1 6 2 6 2 2 6"},
}

// TestScreenAndPlainLeaveTheSameRecord: the same evening through the screen
// and through plain lines leaves the same events, but for their times.
func TestScreenAndPlainLeaveTheSameRecord(t *testing.T) {
	for _, e := range evenings {
		byScreen := record(t, lampRoom(), func(l *session.Ledger, id session.QuiltID, now func(time.Duration) time.Time) {
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
		inLines := record(t, lampRoom(), func(l *session.Ledger, id session.QuiltID, now func(time.Duration) time.Time) {
			var out bytes.Buffer
			in := lines(e.answers)
			if err := plain.Run(context.Background(), l, id, plain.Options{In: in, Out: &out, Now: func() time.Time { return now(0) }}); err != nil {
				t.Fatal(err)
			}
		})
		if !slices.Equal(byScreen, inLines) {
			t.Errorf("%s:\nscreen\n%s\nplain\n%s", e.name, strings.Join(byScreen, "\n"), strings.Join(inLines, "\n"))
		}
		if len(byScreen) < 3 {
			t.Errorf("%s: only %d events", e.name, len(byScreen))
		}
	}
}

// lines are answers, one a line; _ is a line with nothing on it.
func lines(answers string) io.Reader {
	return strings.NewReader(strings.ReplaceAll(strings.Join(strings.Fields(answers), "\n"), "_", "") + "\n")
}

// lampRoom begins the fixture's quilt.
func lampRoom() session.Start {
	list, q := fixture.LampRoom()
	return session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q}
}

// TestAChangedListLeavesTheSameRecord: others change the cut list while it is
// cut; taken, put off, or put off and taken when it has changed once more.
func TestAChangedListLeavesTheSameRecord(t *testing.T) {
	const path = fixture.Home + "first-nine-patch.cutlist"
	for _, e := range []struct{ name, keys, answers string }{
		{"taken", "enter v enter enter", "1 7 1 1"},
		{"put off", "enter v backspace enter", "1 7 2 1"},
		{"not looked at", "enter enter", "1 1"},
	} {
		desk := func() *fixture.Late {
			tab := fixture.NewTable()
			tab.Where[1] = path
			return &fixture.Late{Table: tab, Path: path, Text: strings.Replace(tab.Files[path], "12 squares", "18 squares", 1)}
		}
		tab := desk()
		q, err := tab.Plan(t.Context(), path, tab.Files[path], func(say.Sentence) {})
		if err != nil {
			t.Fatal(err)
		}
		start := session.Start{Text: tab.Files[path], List: q.List, Queue: q}
		byScreen := record(t, start, func(l *session.Ledger, id session.QuiltID, now func(time.Duration) time.Time) {
			d := newDesk(t, 80, 24)
			d.run(d.f.act(opened{Opened{Book: l, Quilt: id, Desk: desk()}}))
			d.after(5 * time.Second)
			for key := range strings.FieldsSeq(e.keys) {
				d.key(key)
				now(time.Minute)
			}
			if err := d.f.sayGoodbye(); err != nil {
				t.Fatal(err)
			}
		})
		inLines := record(t, start, func(l *session.Ledger, id session.QuiltID, now func(time.Duration) time.Time) {
			o := plain.Options{In: lines(e.answers), Out: io.Discard, Desk: desk(), Now: func() time.Time { return now(0) }}
			if err := plain.Run(t.Context(), l, id, o); err != nil {
				t.Fatal(err)
			}
		})
		if !slices.Equal(byScreen, inLines) {
			t.Errorf("%s:\nscreen\n%s\nplain\n%s", e.name, strings.Join(byScreen, "\n"), strings.Join(inLines, "\n"))
		}
		if took := strings.Contains(strings.Join(byScreen, "\n"), "18 squares"); took != (e.name == "taken") {
			t.Errorf("%s: the change is taken: %v", e.name, took)
		}
	}
}

// record is what an evening leaves, event by event, without times.
func record(t *testing.T, start session.Start, evening func(*session.Ledger, session.QuiltID, func(time.Duration) time.Time)) []string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.db")
	at := time.Date(2026, 11, 25, 18, 0, 0, 0, time.UTC)
	now := func(d time.Duration) time.Time { at = at.Add(d); return at }
	opt := session.OpenOptions{Now: func() time.Time { return now(0) }, Planner: fixture.OneByOne}
	l, err := session.Open(path, opt)
	if err != nil {
		t.Fatal(err)
	}
	id, _, err := l.Start(start)
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

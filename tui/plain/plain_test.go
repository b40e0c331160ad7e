package plain

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
)

// book is a ledger whose next writes may fail.
type book struct {
	*session.Ledger
	fail int
}

func (b *book) Do(id session.QuiltID, a session.Action) (session.State, error) {
	if b.fail > 0 {
		b.fail--
		return b.State(), errors.New("no room on the disk")
	}
	return b.Ledger.Do(id, a)
}

func evening(t *testing.T) (*book, session.QuiltID, Options, *bytes.Buffer) {
	t.Helper()
	at := time.Date(2026, 11, 25, 18, 0, 0, 0, time.UTC)
	now := func() time.Time { at = at.Add(time.Minute); return at }
	b := &book{Ledger: session.New(session.OpenOptions{Now: now, Planner: fixture.OneByOne})}
	list, q := fixture.LampRoom()
	id, _, err := b.Start(session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	return b, id, Options{Out: &out, Now: now, In: strings.NewReader("")}, &out
}

func run(t *testing.T, b *book, id session.QuiltID, o Options, answers ...string) {
	t.Helper()
	o.In = strings.NewReader(strings.Join(answers, "\n") + "\n")
	if err := Run(context.Background(), b, id, o); err != nil {
		t.Fatal(err)
	}
}

func has(t *testing.T, out *bytes.Buffer, texts ...string) {
	t.Helper()
	rest := out.String()
	for _, text := range texts { // in this order
		_, after, ok := strings.Cut(rest, text)
		if !ok {
			t.Fatalf("not said (in this order): %q in\n%s", text, out)
		}
		rest = after
	}
}

func TestShowDoesTheWholeJob(t *testing.T) {
	b, id, o, out := evening(t)
	o.Demo = true
	if err := Show(context.Background(), b, id, o); err != nil {
		t.Fatal(err)
	}
	has(t, out, "Demo: nothing here is kept.", "Load 1 of 2, fabric.", "Cut Plum 10 1/2 x 5 1/2.",
		"Lay Plum on mat One.", "Row 1, from the left: 4 squares 2 1/2 of Plum, line A.",
		"1 piece spoiled, to be cut again.", "Load 3 of 3, fabric.", "Cut again.", "Mat One is washed.",
		"Lamp Room is all cut.", "16 good pieces in 3 loads.", "1 piece was spoiled and cut again.")
	st := b.State()
	if q := st.Quilt(id); !q.Finished() || q.Pieces.Done != 16 {
		t.Errorf("not finished: %+v", q.Pieces)
	}
	if strings.Contains(out.String(), "\x1b") {
		t.Error("an escape sequence in plain lines")
	}
	b2, id2, o2, out2 := evening(t)
	o2.Demo = true
	if err := Show(context.Background(), b2, id2, o2); err != nil || out.String() != out2.String() {
		t.Errorf("a second time says something else (%v)", err)
	}
}

func TestEnterAloneGoesToTheEnd(t *testing.T) {
	b, id, o, out := evening(t)
	run(t, b, id, o, make([]string, 10)...)
	has(t, out, "16 good pieces in 2 loads.", "None was spoiled.", "Mat One: 2 loads since its wash")
}

func TestEndOfInputLeavesWithEverythingSaved(t *testing.T) {
	b, id, o, out := evening(t)
	run(t, b, id, o, "1", "1")
	has(t, out, "Left. Everything is saved.")
	st := b.State()
	if q := st.Quilt(id); q.Step != session.Lay {
		t.Errorf("at %v", q.Step)
	}
	out.Reset()
	run(t, b, id, o, "1", "5", "1")
	has(t, out, "Load 1 of 2, cut.", "Left. Everything is saved.")
}

func TestSpoiledBackAndWash(t *testing.T) {
	b, id, o, out := evening(t)
	first := []string{"", "", "", "", "6", "9", "3", "2", "3", "1"} // 3 of 8 spoiled (9 is refused), one back, wash refused, all good
	run(t, b, id, o, append(first, "", "", "", "", "6", "3", "1", "3")...)
	has(t, out, "How many are spoiled?", "Type a number, 0 to 8.", "Type a number, 0 to 8.", "3 pieces spoiled, to be cut again.",
		"One step back.", "There is fabric on mat One: peel it first.", "Load 2 of 2, fabric.",
		"3 spoiled. How many are these?", "A  4 squares 2 1/2, Plum", "Type a number, 0 to 3.", "3 pieces spoiled, to be cut again.",
		"Mat One is washed.")
	st := b.State()
	q := st.Quilt(id)
	if p := q.Pieces; p.Done != 13 || p.Waiting != 3 {
		t.Errorf("%+v", p)
	}
	if got := q.Loads[1].Spoiled; len(got) != 3 || got[0] != 3 || got[1] != 6 || got[2] != 7 {
		t.Errorf("spoiled %v, want one square and two triangles", got)
	}
}

func TestFailureIsToldAndTriedAgain(t *testing.T) {
	b, id, o, out := evening(t)
	b.fail = 2
	run(t, b, id, o, "1", "1", "1")
	has(t, out, "NOT SAVED: no room on the disk", "Now: 1 try again", "NOT SAVED", "Load 1 of 2, press.")
	b.fail = 1
	out.Reset()
	run(t, b, id, o, "1", "2")
	has(t, out, "NOT SAVED", "Left.")
}

func TestWrongAnswersAreAskedAgain(t *testing.T) {
	b, id, o, out := evening(t)
	run(t, b, id, o, "7", "yes", "0", "-1", strings.Repeat("9", 10000), "1")
	if n := strings.Count(out.String(), "Type a number from 1 to 6."); n != 5 {
		t.Errorf("asked again %d times, want 5", n)
	}
	has(t, out, "Load 1 of 2, press.")
}

func TestADoneContextLeaves(t *testing.T) {
	b, id, o, out := evening(t)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	never, _ := io.Pipe()
	o.In = never
	if err := Run(ctx, b, id, o); err != nil {
		t.Fatal(err)
	}
	has(t, out, "Left. Everything is saved.")
}

func TestNoQuilt(t *testing.T) {
	b, _, o, out := evening(t)
	run(t, b, 0, o)
	has(t, out, "No quilt is under way.", "matside demo")
}

// full takes no more than so many bytes.
type full int

func (f *full) Write(b []byte) (int, error) {
	if *f -= full(len(b)); *f < 0 {
		return 0, io.ErrShortWrite
	}
	return len(b), nil
}

func TestAnOutputThatBreaksOffEndsTheEvening(t *testing.T) {
	b, id, o, _ := evening(t)
	room := full(300)
	o.Out = &room
	if err := Show(context.Background(), b, id, o); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("error %v", err)
	}
}

func TestEverythingBesidesTheStepIsTold(t *testing.T) {
	b, id, o, out := evening(t)
	run(t, b, id, o, "6", "2", "2", "1", "6", "3", "2", "1", "6", "5", "6", "6", "2", "1", "6", "4", "1", "1")
	has(t, out, "Now: 1 back to the step, 2 all loads, 3 the mats,",
		"Load 1 of 2: Plum, 8 pieces, 12 min, now.", "Load 2 of 2: Plum and Oat, 8 pieces, 12 min.", "Which load? 0 goes back.",
		"Row 1, from the left:", "cut this one next",
		"Caution: Adhesive may touch the warranty", "Mat One, in use: 0 loads since its wash", "Wash due after 8 loads", "adhesive sprayed on",
		"Lamp Room: ", "You are having a pause.", "Load 1 of 2, press.")
	if strings.ContainsAny(out.String(), "\x1b─│█") {
		t.Error("something is drawn in plain lines")
	}
}

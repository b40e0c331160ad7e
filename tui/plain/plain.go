package plain

import (
	"context"
	"errors"
	"io"
	"os"
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/words"
)

// Notebook is where what she does is written down: a *session.Ledger.
type Notebook interface {
	State() session.State
	Do(session.QuiltID, session.Action) (session.State, error)
}

// Options say how to run. The zero value talks on standard input and output.
type Options struct {
	In   io.Reader
	Out  io.Writer
	Demo bool // say that nothing is kept
	// Language it talks in; "" is English.
	Language string
	Lists    *Lists           // nil: no cut list can be opened from here
	Now      func() time.Time // nil: time.Now
	// Left is the time the rest of a quilt takes; nothing is said when nil.
	Left func(*session.State, *session.Quilt) (d time.Duration, guess bool)
}

// Run, for a quilt she has sat down to, asks and tells until she leaves, the input ends, ctx is done, or the
// quilt is all cut. The quilt in hand, which may be another one by then, is
// left. The error is one of writing out, or of writing that down, or nil.
func Run(ctx context.Context, book Notebook, quilt session.QuiltID, o Options) error {
	o = o.filled()
	t := newTalk(book, quilt, o, newReader(ctx, o.In))
	err := t.evening(ctx)
	if t.id != 0 {
		_, left := book.Do(t.id, session.Leave{})
		err = errors.Join(err, left)
	}
	return err
}

// Show does the whole job by itself: it answers every question as a quilter
// might, with one spoiled piece on the first load and a wash on the way.
func Show(ctx context.Context, book Notebook, quilt session.QuiltID, o Options) error {
	return newTalk(book, quilt, o.filled(), &itself{ctx: ctx}).evening(ctx)
}

func (o Options) filled() Options {
	if o.In == nil {
		o.In = os.Stdin
	}
	if o.Out == nil {
		o.Out = os.Stdout
	}
	if o.Now == nil {
		o.Now = time.Now
	}
	return o
}

// answerer answers questions. errLeft means that nobody answers any more.
type answerer interface {
	choose(t *talk, q question) (int, error)
	number(t *talk, least, most int) (int, error)
	text(t *talk) (string, error)
}

var errLeft = errors.New("left")

// question has choices; Enter alone is the first.
type question struct {
	about   string // what the demo goes by: "step", "peel", "mat", "wet", "failed"
	choices []string
}

// talk is one evening in lines.
type talk struct {
	Options
	book  Notebook
	id    session.QuiltID
	words words.Words
	from  answerer
	fail  error // of writing
	// What is noted at the peel step until it ends.
	lifted, ragged bool
}

func newTalk(book Notebook, id session.QuiltID, o Options, from answerer) *talk {
	return &talk{Options: o, book: book, id: id, from: from, words: words.In(o.Language)}
}

// say writes one line, without anything that steers a terminal.
func (t *talk) say(line string) {
	if t.fail == nil {
		_, t.fail = io.WriteString(t.Out, canvas.Clean(line)+"\n")
	}
}

func (t *talk) quilt() (*session.State, *session.Quilt) {
	state := t.book.State()
	return &state, state.Quilt(t.id)
}

// evening goes from step to step.
func (t *talk) evening(ctx context.Context) error {
	_, q := t.quilt()
	if q == nil {
		if err := t.first(ctx); err != nil || t.id == 0 {
			return t.fail
		}
		_, q = t.quilt()
	}
	t.say(t.words.PlainHello(q.Name))
	if t.Demo {
		t.say(words.Capital(t.words.DemoNotice()) + ".")
	}
	for t.fail == nil {
		next := t.turn
		switch _, q = t.quilt(); {
		case q.Paused:
			next = t.paused
		case q.Standing == session.Aside || q.Standing == session.Gone:
			next = t.put
		case q.InHand() == nil:
			t.closing(q)
			return t.fail
		default:
			t.where()
			t.step(q)
		}
		if err := next(); err != nil {
			t.say(t.words.PlainLeft())
			break
		}
	}
	return t.fail
}

// where says what the heading and the mat's line show.
func (t *talk) where() {
	state, q := t.quilt()
	line := words.Capital(t.words.LoadOf(q.Place(), len(q.Loads))) + ", " + t.words.Step(int(q.Step)) + ". " +
		words.Capital(t.words.PiecesOf(q.Pieces.Done, q.Pieces.Asked)) + "."
	if l := q.InHand(); l.Recut {
		line += " " + words.Capital(t.words.Recut()) + "."
	}
	if t.Left != nil {
		line += " " + words.Capital(t.words.TimeLeft(t.Left(state, q))) + "."
	}
	t.say("")
	t.say(line)
	if q.Step == session.Fabric || q.Step == session.Lay {
		t.mat(state, q.Mat)
	}
}

func (t *talk) mat(state *session.State, name string) {
	m := state.Mat(name)
	if m == nil {
		return
	}
	due := state.Due(name)
	how := t.words.BeforeWash(due.Left)
	switch {
	case t.Now().Before(m.DryAt):
		how = t.words.Drying(t.words.Clock(m.DryAt))
	case due.Left <= 0:
		how = t.words.WashDue()
	}
	t.say(words.Capital(t.words.Mat(name)) + ": " + t.words.SinceWash(m.Since) + ", " + how + ".")
}

// facts of the step in hand.
func facts(q *session.Quilt) guide.Facts {
	load := q.InHand()
	list := q.ListOf(load)
	return guide.Facts{List: list, Load: &load.Load, Step: q.Step, Mat: q.Mat, Unit: list.Unit,
		Panels: func(fabric int) int { return len(list.Fabrics[fabric].Stock) }}
}

// step says what there is to do; before the mat goes in, the picture too.
func (t *talk) step(q *session.Quilt) {
	f := facts(q)
	page := guide.Write(t.words, f)
	t.say(page.Do)
	for _, item := range page.Items {
		t.say("  " + item)
	}
	for _, more := range page.More {
		t.say(more)
	}
	if q.Step == session.Lay {
		for _, row := range matpic.Tell(t.words, f.List, f.Load) {
			t.say(row)
		}
	}
	if page.Caution != "" {
		t.say(t.words.PlainCaution(page.Caution))
	}
}

// closing says how it ended.
func (t *talk) closing(q *session.Quilt) {
	t.say("")
	t.say(t.words.AllCut(q.Name))
	t.say(t.words.Totals(q.Pieces.Done, q.LoadsDone()))
	t.say(t.words.TotalSpoiled(q.Pieces.Spoiled))
	if q.Pieces.Short > 0 {
		t.say(t.words.StillShort(q.Pieces.Short))
	}
	state, _ := t.quilt()
	for _, m := range state.Mats {
		if !m.Retired {
			t.mat(state, m.Name)
		}
	}
	t.say(t.words.ToSewing())
}

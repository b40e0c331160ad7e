package plain

import (
	"context"
	"errors"
	"io"
	"os"
	"time"

	"example.org/matside/plan/length"
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/form"
	"example.org/matside/tui/given"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/settings"
	"example.org/matside/tui/words"
)

// Options say how to run. The zero value talks on standard input and output.
type Options struct {
	In       io.Reader
	Out      io.Writer
	Demo     bool // say that nothing is kept
	Settings settings.Settings
	Keep     func(settings.Settings) error // keeps changed settings; nil: they last while it runs
	Desk     given.Desk                    // nil: no cut list can be opened from here
	Now      func() time.Time              // nil: time.Now
	// Planner is at work while an action is written down; nil where it can't
	// be watched.
	Planner given.Planner
	// Left is the time the rest of a quilt takes; nothing is said when nil.
	Left func(*session.State, *session.Quilt) (d time.Duration, guess bool)
}

// Run, for a quilt she has sat down to, asks and tells until she leaves, the input ends, ctx is done, or the
// quilt is all cut and she leaves. The quilt in hand, which may be another one
// by then, is left, and a cut list half written is kept. The error is one of writing out, or of writing that down, or nil.
func Run(ctx context.Context, book given.Notebook, quilt session.QuiltID, o Options) error {
	o = o.filled()
	t := newTalk(ctx, book, quilt, o, newReader(ctx, o.In))
	t.plansBy(o.Planner)
	err := t.evening()
	if _, q := t.quilt(); q != nil && q.Standing != session.Gone {
		_, left := t.book.Do(t.id, session.Leave{})
		err = errors.Join(err, left)
	}
	return errors.Join(err, t.keepForm())
}

// Show does the whole job by itself: it answers every question as a quilter
// might, with one spoiled piece on the first load and a wash on the way.
func Show(ctx context.Context, book given.Notebook, quilt session.QuiltID, o Options) error {
	return newTalk(ctx, book, quilt, o.filled(), &itself{ctx: ctx}).evening()
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
	ctx   context.Context
	book  given.Notebook
	id    session.QuiltID
	words words.Words
	from  answerer
	fail  error      // of writing
	form  *form.Form // the one being written, kept when she leaves
	news  news
	rung  rung
	// What is noted at the peel step until it ends.
	lifted, ragged bool
}

func newTalk(ctx context.Context, book given.Notebook, id session.QuiltID, o Options, from answerer) *talk {
	return &talk{Options: o, ctx: ctx, book: book, id: id, from: from, words: words.In(o.Settings.Language)}
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

// evening goes from step to step, and where no quilt is in hand over the
// first page.
func (t *talk) evening() error {
	greeted := false
	for t.fail == nil {
		_, q := t.quilt()
		next := t.turn
		switch {
		case q == nil:
			t.id, greeted, next = 0, false, t.first
		case !greeted:
			greeted = true
			t.hello(q)
			continue
		case q.Paused:
			next = t.paused
		case q.Standing == session.Aside || q.Standing == session.Gone:
			next = t.put
		case q.InHand() == nil:
			if t.closing(q); t.alone() {
				return t.fail
			}
			next = t.over
		default:
			t.where()
			t.step(q)
		}
		t.look()
		if err := next(); err != nil {
			t.left()
			break
		}
	}
	return t.fail
}

// hello says how to answer.
func (t *talk) hello(q *session.Quilt) {
	t.say(t.words.PlainHello(q.Name))
	if t.Demo {
		t.say(words.Capital(t.words.DemoNotice()) + ".")
	}
	t.short(q)
}

// short says for how many pieces there is too little fabric, and what to do.
func (t *talk) short(q *session.Quilt) {
	if q.Pieces.Short > 0 {
		t.say(t.words.StillShort(q.Pieces.Short))
		t.say(t.words.MoreFabric())
	}
}

// alone reports that nobody is there to be asked.
func (t *talk) alone() bool {
	_, alone := t.from.(*itself)
	return alone
}

// left says what becomes of it all.
func (t *talk) left() {
	switch {
	case t.Desk == nil && t.id == 0: // nothing was begun
	case t.Demo:
		t.say(t.words.PlainNotKept())
	default:
		t.say(t.words.PlainLeft())
	}
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

// unit is the one she has lengths in.
func (t *talk) unit() length.Unit {
	_, q := t.quilt()
	return guide.Unit(t.Settings.Units, q)
}

// step says what there is to do; before the mat goes in, the picture too.
func (t *talk) step(q *session.Quilt) {
	state, _ := t.quilt()
	f := guide.Of(state, q, t.unit())
	page := guide.Write(t.words, f)
	t.say(page.Do)
	for _, item := range page.Items {
		t.say("  " + item)
	}
	if q.Step == session.Fabric {
		t.panels(q, f)
	}
	for _, more := range page.More {
		t.say(more)
	}
	if q.Step == session.Lay {
		for _, row := range matpic.Tell(t.words, f.List, f.Load) {
			t.say(row)
		}
	}
	if q.Step == session.Peel {
		t.say(t.words.PlainAnySpoiled())
	}
	if page.Caution != "" {
		t.say(t.words.PlainCaution(page.Caution))
	}
}

// panels tells each panel that the rough cuts come out of, with the straight
// cuts to make in order.
func (t *talk) panels(q *session.Quilt, f guide.Facts) {
	said := make(map[string]bool)
	for i := range f.Load.RoughCuts {
		p, ok := guide.Panel(q, f, i, func(l length.Len) string { return t.words.Length(l, f.Unit) })
		if !ok {
			continue
		}
		if name := guide.PanelLegend(t.words, q, f, i); !said[name] {
			said[name] = true
			t.say(name + ":")
			for _, cut := range guide.StraightCuts(t.words, p) {
				t.say("  " + cut)
			}
		}
	}
}

// closing says how it ended.
func (t *talk) closing(q *session.Quilt) {
	t.say("")
	if q.Finished() {
		t.say(t.words.AllCut(q.Name))
	} else {
		t.say(t.words.CutSoFar(q.Name))
	}
	t.say(t.words.Totals(q.Pieces.Done, q.LoadsDone()))
	t.say(t.words.TotalSpoiled(q.Pieces.Spoiled))
	t.short(q)
	if n := guide.ByHand(q); n > 0 {
		t.say(t.words.ByHandYet(n))
	}
	state, _ := t.quilt()
	for _, m := range state.MatsThere() {
		t.mat(state, m.Name)
	}
	t.say(t.words.ToSewing())
}

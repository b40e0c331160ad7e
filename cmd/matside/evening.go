package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"strings"
	"syscall"
	"time"

	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui"
	"example.org/matside/tui/guard"
	"example.org/matside/tui/plain"
	"example.org/matside/tui/words"
)

// evening is what she sits down to.
type evening struct {
	file    string     // the data file, as the option says
	chosen  *chosen    // the settings
	planner *replanner // for recuts and edited lists
	demo    bool       // nothing is kept
	list    string     // the path of the cut list, "" where it is not known
	// begin finds or starts the quilt to cut, 0 for none. It tells what takes
	// long, and ends early when ctx is done.
	begin func(ctx context.Context, l *session.Ledger, tell func(say.Sentence)) (session.QuiltID, error)
}

// way is how she is walked through: by the screen or in plain lines.
type way struct{ plain, screen bool }

func screens(w world, plainLines bool) way {
	term := w.getenv("TERM")
	asked := plainLines || w.getenv("MATSIDE_PLAIN") != "" && w.getenv("MATSIDE_PLAIN") != "0"
	switch {
	case asked || w.terminal() && term == "dumb":
		return way{plain: true}
	default:
		return way{screen: w.terminal()}
	}
}

// possible says what to run instead where there is no terminal.
func (h way) possible(command string) error {
	if h.plain || h.screen {
		return nil
	}
	return problem{
		what: fmt.Sprintf("`%s` draws a screen, and there is no terminal here", command),
		hint: "`matside status` says where you are, `matside plan FILE` prints the loads, `matside cut --plain FILE` asks and answers in plain lines.",
	}
}

// timeLeft is the middle of what the rest of a quilt should take.
func timeLeft(s *session.State, q *session.Quilt) (time.Duration, bool) {
	r := s.TimeLeft(q.ID, time.Now())
	return r.Mid, r.Guess
}

// run walks her through an evening: opens the data file, begins, and closes
// it when she has left.
func (h way) run(ctx context.Context, w world, e evening) error {
	if h.plain {
		return e.chosen.said(e.inLines(ctx, w))
	}
	return e.chosen.said(e.onScreen(ctx, w))
}

// inLines has everything open before the first question.
func (e evening) inLines(ctx context.Context, w world) (err error) {
	file, err := session.Path(e.file, runtime.GOOS, w.getenv)
	if err != nil {
		return err
	}
	l, err := openFile(w, e.file, e.planner.plan)
	if err != nil {
		return err
	}
	d := newDesk(w, file)
	defer func() { err = errors.Join(err, l.Close(), d.ends.close()) }()
	tell := func(line string) { fmt.Fprintln(w.out, line) }
	notes := l.Notes()
	id, err := e.begun(ctx, l, plain.Steps(e.chosen.words(), tell))
	if err != nil {
		return err
	}
	d.lists.set(id, e.list)
	for _, note := range e.notes(append(notes, offers(l.State(), id)...)) {
		tell(note)
	}
	return plain.Run(ctx, l, id, plain.Options{In: w.in, Out: w.out, Demo: e.demo, Left: timeLeft,
		Settings: e.chosen.now, Keep: e.chosen.keep, Desk: d, Planner: e.planner})
}

// begun sits down; an interrupt meanwhile ends the wait and begins nothing.
func (e evening) begun(ctx context.Context, l *session.Ledger, tell func(say.Sentence)) (session.QuiltID, error) {
	waiting, release := signal.NotifyContext(ctx, syscall.SIGINT)
	defer release()
	return e.sitDown(waiting, l, tell)
}

// notes are what there is to tell at the beginning, in her language.
func (e evening) notes(said []say.Sentence) []string {
	var all []string
	for _, s := range said {
		all = append(all, e.chosen.words().Say(s))
	}
	if e.chosen.notice != "" {
		all = append(all, e.chosen.notice)
	}
	return all
}

// onScreen opens and plans when the first picture stands.
func (e evening) onScreen(ctx context.Context, w world) error {
	var l *session.Ledger
	file, err := session.Path(e.file, runtime.GOOS, w.getenv)
	if err != nil {
		return err
	}
	d := newDesk(w, file)
	open := func(ctx context.Context, tell func(say.Sentence)) (tui.Opened, error) {
		var err error
		if l, err = openFile(w, e.file, e.planner.plan); err != nil {
			return tui.Opened{}, err
		}
		id, err := e.sitDown(ctx, l, tell)
		d.lists.set(id, e.list)
		notes := e.notes(append(l.Notes(), offers(l.State(), id)...))
		return tui.Opened{Book: l, Quilt: id, Notice: strings.Join(notes, " "), Desk: d, Planner: e.planner}, err
	}
	release := guard.Terminal(os.Stdout)
	defer release()
	err = tui.Run(ctx, open, tui.Options{Demo: e.demo, Advice: tui.Advice{Left: timeLeft}, Settings: e.chosen.now, Keep: e.chosen.keep})
	if l != nil {
		err = errors.Join(err, l.Close())
	}
	return errors.Join(err, d.ends.close())
}

// offers says, before the first load of a quilt, which finished ones left
// fabric that it cuts from.
func offers(state session.State, id session.QuiltID) []say.Sentence {
	q := state.Quilt(id)
	if q == nil || q.List() == nil || q.LoadsDone() > 0 {
		return nil
	}
	var all []say.Sentence
	for _, old := range state.Offer(q.List()) {
		all = append(all, words.Offered.Say(old.Name))
	}
	return all
}

func (e evening) sitDown(ctx context.Context, l *session.Ledger, tell func(say.Sentence)) (session.QuiltID, error) {
	id, err := e.begin(ctx, l, tell)
	if err == nil && id != 0 {
		_, err = l.Do(id, session.SitDown{})
	}
	return id, err
}

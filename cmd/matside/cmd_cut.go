package main

import (
	"context"
	"errors"

	"github.com/spf13/cobra"

	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/words"
)

func newCut(w world) *cobra.Command {
	var plainLines, again bool
	var plans planning
	c := &cobra.Command{
		Use:     "cut FILE",
		Short:   "Cut a cut list, from the start or from where you stopped",
		Example: "  matside cut throw.cutlist\n  matside cut throw.cutlist --again\n  matside cut throw.cutlist --first A",
		Args:    oneFileOrNone,
		RunE: func(c *cobra.Command, args []string) error {
			how := screens(w, plainLines)
			if len(args) == 0 {
				return resume(w, c, how, "matside cut")
			}
			set, err := choose(w, c)
			if err != nil {
				return err
			}
			s, err := readSource(w, args[0])
			if err != nil {
				return set.said(err)
			}
			if err := how.possible("matside cut"); err != nil {
				return err
			}
			return how.run(c.Context(), w, evening{file: dataFile(c), list: s.path, chosen: set, planner: plans.again(),
				begin: func(ctx context.Context, l *session.Ledger, tell func(say.Sentence)) (session.QuiltID, error) {
					return takeUp(ctx, w, l, s, plans.telling(tell), again)
				}})
		},
	}
	plans.options(c)
	settingsOptions(c)
	c.Flags().BoolVar(&plainLines, "plain", false, "plain lines and questions instead of the screen")
	c.Flags().BoolVar(&again, "again", false, "start it once more, though it is under way or cut")
	return c
}

// resume goes on with the quilt that was cut last, or shows the first page.
func resume(w world, c *cobra.Command, how way, command string) error {
	if err := how.possible(command); err != nil {
		return err
	}
	set, err := choose(w, c)
	if err != nil {
		return err
	}
	return how.run(c.Context(), w, evening{file: dataFile(c), chosen: set, planner: new(replanner), begin: func(_ context.Context, l *session.Ledger, _ func(say.Sentence)) (session.QuiltID, error) {
		state := l.State()
		if q := state.Latest(); q != nil {
			return q.ID, nil
		}
		return 0, nil
	}})
}

// takeUp finds the session of a cut list, or starts one. Where the list was
// edited since, or other pieces are to come first, what remains is planned
// again.
func takeUp(ctx context.Context, w world, l *session.Ledger, s source, plans *planning, again bool) (session.QuiltID, error) {
	state := l.State()
	q := sessionOf(&state, s)
	switch {
	case q == nil || again:
		return start(ctx, w, l, s, plans)
	case q.Standing == session.Aside:
		if _, err := l.Do(q.ID, session.TakeUp{}); err != nil {
			return 0, err
		}
	}
	if err := plans.fits(s); err != nil {
		return 0, err
	}
	q, err := l.Whole(q.ID) // one that was finished long ago is known in brief
	if err != nil {
		return 0, err
	}
	if q.Text() == string(s.text) && plans.first == "" {
		return q.ID, nil
	}
	_, err = l.Do(q.ID, session.Replan{Text: string(s.text), List: s.list})
	return q.ID, err
}

// sessionOf finds the latest session of the quilt that s makes.
func sessionOf(state *session.State, s source) *session.Quilt {
	var latest *session.Quilt
	for _, q := range state.Quilts {
		if q.Standing != session.Gone && q.ListName() == s.list.Quilt {
			latest = q
		}
	}
	return latest
}

// nothingToCut: a session needs a load.
func nothingToCut(name string) error {
	return told{what: words.NothingToCut.Say(printable(name)), hint: words.SeePlan.Say()}
}

func start(ctx context.Context, w world, l *session.Ledger, s source, plans *planning) (session.QuiltID, error) {
	q, err := plans.make(ctx, w, s)
	if errors.Is(err, errInterrupted) {
		return 0, errNotStarted
	}
	if err != nil {
		return 0, err
	}
	if len(q.Loads) == 0 {
		return 0, nothingToCut(s.name)
	}
	id, _, err := l.Start(session.Start{Text: string(s.text), List: s.list, Queue: q})
	return id, err
}

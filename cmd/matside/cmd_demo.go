package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/testdata/cutlists"
	"example.org/matside/tui/plain"
	"example.org/matside/tui/words"
)

func newDemo(w world) *cobra.Command {
	var plans planning
	c := &cobra.Command{
		Use:   "demo",
		Short: "Try it on an invented quilt; nothing of it is kept",
		Long: "Cut an invented quilt, with a data file that is thrown away at the end.\n" +
			"Without a terminal it does the whole job by itself, in plain lines.",
		Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error { return demo(w, c, &plans) },
	}
	plans.effortOption(c)
	settingsOptions(c)
	return c
}

func demo(w world, c *cobra.Command, plans *planning) (err error) {
	folder, err := os.MkdirTemp("", "matside-demo-")
	if err != nil {
		return noDemoRoom(err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	s, err := demoSource()
	if err != nil {
		return err
	}
	file := filepath.Join(folder, "demo.db")
	ctx := c.Context()
	if how := screens(w, false); how.plain || how.screen {
		set, err := choose(w, c)
		if err != nil {
			return err
		}
		return how.run(ctx, w, evening{file: file, demo: true, chosen: set, planner: plans.again(), begin: func(ctx context.Context, l *session.Ledger, tell func(say.Sentence)) (session.QuiltID, error) {
			return start(ctx, w, l, s, plans.telling(tell))
		}})
	}
	return withLedger(w, file, func(l *session.Ledger) error {
		id, err := start(ctx, w, l, s, plans)
		if err != nil {
			return err
		}
		return demoAlone(ctx, w, l, id, s)
	})
}

func noDemoRoom(err error) error {
	return told{words.NoDemoRoom.Say(err), words.FreeSpace.Say(), err}
}

func demoSource() (source, error) {
	s := source{name: cutlists.Demo, text: cutlists.Read(cutlists.Demo)}
	var err error
	s.list, err = cutlist.Read(s.name, s.text, func(name string) ([]byte, error) {
		return nil, fmt.Errorf("the demo has no file %s", name)
	})
	return s, err
}

// demoAlone shows the whole job in plain lines: the cut list, every load, a
// spoiled piece and its recut, a wash, and how things stand at the end.
func demoAlone(ctx context.Context, w world, l *session.Ledger, id session.QuiltID, s source) error {
	fmt.Fprintf(w.out, "The cut list\n\n%s\n", s.text)
	if err := plain.Show(ctx, l, id, plain.Options{Out: w.out, Demo: true, Left: timeLeft}); err != nil {
		return err
	}
	state := l.State()
	fmt.Fprintln(w.out)
	return writeStatus(w.out, &state, state.Status(id))
}

package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"example.org/matside/session"
	"example.org/matside/tui/words"
)

func newTurns(w world) *cobra.Command {
	return &cobra.Command{
		Use: "turns", Short: "Say who waits for what: the rest of the quilt, step by step, on the mats there are", Args: noWords,
		Long: "Say what is done when on which mat until the quilt is cut: while one load is cut, the next is\n" +
			"made ready, and a washed mat dries. Times count from now, and are as long as your own\n" +
			"steps took. It says what a second mat saves, or would save.",
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			return writeTurns(w.out, &state, time.Now())
		},
	}
}

func writeTurns(w io.Writer, state *session.State, now time.Time) error {
	q := latestQuilt(state)
	if q == nil || q.InHand() == nil {
		_, err := fmt.Fprintln(w, "No load waits to be cut.")
		return err
	}
	together, said := state.WorkTogether(q.ID, now), words.English{}
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, t := range together.Plan.Tasks {
		what := "wash"
		if t.Load >= 0 {
			what = fmt.Sprintf("load %d\t%s", q.Place()+t.Load, said.Step(t.Step))
		} else {
			what += "\t"
		}
		mat := ""
		if t.Mat != "" {
			mat = "mat " + printable(t.Mat)
		}
		line := fmt.Sprintf("%s to %s\t%s\t%s", hours(t.From), hours(t.To), what, mat)
		fmt.Fprintln(table, strings.TrimRight(line, "\t"))
	}
	if err := table.Flush(); err != nil {
		return err
	}
	if together.Second < time.Minute {
		return nil
	}
	_, err := fmt.Fprintln(w, said.SecondMat(together.Second, len(state.MatsThere()) > 1))
	return err
}

// hours writes a time of the plan: 1:05.
func hours(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

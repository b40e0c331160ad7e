package main

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"example.org/matside/session"
)

func newStatus(w world) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:     "status",
		Short:   "Say where you are: the quilt, the load, the mats",
		Example: "  matside status\n  matside status --json",
		Args:    noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			status := latestStatus(&state)
			if !asJSON {
				return writeStatus(w.out, status)
			}
			e := json.NewEncoder(w.out)
			e.SetIndent("", " ")
			e.SetEscapeHTML(false)
			return e.Encode(status)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	return c
}

// latestStatus tells of the quilt that was worked on last, finished or not.
func latestStatus(s *session.State) session.Status {
	var latest *session.Quilt
	for _, q := range s.Quilts {
		if q.Standing != session.Gone && (latest == nil || !q.Touched.Before(latest.Touched)) {
			latest = q
		}
	}
	if q := s.Latest(); q != nil {
		latest = q
	}
	if latest == nil {
		return s.Status(0)
	}
	return s.Status(latest.ID)
}

func writeStatus(w io.Writer, s session.Status) error {
	if s.Quilt == "" {
		fmt.Fprintln(w, "No quilt is under way. `matside cut FILE` starts one, `matside demo` shows how it goes.")
	} else {
		fmt.Fprintln(w, printable(s.Quilt))
		fmt.Fprintf(w, "  %s\n", whereShe(s))
		fmt.Fprintf(w, "  loads   %d done, %d left\n", s.LoadsDone, s.LoadsLeft)
		fmt.Fprintf(w, "  pieces  %d done, %d left, %d spoiled\n", s.PiecesDone, s.PiecesLeft+s.PiecesWaiting, s.PiecesSpoiled)
		if s.PiecesShort > 0 {
			fmt.Fprintf(w, "  short   no fabric for %d\n", s.PiecesShort)
		}
	}
	for _, m := range s.Mats {
		fmt.Fprintf(w, "  mat %s  %s\n", printable(m.Name), matWords(m))
	}
	return nil
}

func whereShe(s session.Status) string {
	switch {
	case s.Finished:
		return "every piece is cut"
	case s.Load == 0:
		return "every load is cut, but the fabric ran short"
	default:
		return fmt.Sprintf("load %d of %d, step: %s", s.Load, s.LoadsDone+s.LoadsLeft, s.Step)
	}
}

// matWords says how a mat stands, in words.
func matWords(m session.MatStatus) string {
	since := fmt.Sprintf("%d loads since its wash", m.LoadsSinceWash)
	if m.LoadsSinceWash == 1 {
		since = "1 load since its wash"
	}
	switch {
	case m.LoadsUntilDue > 1:
		return fmt.Sprintf("%s, %d more before it is due", since, m.LoadsUntilDue)
	case m.LoadsUntilDue == 1:
		return since + ", 1 more before it is due"
	default:
		return since + ", wash it now"
	}
}

package main

import (
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"example.org/matside/session"
	"example.org/matside/tui/words"
)

const statusLong = `Say where you are: the quilt worked on last, the load, the mats, the blade. It
can be asked while a window has the data file open.

With --json it prints one object; fields are only ever added to it:
  quilt, quilt_number    name and number of the quilt, "" and 0 without one
  step                   fabric, press, load, cut or peel; finished; short of
                         fabric; "" without a quilt
  load                   place in the queue from 1, 0 when finished
  loads_done, loads_left, finished
  pieces_asked           = done + left + waiting + short, always
  pieces_done, pieces_left, pieces_waiting (spoiled, to be cut again),
  pieces_short (no fabric for them), pieces_spoiled (ever)
  minutes_left           low, likely, high: eight evenings in ten lie between;
                         is_a_guess until five loads are timed
  mat, mats              the mat in use, and for each mat: name,
                         loads_since_wash (plainly counted), wear_since_wash
                         (heavy loads counted for more), loads_until_due
                         (below 0: overdue), due_after, due_is_her_own,
                         due_is_a_guess, next_load_lifts (low, likely, high:
                         four times in five it lies between), lifted_since_wash,
                         time_for_a_new_mat, washes, refreshes, loads_ever,
                         age_days (-1: unknown), dry_at ("" when dry),
                         width_mm, height_mm
  blade                  metres since its change, changes, next_load_ragged,
                         ragged_since_change, change_it`

func newStatus(w world) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:     "status",
		Short:   "Say where you are: the quilt, the load, the mats",
		Long:    statusLong,
		Example: "  matside status\n  matside status --json",
		Args:    noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			status := latestStatus(&state)
			if !asJSON {
				return writeStatus(w.out, &state, status)
			}
			return writeJSON(w.out, status)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	return c
}

// latestQuilt is the quilt that was worked on last, finished or not; nil when
// there is none.
func latestQuilt(s *session.State) *session.Quilt {
	if q := s.Latest(); q != nil {
		return q
	}
	var latest *session.Quilt
	for _, q := range s.Quilts {
		if q.Standing != session.Gone && (latest == nil || !q.Touched.Before(latest.Touched)) {
			latest = q
		}
	}
	return latest
}

func latestStatus(s *session.State) session.Status {
	id := session.QuiltID(0)
	if q := latestQuilt(s); q != nil {
		id = q.ID
	}
	return s.StatusAt(id, time.Now())
}

func writeStatus(w io.Writer, state *session.State, s session.Status) error {
	if s.Quilt == "" {
		fmt.Fprintln(w, "No quilt is under way. `matside cut FILE` starts one, `matside demo` shows how it goes.")
	} else {
		fmt.Fprintln(w, printable(s.Quilt))
		fmt.Fprintf(w, "  %s%s\n", aside(state.Quilt(s.Number)), whereShe(s))
		fmt.Fprintf(w, "  loads   %d done, %d left\n", s.LoadsDone, s.LoadsLeft)
		fmt.Fprintf(w, "  pieces  %d done, %d left, %d spoiled\n", s.PiecesDone, s.PiecesLeft+s.PiecesWaiting, s.PiecesSpoiled)
		if s.PiecesShort > 0 {
			fmt.Fprintf(w, "  short   no fabric for %d\n", s.PiecesShort)
		}
		if s.LoadsLeft > 0 && !s.Finished {
			t := s.TimeLeft
			fmt.Fprintf(w, "  time    %s\n", words.English{}.TimeBetween(minutes(t.Low), minutes(t.High), t.Guess))
		}
	}
	for _, m := range s.Mats {
		fmt.Fprintf(w, "  mat %s  %s\n", printable(m.Name), matWords(sinceWash(m.LoadsSinceWash), m.LoadsUntilDue, m.Lifted))
	}
	return nil
}

func minutes(n int) time.Duration { return time.Duration(n) * time.Minute }

func whereShe(s session.Status) string {
	switch {
	case s.Finished && s.PiecesDone == s.PiecesAsked:
		return "every piece is cut"
	case s.Finished:
		return "finished"
	case s.Load == 0:
		return "every load is cut, but the fabric ran short"
	default:
		return fmt.Sprintf("load %d of %d, step: %s", s.Load, s.LoadsDone+s.LoadsLeft, s.Step)
	}
}

// aside says of a quilt that is set aside that it is.
func aside(q *session.Quilt) string {
	if q.Standing == session.Aside {
		return "set aside; "
	}
	return ""
}

func sinceWash(loads int) string { return count(loads, "load", "loads") + " since its wash" }

// matWords says how a mat stands: since when, and how many loads are left
// before the next wash.
func matWords(since string, left int, lifted bool) string {
	switch {
	case left > 0:
		return fmt.Sprintf("%s, %d more before it is due", since, left)
	case lifted:
		return since + ", and it has lifted: wash it now"
	default:
		return since + ", wash it now"
	}
}

// count writes a number and its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/matside/session"
	"example.org/matside/tui/words"
)

func newShelf(w world) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:     "shelf",
		Aliases: []string{"quilts"},
		Short:   "List the quilts: what is left of each, and how long it takes",
		Long: `List the quilts, those under way first: what is left of each, and how long
it takes. In the commands below QUILT is a name, the beginning of one, or the
number in front of it here.

With --json: {"quilts": [...]}, each with "number", "name", "standing" ("under
way", "set aside", "done"), "loads_left", "pieces_asked", "pieces_done",
"pieces_left", "pieces_waiting", "pieces_short", "pieces_spoiled",
"minutes_left" as in matside status --json, and "touched", the time of its
last entry.`,
		Example: "  matside shelf\n  matside shelf aside harbour\n  matside shelf leftovers harbour >> next.cutlist",
		Args:    noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			if asJSON {
				return shelfJSON(w.out, state.Shelf(time.Now()))
			}
			return writeShelf(w.out, state.Shelf(time.Now()))
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	c.AddCommand(
		shelfVerb(w, "finish QUILT", "Call a quilt finished, also before its last load", session.Finish{}),
		shelfVerb(w, "aside QUILT", "Set a quilt aside", session.PutAside{}),
		shelfVerb(w, "take-up QUILT", "Take a quilt up again, a finished one too", session.TakeUp{}),
		newRename(w), newRemove(w), newLeftovers(w),
	)
	return c
}

func writeShelf(w io.Writer, cards []session.Card) error {
	if len(cards) == 0 {
		_, err := fmt.Fprintln(w, "No quilt is on the shelf. `matside cut FILE` starts one, `matside demo` shows how it goes.")
		return err
	}
	for i, c := range cards {
		if i == 0 || c.Standing != cards[i-1].Standing {
			fmt.Fprintln(w, words.Capital(c.Standing.String()))
		}
		if _, err := fmt.Fprintf(w, "  %3d  %s: %s\n", c.ID, printable(c.Name), leftOf(c)); err != nil {
			return err
		}
	}
	return nil
}

// leftOf says what is left of a quilt.
func leftOf(c session.Card) string {
	p := c.Pieces
	missing := p.Asked - p.Done
	switch {
	case missing == 0:
		return fmt.Sprintf("all %s cut", count(p.Asked, "piece", "pieces"))
	case c.Standing == session.Done:
		return fmt.Sprintf("%d of %s cut", p.Done, count(p.Asked, "piece", "pieces"))
	}
	text := fmt.Sprintf("%d of %s and %s left", missing, count(p.Asked, "piece", "pieces"), count(c.LoadsLeft, "load", "loads"))
	if c.LoadsLeft > 0 {
		text += ", " + words.English{}.TimeBetween(c.Left.Low, c.Left.High, c.Left.Guess)
	}
	if p.Short > 0 {
		text += fmt.Sprintf(", no fabric for %d", p.Short)
	}
	return text
}

func shelfJSON(w io.Writer, cards []session.Card) error {
	type quilt struct {
		Number   session.QuiltID `json:"number"`
		Name     string          `json:"name"`
		Standing string          `json:"standing"`
		Loads    int             `json:"loads_left"`
		Asked    int             `json:"pieces_asked"`
		Done     int             `json:"pieces_done"`
		Left     int             `json:"pieces_left"`
		Waiting  int             `json:"pieces_waiting"`
		Short    int             `json:"pieces_short"`
		Spoiled  int             `json:"pieces_spoiled"`
		Minutes  session.Minutes `json:"minutes_left"`
		Touched  string          `json:"touched"`
	}
	list := []quilt{}
	for _, c := range cards {
		p := c.Pieces
		list = append(list, quilt{c.ID, c.Name, c.Standing.String(), c.LoadsLeft, p.Asked, p.Done, p.Left, p.Waiting, p.Short,
			p.Spoiled, c.Minutes(), c.Touched.Format(time.RFC3339)})
	}
	return writeJSON(w, map[string]any{"quilts": list})
}

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

// shelfVerb is a command that does one thing to one quilt, then lists them.
func shelfVerb(w world, use, short string, action session.Action) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: asUsed("shelf "+use, 1, 1),
		RunE: func(c *cobra.Command, args []string) error { return toQuilt(c, w, args[0], action) },
	}
}

// toQuilt does an action to the quilt that is meant, and lists them all.
func toQuilt(c *cobra.Command, w world, meant string, action session.Action) error {
	return withLedger(w, dataFile(c), func(l *session.Ledger) error {
		state := l.State()
		q, err := theQuilt(&state, meant)
		if err != nil {
			return err
		}
		if state, err = l.Do(q.ID, action); err != nil {
			return err
		}
		return writeShelf(w.out, state.Shelf(time.Now()))
	})
}

// asUsed refuses too few or too many words.
func asUsed(use string, least, most int) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) < least || len(args) > most {
			return usagef("write it as `matside %s`", use)
		}
		return nil
	}
}

// theQuilt finds the one quilt that is meant by a number, a name, or the
// beginning of one, in any case.
func theQuilt(s *session.State, meant string) (*session.Quilt, error) {
	var all, found []*session.Quilt
	for _, c := range s.Shelf(time.Time{}) {
		all = append(all, s.Quilt(c.ID))
	}
	for _, fits := range []func(*session.Quilt) bool{
		func(q *session.Quilt) bool { return fmt.Sprint(q.ID) == meant },
		func(q *session.Quilt) bool { return q.Name == meant },
		func(q *session.Quilt) bool { return strings.EqualFold(q.Name, meant) },
		func(q *session.Quilt) bool {
			return strings.HasPrefix(strings.ToLower(q.Name), strings.ToLower(meant))
		},
	} {
		for _, q := range all {
			if fits(q) {
				found = append(found, q)
			}
		}
		if len(found) > 0 {
			break
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return nil, problem{fmt.Sprintf("there is no quilt %s", printable(meant)), "`matside shelf` lists them.", session.ErrNoQuilt}
	}
	var numbers []string
	for _, q := range found {
		numbers = append(numbers, fmt.Sprintf("%d is %s, %s, begun %s", q.ID, printable(q.Name), q.Standing, q.Started.Format("January 2, 3:04 pm")))
	}
	slices.Sort(numbers)
	return nil, problem{fmt.Sprintf("%s could be %d quilts", printable(meant), len(found)), "Say which by its number: " + strings.Join(numbers, "; ") + ".", nil}
}

func newRename(w world) *cobra.Command {
	return &cobra.Command{
		Use: "rename QUILT NAME", Short: "Give a quilt another name", Args: asUsed("shelf rename QUILT NAME", 2, 2),
		RunE: func(c *cobra.Command, args []string) error {
			return toQuilt(c, w, args[0], session.Rename{Name: args[1]})
		},
	}
}

func newRemove(w world) *cobra.Command {
	var yes bool
	c := &cobra.Command{
		Use: "remove QUILT", Short: "Take a quilt off the shelf for good; asks, and makes a backup first",
		Long: `Take a quilt off the shelf for good. It asks first, and keeps a backup of
everything beside the data file: matside restore brings it back. What was cut
still counts for the mats and the blade.`,
		Args: asUsed("shelf remove QUILT", 1, 1),
		RunE: func(c *cobra.Command, args []string) error {
			return withLedger(w, dataFile(c), func(l *session.Ledger) error {
				state := l.State()
				q, err := theQuilt(&state, args[0])
				if err != nil {
					return err
				}
				if sure, err := sureOf(w, q, yes); err != nil || !sure {
					return err
				}
				said := len(l.Notes())
				if state, err = l.Do(q.ID, session.Remove{}); err != nil {
					return err
				}
				for _, note := range l.Notes()[said:] {
					fmt.Fprintln(w.out, printable(note.String()))
				}
				return writeShelf(w.out, state.Shelf(time.Now()))
			})
		},
	}
	c.Flags().BoolVar(&yes, "yes", false, "don't ask")
	return c
}

// sureOf asks whether a quilt is really to go. Where nobody can answer it
// wants --yes.
func sureOf(w world, q *session.Quilt, yes bool) (bool, error) {
	if yes {
		return true, nil
	}
	if !w.terminal() {
		return false, usagef("there is no terminal to ask at; `--yes` removes %s without asking", printable(q.Name))
	}
	fmt.Fprintf(w.out, "Remove %s, with %d of %s cut? A backup is made first. Type yes: ", printable(q.Name), q.Pieces.Done, count(q.Pieces.Asked, "piece", "pieces"))
	answer, err := bufio.NewReader(w.in).ReadString('\n')
	if err != nil && err != io.EOF {
		return false, err
	}
	if !strings.EqualFold(strings.TrimSpace(answer), "yes") {
		fmt.Fprintln(w.out, "Nothing was changed.")
		return false, nil
	}
	return true, nil
}

func newLeftovers(w world) *cobra.Command {
	return &cobra.Command{
		Use: "leftovers [QUILT]", Short: "Write what a quilt leaves of its fabric as lines for the next cut list",
		Long: `Write what a quilt leaves of its fabric as lines for the next cut list: of a
finished one what is there, of one under way what will be. Without QUILT it is
the one worked on last. Measure before you rely on it: what went to other
uses matside can't know.`,
		Example: "  matside shelf leftovers >> next.cutlist",
		Args:    asUsed("shelf leftovers [QUILT]", 0, 1),
		RunE: func(c *cobra.Command, args []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			q := latestQuilt(&state)
			if len(args) == 1 {
				if q, err = theQuilt(&state, args[0]); err != nil {
					return err
				}
			}
			if q == nil {
				return problem{"no quilt has been cut yet", "`matside cut FILE` starts one.", session.ErrNoQuilt}
			}
			text := q.LeftoverText()
			if text == "" {
				fmt.Fprintf(w.err, "matside: nothing worth keeping is left of %s\n", printable(q.Name))
				return nil
			}
			_, err = io.WriteString(w.out, text)
			return err
		},
	}
}

package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/session"
	"example.org/matside/tui/words"
)

func newMats(w world) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "mats",
		Short: "List the mats and the blade; note a wash, adhesive, a new mat",
		Long: `List the mats: loads since the wash, what they count as by wear (a load that
covers more of the mat, or fabric that sheds, counts for more), when a wash is
due and why, and the chance that the next load lifts. Where a command below
takes MAT, leaving it out means the mat in use.

With --json: {"mats": [...], "blade": {...}} as in matside status --json.`,
		Example: "  matside mats\n  matside mats wash One\n  matside mats due One 6\n  matside mats add Two --size \"12 x 24\"",
		Args:    noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			if asJSON {
				s := state.StatusAt(0, time.Now())
				return writeJSON(w.out, map[string]any{"mats": s.Mats, "blade": s.Blade})
			}
			return writeMats(w.out, &state)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print them as JSON")
	refresh := matVerb(w, "refresh [MAT]", "Note temporary adhesive on an old mat", 0, func(mat string, _ []string) (session.Action, error) {
		return session.Refresh{Mat: mat}, nil
	})
	refresh.Long = refresh.Short + ".\n" + wrapped(words.English{}.AdhesiveCare())
	c.AddCommand(
		newAddMat(w), newTurns(w),
		matVerb(w, "wash [MAT]", "Note that a mat was washed", 0, func(mat string, _ []string) (session.Action, error) {
			return session.Wash{Mat: mat}, nil
		}),
		refresh,
		matVerb(w, "due MAT LOADS|learned", "Set after how many loads a wash is due; learned leaves it to matside", 2, dueAction),
		matVerb(w, "rename MAT NAME", "Give a mat another name", 2, func(mat string, more []string) (session.Action, error) {
			return session.RenameMat{Mat: mat, To: more[0]}, nil
		}),
		matVerb(w, "retire MAT", "Take a mat that is thrown away off the list", 1, func(mat string, _ []string) (session.Action, error) {
			return session.RetireMat{Mat: mat}, nil
		}),
		matVerb(w, "take-back [MAT]", "Take back a mat's last wash, adhesive or due number", 0, func(mat string, _ []string) (session.Action, error) {
			return session.TakeBackMat{Mat: mat}, nil
		}),
	)
	return c
}

func dueAction(mat string, more []string) (session.Action, error) {
	if strings.EqualFold(more[0], "learned") {
		return session.SetDue{Mat: mat}, nil
	}
	n, err := strconv.Atoi(more[0])
	if err != nil || n < 1 || n > 999 {
		return nil, usagef("%q is no number of loads; write one from 1 to 999, or `learned`", printable(more[0]))
	}
	return session.SetDue{Mat: mat, Loads: n}, nil
}

// matVerb is a command that does one thing to one mat, then lists the mats.
// least is how many words it needs; with none the mat may be left out.
func matVerb(w world, use, short string, least int, act func(mat string, more []string) (session.Action, error)) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short, Args: asUsed("mats "+use, least, max(least, 1)),
		RunE: func(c *cobra.Command, args []string) error {
			mat := ""
			if len(args) > 0 {
				mat, args = args[0], args[1:]
			}
			action, err := act(mat, args)
			if err != nil {
				return err
			}
			return toMat(c, w, action)
		},
	}
}

// toMat does an action to a mat or the blade, says the caution that goes with
// it, and lists them.
func toMat(c *cobra.Command, w world, action session.Action) error {
	return withLedger(w, dataFile(c), func(l *session.Ledger) error {
		state, err := l.Do(0, action)
		if err != nil {
			return err
		}
		if err := writeMats(w.out, &state); err != nil {
			return err
		}
		said := words.English{}
		switch action.(type) {
		case session.Refresh:
			_, err = fmt.Fprintln(w.out, wrapped(said.Caution(said.AdhesiveCare())))
		case session.ChangeBlade:
			_, err = fmt.Fprintln(w.out, wrapped(said.Caution(said.ChangeBladeCare())))
		}
		return err
	})
}

func newAddMat(w world) *cobra.Command {
	var size string
	var loads int
	c := &cobra.Command{
		Use: "add NAME", Short: "Add a mat", Args: asUsed("mats add NAME", 1, 1),
		Example: "  matside mats add Two\n  matside mats add Old --loads 5 --size \"12 x 24\"",
		RunE: func(c *cobra.Command, args []string) error {
			s, err := matSize(size)
			if err != nil {
				return err
			}
			return toMat(c, w, session.AddMat{Mat: args[0], Size: s, Loads: loads})
		},
	}
	c.Flags().StringVar(&size, "size", "12 x 12", "how wide and high it is, in inches unless it says cm or mm")
	c.Flags().IntVar(&loads, "loads", 0, "loads since its last wash, for a mat that isn't new")
	return c
}

// matSize reads "12 x 24" or "30 cm x 60 cm".
func matSize(text string) (cutlist.Mat, error) {
	across, along, ok := strings.Cut(strings.NewReplacer("X", "x", "×", "x", "by", "x").Replace(text), "x")
	width, err1 := length.Parse(strings.TrimSpace(across), length.In)
	height, err2 := length.Parse(strings.TrimSpace(along), length.In)
	if !ok || err1 != nil || err2 != nil || width <= 0 || height <= 0 {
		return cutlist.Mat{}, usagef("%q is no size of a mat; write it as \"12 x 24\"", printable(text))
	}
	return cutlist.Mat{Width: width, Height: height}, nil
}

func newBlade(w world) *cobra.Command {
	c := &cobra.Command{
		Use: "blade", Short: "Say how far the blade has cut; note a new one with `blade change`", Args: noWords,
		Long: `Say how far the blade has cut since it was changed, and the chance of a ragged
edge. When to change it is for its maker's instructions to say first.`,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			return writeBlade(w.out, &state)
		},
	}
	c.AddCommand(&cobra.Command{
		Use: "change", Short: "Note that a new blade is in", Args: noWords,
		Long: "Note that a new blade is in.\n" + wrapped(words.English{}.ChangeBladeCare()),
		RunE: func(c *cobra.Command, _ []string) error { return toMat(c, w, session.ChangeBlade{}) },
	})
	return c
}

func writeMats(w io.Writer, s *session.State) error {
	now := time.Now()
	for _, m := range s.MatsThere() {
		writeMat(w, s, &m, now)
	}
	return writeBlade(w, s)
}

func writeMat(w io.Writer, s *session.State, m *session.Mat, now time.Time) {
	a, said := s.Advise(m.Name), words.English{}
	width, height := m.Size()
	unit := unitOf(s)
	fmt.Fprintf(w, "mat %s, %s x %s%s\n", printable(m.Name), width.Format(unit), height.FormatUnit(unit), inUse(m.Came, now))
	fmt.Fprintf(w, "  %s\n", matWords(fmt.Sprintf("%s (%.1f by wear)", sinceWash(m.Since), a.Age), a.Left, a.Lifted))
	fmt.Fprintf(w, "  %s\n", whyDue(&a))
	fmt.Fprintf(w, "  %s\n", said.MayLift(a.Next.Low, a.Next.Mid, a.Next.High))
	fmt.Fprintf(w, "  %s, %s, %s in all\n", count(m.Washes, "wash", "washes"), adhesive(m.Refreshes), count(m.Loads, "load", "loads"))
	if a.NewMat {
		fmt.Fprintf(w, "  %s\n", said.NewMatTime())
	}
	if now.Before(m.DryAt) {
		fmt.Fprintf(w, "  %s\n", words.Capital(said.Drying(said.Clock(m.DryAt))))
	}
}

// inUse says for how long a mat is known to be in use.
func inUse(since, now time.Time) string {
	switch days := int(now.Sub(since) / (24 * time.Hour)); {
	case since.IsZero():
		return ""
	case days == 0:
		return ", in use since today"
	default:
		return ", in use for " + count(days, "day", "days")
	}
}

// unitOf is the unit of the quilt worked on last; inches without one.
func unitOf(s *session.State) length.Unit {
	if q := latestQuilt(s); q != nil {
		return q.Unit
	}
	return length.In
}

func adhesive(n int) string {
	if n == 0 {
		return "no adhesive"
	}
	return "adhesive " + times(n)
}

// whyDue says when a wash is due, and how that is known.
func whyDue(a *session.MatAdvice) string {
	due := "A wash is due after " + count(a.After, "load", "loads") + ", "
	switch {
	case a.Own:
		return due + "as you set it"
	case a.Guess:
		return due + words.English{}.WhyGuess(a.Lifts, session.KnownLifts)
	}
	return due + fmt.Sprintf("from %s of yours: it costs least, at %.0f min for a wash and %.0f for a load done again",
		count(a.Lifts, "lift", "lifts"), a.WashCosts.Minutes(), a.LiftCosts.Minutes())
}

func writeBlade(w io.Writer, s *session.State) error {
	a, said := s.AdviseBlade(), words.English{}
	guess := ""
	if a.Guess {
		guess = " A guess: too few ragged edges are noted."
	}
	since := ", not changed yet"
	if n := s.Blade.Changes; n > 0 {
		since = " since it was changed, changed " + times(n)
	}
	_, err := fmt.Fprintf(w, "blade: %s cut%s\n  %s%s\n", said.Long(a.Length, unitOf(s)), since,
		said.MayFray(a.Next.Low, a.Next.Mid, a.Next.High), guess)
	if err != nil || !a.Change {
		return err
	}
	why := ""
	if a.Ragged {
		why = "An edge was ragged since. "
	}
	_, err = fmt.Fprintf(w, "  %s%s\n", why, said.ChangeBladeTime())
	return err
}

func times(n int) string { return count(n, "time", "times") }

// wrapped breaks a sentence into lines of 80 columns at most.
func wrapped(s string) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && len(line)+1+len(word) > 80 {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return strings.Join(append(lines, line), "\n")
}

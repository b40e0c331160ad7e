package main

import (
	"fmt"
	"io"
	"strconv"

	"github.com/spf13/cobra"

	"example.org/matside/session"
)

func newMats(w world) *cobra.Command {
	c := &cobra.Command{
		Use:     "mats",
		Short:   "List the mats; add, wash, or set when one is due",
		Example: "  matside mats\n  matside mats add Two\n  matside mats wash Two\n  matside mats due Two 6",
		Args:    noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := readState(w, dataFile(c))
			if err != nil {
				return err
			}
			return writeMats(w.out, &state)
		},
	}
	c.AddCommand(
		matVerb(w, "add NAME", "Add a mat", 1, func(args []string) (session.Action, error) {
			return session.AddMat{Mat: args[0]}, nil
		}),
		matVerb(w, "wash NAME", "Note that a mat was washed", 1, func(args []string) (session.Action, error) {
			return session.Wash{Mat: args[0]}, nil
		}),
		matVerb(w, "due NAME LOADS", "Set after how many loads a mat is due; 0 leaves it to matside", 2, func(args []string) (session.Action, error) {
			n, err := strconv.Atoi(args[1])
			if err != nil || n < 0 || n > 999 {
				return nil, usagef("%q is no number of loads; write one from 0 to 999", printable(args[1]))
			}
			return session.SetDue{Mat: args[0], Loads: n}, nil
		}),
	)
	return c
}

// matVerb is a command that does one thing to one mat, then lists the mats.
func matVerb(w world, use, short string, words int, act func(args []string) (session.Action, error)) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) != words {
				return usagef("write it as `matside mats %s`", use)
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			action, err := act(args)
			if err != nil {
				return err
			}
			return withLedger(w, dataFile(c), func(l *session.Ledger) error {
				state, err := l.Do(0, action)
				if err != nil {
					return err
				}
				return writeMats(w.out, &state)
			})
		},
	}
}

func writeMats(w io.Writer, s *session.State) error {
	for _, m := range s.Status(0).Mats {
		guess := ""
		if m.Guess {
			guess = " (a guess: too little is known yet)"
		}
		fmt.Fprintf(w, "mat %s: %s%s, washed %s\n", printable(m.Name), matWords(m), guess, times(m.Washes))
	}
	return nil
}

func times(n int) string {
	if n == 1 {
		return "1 time"
	}
	return fmt.Sprintf("%d times", n)
}

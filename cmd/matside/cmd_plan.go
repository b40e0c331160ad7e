package main

import (
	"errors"
	"io"

	"github.com/spf13/cobra"

	"example.org/matside/plan/queue"
	"example.org/matside/plan/report"
	"example.org/matside/plan/report/schema"
)

func newPlan(w world) *cobra.Command {
	var asJSON, asSchema, trade bool
	var how planning
	c := &cobra.Command{
		Use:   "plan FILE",
		Short: "Plan the mat loads of a cut list and print them",
		Long: "Plan the mat loads of a cut list and print them: the fewest loads that are found,\n" +
			"then the least fabric. Interrupted, it prints the best plan it has.",
		Example: "  matside plan throw.cutlist\n  matside plan throw.cutlist --json\n" +
			"  matside plan throw.cutlist --trade\n  matside plan throw.cutlist --loads 15",
		Args: func(c *cobra.Command, args []string) error {
			if asSchema {
				return noWords(c, args)
			}
			return oneFile(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error {
			if asSchema {
				return send(w, schema.Plan)
			}
			s, err := readSource(w, args[0])
			if err != nil {
				return err
			}
			if !trade {
				return how.print(c.Context(), w, s, textOrJSON(asJSON))
			}
			if how.loads > 0 {
				return usagef("--trade shows all numbers of loads, --loads takes one: give one of them")
			}
			front, err := how.front(c.Context(), w, s, true)
			if len(front) == 0 {
				return err
			}
			if asJSON {
				return errors.Join(report.TradeJSON(w.out, front), err)
			}
			return errors.Join(report.Trade(w.out, front), err)
		},
	}
	how.options(c)
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	c.Flags().BoolVar(&asSchema, "schema", false, "print the JSON Schema (2020-12) of what --json prints")
	c.Flags().BoolVar(&trade, "trade", false, "print how many loads take how much fabric, instead of a plan")
	return c
}

// writer writes one plan in some form.
type writer func(out io.Writer, q *queue.Queue) error

func textOrJSON(asJSON bool) writer {
	if asJSON {
		return report.JSON
	}
	return report.Text
}

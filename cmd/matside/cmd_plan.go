package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/matside/plan"
	"example.org/matside/plan/check"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/report"
)

func newPlan(w world) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:     "plan FILE",
		Short:   "Plan the mat loads of a cut list and print them",
		Example: "  matside plan throw.cutlist\n  matside plan throw.cutlist --json",
		Args:    oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			s, err := readSource(w, args[0])
			if err != nil {
				return err
			}
			q, err := checkedPlan(s, plan.Options{})
			if err != nil {
				return err
			}
			if asJSON {
				return report.JSON(w.out, q)
			}
			return report.Text(w.out, q)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the plan as JSON")
	return c
}

// checkedPlan plans and has the plan checked: what the check finds is our own
// mistake, and nothing that it finds fault with is printed or cut.
func checkedPlan(s source, opt plan.Options) (*queue.Queue, error) {
	q := plan.Make(s.list, opt)
	faults := check.Check(q)
	if len(faults) == 0 {
		return q, nil
	}
	var told []string
	for _, f := range faults[:min(len(faults), 5)] {
		told = append(told, "  "+f.String())
	}
	return nil, problem{
		what: fmt.Sprintf("the plan of %s did not pass its check; this is a fault of matside's\n%s", printable(s.name), strings.Join(told, "\n")),
		hint: "Nothing was changed. Please keep the cut list and report it.",
	}
}

package main

import (
	"github.com/spf13/cobra"

	"example.org/matside/plan/report"
)

func newFabric(w world) *cobra.Command {
	var how planning
	c := &cobra.Command{
		Use:   "fabric FILE",
		Short: "Say how much of each fabric to buy, and how to cut it at the table",
		Long: "Say for each fabric of a cut list how much to buy, in eighths of a yard or 10 cm, and in\n" +
			"which order to cut it at the table: strips across, then pieces of strips, each labelled\n" +
			"with its load. What is cut by hand is among them.",
		Example: "  matside fabric throw.cutlist\n  matside fabric throw.cutlist --loads 15",
		Args:    oneFile,
		RunE: func(c *cobra.Command, args []string) error {
			s, err := readSource(w, args[0])
			if err != nil {
				return err
			}
			return how.print(c.Context(), w, s, report.Fabric)
		},
	}
	how.options(c)
	return c
}

package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"example.org/matside/plan/cutlist"
	"example.org/matside/testdata/cutlists"
)

func newExamples(w world) *cobra.Command {
	var out output
	c := &cobra.Command{
		Use:   "examples [NAME]",
		Short: "List six invented quilts, or write their cut lists",
		Long: "List the cut lists of six invented quilts, in inches and in centimeters. With NAME it\n" +
			"writes one of them, with -o alone all of them. They are yours to change.",
		Example: "  matside examples\n  matside examples first-nine-patch\n  matside examples -o quilts",
		Args:    upToOne,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return exampleNames(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) == 1:
				return writeExample(w, args[0], out)
			case out.to == "-":
				return usagef("six cut lists don't go to standard output: name one, or a folder")
			case out.to != "":
				return writeExamples(w, out)
			}
			return listExamples(w)
		},
	}
	out.options(c, "the `FOLDER` for the cut lists, or a file for one")
	return c
}

// upToOne takes one word or none.
func upToOne(c *cobra.Command, args []string) error {
	if len(args) > 1 {
		return usagef("`matside %s` takes one name, not %d", c.Name(), len(args))
	}
	return nil
}

func exampleNames() []string {
	names := make([]string, len(cutlists.Examples))
	for i, name := range cutlists.Examples {
		names[i] = strings.TrimSuffix(name, ".cutlist")
	}
	return names
}

// listExamples writes a line for each example: its name, and what its first
// comment says of it.
func listExamples(w world) error {
	table := tabwriter.NewWriter(w.out, 0, 0, 2, ' ', 0)
	for i, name := range exampleNames() {
		text := cutlists.Read(cutlists.Examples[i])
		list, err := cutlist.Read(name, text, nil)
		if err != nil {
			return err
		}
		about, _, _ := bytes.Cut(bytes.TrimPrefix(text, []byte("# ")), []byte("\n"))
		fmt.Fprintf(table, "%s\t%d pieces\t%s\n", name, asked(list), about)
	}
	if err := table.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintf(w.out, "\nmatside examples -o quilts    writes all of them into the folder quilts\n")
	return err
}

// asked counts the pieces that go on the mat.
func asked(list *cutlist.List) int {
	n := 0
	for _, line := range list.Lines {
		if line.Kind == cutlist.OnMat {
			n += line.Count
		}
	}
	return n
}

func writeExample(w world, name string, out output) error {
	name = strings.TrimSuffix(name, ".cutlist")
	at := slices.Index(exampleNames(), name)
	if at < 0 {
		return usagef("there is no example %q; there are %s", printable(name), strings.Join(exampleNames(), ", "))
	}
	text := cutlists.Read(cutlists.Examples[at])
	if out.to == "" || out.to == "-" {
		return send(w, text)
	}
	files := []file{{out.to, text}}
	if err := out.write(w, files); err != nil {
		return err
	}
	tellWritten(w, files, filepath.Dir(out.to))
	return nil
}

func writeExamples(w world, out output) error {
	undo, err := out.folder()
	if err != nil {
		return err
	}
	var files []file
	for _, name := range cutlists.Examples {
		files = append(files, file{filepath.Join(out.to, name), cutlists.Read(name)})
	}
	if err := out.write(w, files); err != nil {
		undo()
		return err
	}
	tellWritten(w, files, out.to)
	return nil
}

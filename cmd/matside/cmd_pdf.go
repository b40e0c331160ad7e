package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/paper"
)

// sheets is what `matside pdf` was asked for.
type sheets struct {
	how       planning
	out       output
	paper     string
	small     bool
	templates []string
}

var papers = map[string]paper.Size{"letter": paper.Letter, "a4": paper.A4}

func newPDF(w world) *cobra.Command {
	var s sheets
	c := &cobra.Command{
		Use:   "pdf FILE",
		Short: "Print the plan on paper: what to buy, cuts at the table, mats, labels, templates",
		Long: "Print the plan on paper, for the table and the folder: what to buy, the cuts at the table\n" +
			"with a drawing of each panel, each load's mat, labels for the stacks to cut apart, and\n" +
			"true-size templates where asked for. In large print, and in black and white.\n\n" +
			"Print at actual size, and measure a template's two squares before you cut by it.",
		Example: "  matside pdf throw.cutlist -o throw.pdf\n  matside pdf throw.cutlist -o throw.pdf --paper a4 --small\n" +
			"  matside pdf throw.cutlist -o templates.pdf --template A --template C",
		Args: oneFile,
		RunE: func(c *cobra.Command, args []string) error { return s.run(c.Context(), w, args[0]) },
	}
	s.how.options(c)
	s.out.options(c, "the `FILE` to write; - is standard output")
	c.Flags().StringVar(&s.paper, "paper", "letter", "the paper's `SIZE`: letter or a4")
	c.Flags().BoolVar(&s.small, "small", false, "small print")
	c.Flags().StringArrayVar(&s.templates, "template", nil, "a template of the pieces with this `LABEL` or letter; all is of every piece cut on the mat")
	return c
}

func (s *sheets) run(ctx context.Context, w world, name string) error {
	size, ok := papers[strings.ToLower(s.paper)]
	switch {
	case s.out.to == "":
		return usagef("`matside pdf` needs a place for the file: -o FILE.pdf, or -o - for standard output")
	case !ok:
		return usagef("there is no paper %q here: write --paper letter or --paper a4", printable(s.paper))
	}
	src, err := readSource(w, name)
	if err != nil {
		return err
	}
	templates, err := templatesOf(src.list, s.templates)
	if err != nil {
		return err
	}
	q, err := s.how.whole(ctx, w, src)
	if err != nil {
		return err
	}
	opt := paper.Options{Size: size, Small: s.small, Templates: templates}
	f, err := made(s.out.to, func(to io.Writer) error { return paper.Write(to, q, opt) })
	if err != nil {
		return err
	}
	if s.out.to == "-" {
		return send(w, f.text)
	}
	if err := s.out.write(w, []file{f}); err != nil {
		return err
	}
	tellWritten(w, []file{f}, "")
	return nil
}

// templatesOf finds the lines that are asked for, by label or letter.
func templatesOf(list *cutlist.List, wanted []string) (lines []int, err error) {
	letters := list.Letters()
	for _, name := range wanted {
		found := false
		for i := range list.Lines {
			l := &list.Lines[i]
			named := name == "all" && l.Kind == cutlist.OnMat || name == l.Label || name == string(letters[i])
			if !named || l.Outline == nil {
				continue
			}
			found = true
			if !slices.Contains(lines, i) {
				lines = append(lines, i)
			}
		}
		if !found {
			return nil, noTemplate(list, letters, name)
		}
	}
	slices.Sort(lines)
	return lines, nil
}

func noTemplate(list *cutlist.List, letters []rune, name string) error {
	var known []string
	for i, l := range list.Lines {
		if l.Outline != nil {
			known = append(known, string(letters[i]))
		}
	}
	return problem{
		what: fmt.Sprintf("no piece is called %q", printable(name)),
		hint: "Its pieces are " + strings.Join(known, ", ") + "; all prints every one. Nothing was written.",
	}
}

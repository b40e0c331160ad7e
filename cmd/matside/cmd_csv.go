package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/matside/plan/length"
	"example.org/matside/plan/sheet"
)

// tables is what `matside csv` was asked for.
type tables struct {
	how     planning
	out     output
	of      string
	in      string
	columns map[string]string
	quilt   string
	units   string
}

// The tables there are.
const (
	ofLoads   = "loads"
	ofPieces  = "pieces"
	ofFabric  = "fabric"
	ofHistory = "history"
)

func newCSV(w world) *cobra.Command {
	var t tables
	c := &cobra.Command{
		Use:   "csv [FILE] --of TABLE",
		Short: "Write a table for a spreadsheet, or make a cut list of one",
		Long: "Write a plan or what is cut as a table for a spreadsheet: loads (each rough cut of each load),\n" +
			"pieces (the cut list's lines), fabric (each panel, and what to buy), or history (each load\n" +
			"that was cut; it takes no FILE). Cells that a spreadsheet would run as formulas have an\n" +
			"apostrophe before them; dates are ISO 8601.\n\n" +
			"With --in it makes a cut list of a spreadsheet's CSV. The first row has the headings:\n" +
			"  " + strings.Join(sheet.ColumnNames(), ", ") + "\n" +
			"in any order and under many names; what is under other names is told by --columns. A\n" +
			"unit stands in the heading, Size (cm), in the cell, or in a column of its own. Without a\n" +
			"shape a row is squares or rectangles.",
		Example: "  matside csv throw.cutlist --of loads -o loads.csv\n  matside csv --of history > history.csv\n" +
			"  matside csv --in table.csv -o throw.cutlist\n  matside csv --in table.csv --columns count=Needed,size=Cut",
		Args: func(c *cobra.Command, args []string) error { return t.check(c, args) },
		RunE: func(c *cobra.Command, args []string) error {
			switch {
			case t.in != "":
				return t.take(w)
			case t.of == ofHistory:
				return t.history(w, dataFile(c))
			}
			return t.give(c.Context(), w, args[0])
		},
	}
	t.how.options(c)
	t.out.options(c, "the `FILE` to write instead of standard output")
	c.Flags().StringVar(&t.of, "of", "", "the `TABLE`: loads, pieces, fabric or history")
	c.Flags().StringVar(&t.in, "in", "", "make a cut list of this `FILE.csv`; - reads standard input")
	c.Flags().StringToStringVar(&t.columns, "columns", nil, "with --in: where a column is, by `NAME=HEADING` or its number")
	c.Flags().StringVar(&t.quilt, "quilt", "", "with --in: what is being made (else the file's name)")
	c.Flags().StringVar(&t.units, "units", "in", "with --in: the unit of sizes that have none: in, cm or mm")
	return c
}

// check looks whether the words and options go together.
func (t *tables) check(c *cobra.Command, args []string) error {
	switch {
	case t.in != "" && t.of != "":
		return usagef("--of writes a table, --in reads one: give one of them")
	case t.in != "":
		for name := range t.columns {
			if !slices.Contains(sheet.ColumnNames(), name) {
				return usagef("there is no column %q; --columns knows %s", printable(name), strings.Join(sheet.ColumnNames(), ", "))
			}
		}
		if _, ok := unitNamed(t.units); !ok {
			return usagef("there is no unit %q: write --units in, cm or mm", printable(t.units))
		}
		return noWords(c, args)
	case !slices.Contains([]string{ofLoads, ofPieces, ofFabric, ofHistory}, t.of):
		return usagef("`matside csv` writes --of loads, pieces, fabric or history, or reads a table --in FILE.csv")
	case t.of == ofHistory:
		return noWords(c, args)
	}
	return oneFile(c, args)
}

func unitNamed(name string) (length.Unit, bool) {
	for _, u := range []length.Unit{length.In, length.Cm, length.Mm} {
		if strings.EqualFold(name, u.String()) {
			return u, true
		}
	}
	return 0, false
}

// give writes a table of a cut list.
func (t *tables) give(ctx context.Context, w world, name string) error {
	s, err := readSource(w, name)
	if err != nil {
		return err
	}
	if t.of == ofPieces {
		return t.write(w, sheet.Pieces(string(s.text), s.list))
	}
	q, err := t.how.whole(ctx, w, s)
	if err != nil {
		return err
	}
	if t.of == ofFabric {
		return t.write(w, sheet.Fabric(q))
	}
	return t.write(w, sheet.Loads(q))
}

func (t *tables) history(w world, db string) error {
	state, err := readState(w, db)
	if err != nil {
		return err
	}
	return t.write(w, historyOf(&state))
}

func (t *tables) write(w world, table sheet.Table) error {
	var b bytes.Buffer
	if err := table.CSV(&b); err != nil {
		return err
	}
	return t.keep(w, b.Bytes())
}

// keep writes to the file named, else to standard output.
func (t *tables) keep(w world, text []byte) error {
	if t.out.to == "" || t.out.to == "-" {
		return send(w, text)
	}
	files := []file{{t.out.to, text}}
	if err := t.out.write(w, files); err != nil {
		return err
	}
	tellWritten(w, files, "")
	return nil
}

// take makes a cut list of a table.
func (t *tables) take(w world) error {
	var text []byte
	var err error
	if t.in == "-" {
		text, err = io.ReadAll(io.LimitReader(w.in, sheet.MaxSize+1))
	} else {
		text, err = readFile(t.in)
	}
	if err != nil {
		return err
	}
	unit, _ := unitNamed(t.units)
	list, err := sheet.CutList(text, sheet.Options{Quilt: t.name(), Unit: unit, Columns: t.columns})
	var rows sheet.Problems
	switch {
	case errors.As(err, &rows):
		told := strings.Split(rows.Error(), "\n")
		return problem{
			what: fmt.Sprintf("%s can't be made a cut list\n  %s", printable(t.in), strings.Join(told, "\n  ")),
			hint: "Nothing was written.", cause: err,
		}
	case errors.Is(err, sheet.ErrTable):
		return problem{fmt.Sprintf("%s: %v", printable(t.in), err), "Nothing was written.", err}
	case err != nil:
		return problem{fmt.Sprintf("%s: %s", printable(t.in), printable(err.Error())),
			"Head a column so, or say which it is: --columns count=HEADING,size=HEADING,fabric=HEADING. Nothing was written.", err}
	}
	return t.keep(w, []byte(list))
}

// name is what the quilt is called: as she says, else as the file is.
func (t *tables) name() string {
	name := t.quilt
	if name == "" && t.in != "-" {
		name = strings.TrimSuffix(filepath.Base(t.in), filepath.Ext(t.in))
	}
	if name = strings.TrimSpace(strings.ReplaceAll(printable(name), `"`, "'")); name == "" {
		return "Quilt"
	}
	return name
}

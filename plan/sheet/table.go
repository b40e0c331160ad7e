package sheet

import (
	"bytes"
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"example.org/matside/plan/length"
)

// Table is a heading and rows as long as it.
type Table struct {
	Columns []string
	Rows    [][]string
}

// CSV writes the table, its cells harmless.
func (t Table) CSV(w io.Writer) error {
	var b bytes.Buffer
	c := csv.NewWriter(&b)
	c.UseCRLF = true
	for _, row := range append([][]string{t.Columns}, t.Rows...) {
		safe := make([]string, len(row))
		for i, cell := range row {
			safe[i] = Harmless(cell)
		}
		if err := c.Write(safe); err != nil {
			return err
		}
	}
	c.Flush()
	if err := c.Error(); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// starts are the characters that make a spreadsheet run a cell.
const starts = "=+-@\t\r\n＝＋－＠"

// Harmless is a cell that no spreadsheet runs as a formula: where it would, an
// apostrophe stands before it.
//
// (1) Meant(Harmless(s)) = s.
func Harmless(s string) string {
	if runs(s) {
		return "'" + s
	}
	return s
}

// Meant is what a harmless cell stood for.
func Meant(s string) string {
	if strings.HasPrefix(s, "'") && runs(s[1:]) {
		return s[1:]
	}
	return s
}

// runs says whether s, or s less the apostrophes before it, would be run; with
// them, so that Harmless can be undone.
func runs(s string) bool {
	s = strings.TrimLeft(s, "'")
	return s != "" && strings.ContainsRune(starts, []rune(s)[0])
}

// number is a length in a unit as a plain decimal, as spreadsheets read
// numbers whatever they make of fractions: 1/2 would become a date. What needs
// more than six places is rounded; every 64th of an inch doesn't.
func number(l length.Len, u length.Unit) string {
	s := strconv.FormatFloat(float64(l)/float64(u.Len()), 'f', 6, 64)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

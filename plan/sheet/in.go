package sheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
	"example.org/matside/plan/length"
)

// Options of CutList.
type Options struct {
	Quilt   string            // what is being made
	Unit    length.Unit       // of sizes that have none in their row or heading
	Columns map[string]string // column names to headings, or to numbers from 1
}

// Limits of a table; a cut list has its own as well.
const (
	MaxSize = 1 << 20
	maxRows = 10_000
)

// ErrTable is returned for bytes that are no table: not CSV, not text, empty or
// too long.
var ErrTable = errors.New("this is no table")

// Problem is what is wrong with a row, counted from 1 as spreadsheets count.
type Problem struct {
	Row  int
	What string
}

// Problems are all that is wrong with a table, in the order of its rows.
type Problems []Problem

func (p Problems) Error() string {
	const shown = 20
	var b strings.Builder
	for _, one := range p[:min(shown, len(p))] {
		fmt.Fprintf(&b, "row %d: %s\n", one.Row, one.What)
	}
	if more := len(p) - shown; more > 0 {
		fmt.Fprintf(&b, "and %d more\n", more)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// CutList makes a cut list of a table with a row for each kind of piece. It has
// been read without a mistake. The error is ErrTable, what is wrong with the
// columns, or Problems.
func CutList(table []byte, opt Options) (string, error) {
	rows, err := parse(table)
	if err != nil {
		return "", err
	}
	c, err := find(rows[0].cells, opt.Columns)
	if err != nil {
		return "", err
	}
	w := &list{columns: c, opt: opt}
	w.say("quilt "+edit.Name(opt.Quilt), 1)
	for _, r := range rows[1:] {
		w.row(r)
	}
	if len(w.problems) == 0 && len(w.pieces) == 0 {
		return "", fmt.Errorf("%w: no row below the headings says a piece", ErrTable)
	}
	text, from := w.text()
	if len(w.pieces) > 0 {
		w.problems = append(w.problems, mistakes(text, from)...)
	}
	if len(w.problems) > 0 {
		slices.SortStableFunc(w.problems, func(a, b Problem) int { return a.Row - b.Row })
		return "", w.problems
	}
	return text, nil
}

// mistakes reads the cut list and says what is wrong with it, row by row.
func mistakes(text string, from []int) (all Problems) {
	_, err := cutlist.Read("", []byte(text), nil)
	var found cutlist.Mistakes
	if !errors.As(err, &found) {
		if err != nil {
			all = append(all, Problem{1, err.Error()})
		}
		return all
	}
	for _, m := range found {
		what := fmt.Sprintf("%s (read as `%s`)", m.What, m.Text)
		if !m.Hint.Silent() {
			what += "; " + m.Hint.String()
		}
		all = append(all, Problem{from[min(max(m.Line, 1), len(from))-1], what})
	}
	return all
}

// record is a row and where it stands.
type record struct {
	row   int
	cells []string
}

// parse takes a table apart: commas, semicolons or tabs between its cells.
func parse(table []byte) ([]record, error) {
	table = bytes.TrimPrefix(table, []byte("\ufeff"))
	switch {
	case len(table) > MaxSize:
		return nil, fmt.Errorf("%w: it is longer than 1 MiB", ErrTable)
	case !utf8.Valid(table) || bytes.IndexByte(table, 0) >= 0:
		return nil, fmt.Errorf("%w: it isn't UTF-8 text; save it as CSV in UTF-8", ErrTable)
	}
	r := csv.NewReader(bytes.NewReader(table))
	r.Comma = separator(table)
	r.FieldsPerRecord = -1
	var all []record
	inside := 0 // line ends inside cells so far
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrTable, err)
		}
		line, _ := r.FieldPos(0)
		all = append(all, record{line - inside, cells})
		for i, cell := range cells {
			inside += strings.Count(cell, "\n")
			cells[i] = strings.TrimSpace(Meant(cell))
		}
		if len(all) > maxRows {
			return nil, fmt.Errorf("%w: it has more than %d rows", ErrTable, maxRows)
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("%w: it is empty", ErrTable)
	}
	return all, nil
}

// separator is what stands most often in the first line, outside quotes.
func separator(table []byte) rune {
	counts := map[rune]int{}
	quoted := false
	for _, r := range string(table) {
		if r == '\n' && !quoted {
			break
		}
		if r == '"' {
			quoted = !quoted
		} else if !quoted {
			counts[r]++
		}
	}
	best := ','
	for _, r := range []rune{';', '\t'} {
		if counts[r] > counts[best] {
			best = r
		}
	}
	return best
}

// list is a cut list being written: its statements and the rows they come from.
type list struct {
	columns  columns
	opt      Options
	fabrics  []string
	head     []string
	headFrom []int
	pieces   []string
	from     []int
	unit     string // in force
	fabric   string
	problems Problems
}

func (w *list) say(s string, row int) {
	w.head, w.headFrom = append(w.head, s), append(w.headFrom, row)
}

func (w *list) add(s string, row int) { w.pieces, w.from = append(w.pieces, s), append(w.from, row) }

func (w *list) wrong(row int, format string, a ...any) {
	w.problems = append(w.problems, Problem{row, fmt.Sprintf(format, a...)})
}

// text is all of it, and the row that each line comes from.
func (w *list) text() (string, []int) {
	lines := append(slices.Clone(w.head), w.pieces...)
	return strings.Join(lines, "\n") + "\n", append(slices.Clone(w.headFrom), w.from...)
}

// cell is a column's cell of a row, "" where there is none.
func (w *list) cell(r record, name column) string {
	if at, ok := w.columns.at[name]; ok && at < len(r.cells) {
		return r.cells[at]
	}
	return ""
}

// row writes one row's statement, with the units and the fabric before it where
// they change. An empty row says nothing.
func (w *list) row(r record) {
	if !slices.ContainsFunc(r.cells, func(s string) bool { return s != "" }) {
		return
	}
	for _, h := range headings {
		if bad := unfit(w.cell(r, h.column), h.column); bad != "" {
			w.wrong(r.row, "the %s holds %s", h.column, bad)
			return
		}
	}
	statement, unit, problem := w.statement(r)
	if problem != "" {
		w.wrong(r.row, "%s", problem)
		return
	}
	w.units(unit, r.row)
	if w.isSetting(r) {
		w.add(statement, r.row)
		return
	}
	fabric := w.cell(r, fabricColumn)
	if fabric == "" {
		w.wrong(r.row, "the fabric is missing")
		return
	}
	if !slices.Contains(w.fabrics, fabric) {
		w.fabrics = append(w.fabrics, fabric)
		w.say("fabric "+edit.Name(fabric), r.row)
	}
	if fabric != w.fabric {
		w.fabric = fabric
		w.add("", r.row)
		w.add("cut from "+edit.Name(fabric), r.row)
	}
	w.add(statement, r.row)
}

// units changes the unit in force; the first one stands at the head.
func (w *list) units(unit string, row int) {
	switch {
	case unit == w.unit:
	case w.unit == "":
		w.say("units "+unit, row)
	default:
		w.add("units "+unit, row)
	}
	w.unit = unit
}

// settings are what a row without a count can say for the whole list.
var settings = []string{"seam", "allowance", "gap", "margin", "mat"}

func (w *list) isSetting(r record) bool {
	return w.cell(r, countColumn) == "" && slices.Contains(settings, strings.ToLower(w.cell(r, shapeColumn)))
}

// unfit says what in a cell can't be in a cut list.
func unfit(cell string, name column) string {
	free := name == fabricColumn || name == labelColumn
	for _, r := range cell {
		switch {
		case !unicode.IsPrint(r) && r != '\u00a0':
			return "a line break or another sign that can't be printed"
		case r == '#' && !free:
			return "a #, which would hide what stands behind it"
		case r == '"' && free:
			return "a quotation mark, which a name can't have"
		}
	}
	return ""
}

var (
	whole   = regexp.MustCompile(`^\d{1,6}(\.0*)?$`)
	comma   = regexp.MustCompile(`(\d),(\d)`)
	numbers = regexp.MustCompile(`\d\s*(?:x|X|×|by)\s*[\d½¼¾⅛⅜⅝⅞]`)
	date    = regexp.MustCompile(`(?i)^\d{1,2}[-./ ](?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\w*(?:[-./ ]\d{2,4})?$|^\d{4}-\d{2}-\d{2}|^\d{1,2}/\d{1,2}/\d{2,4}$`)
)

// statement is the piece line that a row says, and the unit it is in.
func (w *list) statement(r record) (line, unit, problem string) {
	shape := strings.ToLower(w.cell(r, shapeColumn))
	count := w.cell(r, countColumn)
	switch {
	case count == "" && (shape == "binding" || w.isSetting(r)):
	case count == "":
		return "", "", "the count is missing"
	case !whole.MatchString(count):
		return "", "", fmt.Sprintf("%q is no count: write a whole number", count)
	default:
		count, _, _ = strings.Cut(count, ".")
	}
	size, unit := w.size(r)
	switch {
	case size == "":
		return "", "", "the size is missing"
	case date.MatchString(size):
		return "", "", fmt.Sprintf("%q is a date: a spreadsheet made it of a fraction; write it as a decimal, 0.5 for 1/2", size)
	case shape == "" && numbers.MatchString(size):
		shape = "rectangle"
	case shape == "":
		shape = "square"
	}
	if unit, problem = w.unitOf(r, unit); problem != "" {
		return "", "", problem
	}
	return w.written(r, count, shape, size), unit, ""
}

// size is a row's size as a cut list says it, and the unit of its heading.
func (w *list) size(r record) (size, unit string) {
	size, unit = w.cell(r, sizeColumn), w.columns.unit[sizeColumn]
	if size == "" {
		size, unit = w.cell(r, widthColumn), w.columns.unit[widthColumn]
		if h := w.cell(r, heightColumn); h != "" && size != "" {
			size += " x " + h
		}
	}
	return comma.ReplaceAllString(size, "$1.$2"), unit
}

// unitOf is the unit of a row: its own, else its heading's, else the option's.
func (w *list) unitOf(r record, heading string) (unit, problem string) {
	said := strings.ToLower(w.cell(r, unitColumn))
	switch said {
	case "in", "inch", "inches":
		return "in", ""
	case "cm", "mm":
		return said, ""
	case "":
		if heading != "" {
			return heading, ""
		}
		return w.opt.Unit.String(), ""
	}
	return "", fmt.Sprintf("no unit is called %q: write in, cm or mm", said)
}

// written puts a statement together and writes it as one types it, where it is
// understood.
func (w *list) written(r record, count, shape, size string) string {
	words := strings.Fields(count + " " + shape + " " + size)
	line := strings.Join(words, " ")
	if strings.HasPrefix(shape, "outline") {
		line = count + " " + shape + " " + edit.Name(size)
	}
	if finished(w.cell(r, finishedColumn)) || w.columns.finished && w.cell(r, sizeColumn) != "" {
		line += " finished"
	}
	if label := w.cell(r, labelColumn); label != "" {
		line += " for " + edit.Name(label)
	}
	if notes := w.cell(r, notesColumn); notes != "" {
		line += ", " + notes
	}
	if p := cutlist.Apart(line); !p.Wrong {
		return edit.Write(p)
	}
	return line
}

func finished(cell string) bool {
	switch strings.ToLower(cell) {
	case "yes", "y", "true", "1", "x", "finished":
		return true
	}
	return false
}

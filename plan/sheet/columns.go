package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// column is one thing a row may say.
type column string

// The columns, by the names that --columns knows.
const (
	countColumn    column = "count"
	shapeColumn    column = "shape"
	sizeColumn     column = "size"
	widthColumn    column = "width"
	heightColumn   column = "height"
	unitColumn     column = "unit"
	finishedColumn column = "finished"
	fabricColumn   column = "fabric"
	labelColumn    column = "label"
	notesColumn    column = "notes"
)

// headings are what a column may be headed, the likeliest first; the first of
// each is its own name.
var headings = []struct {
	column
	names []string
}{
	{countColumn, []string{"count", "quantity", "qty", "how many", "amount", "number of pieces", "pieces", "number", "no"}},
	{shapeColumn, []string{"shape", "patch", "piece"}},
	{sizeColumn, []string{"size", "cut size", "finished size"}},
	{widthColumn, []string{"width", "w"}},
	{heightColumn, []string{"height", "length", "h", "l"}},
	{unitColumn, []string{"unit", "units"}},
	{finishedColumn, []string{"finished", "is finished"}},
	{fabricColumn, []string{"fabric", "cloth", "material", "color", "colour"}},
	{labelColumn, []string{"label", "for", "block", "name"}},
	{notesColumn, []string{"notes", "note", "attributes", "grain"}},
}

// ColumnNames are the names that a column can be given to.
func ColumnNames() (names []string) {
	for _, h := range headings {
		names = append(names, string(h.column))
	}
	return names
}

// columns says where each column is, and in which unit it is headed.
type columns struct {
	at       map[column]int
	unit     map[column]string
	finished bool // the sizes are headed as finished
}

// heading is a heading taken apart: its words in small letters, and the unit in
// brackets behind them.
func heading(s string) (words, unit string) {
	s = strings.ToLower(s)
	if open := strings.LastIndexAny(s, "(["); open >= 0 {
		switch u := strings.Trim(s[open:], "()[] ."); u {
		case "in", "inch", "inches", `"`, "″":
			unit = "in"
		case "cm", "mm":
			unit = u
		}
		if unit != "" {
			s = s[:open]
		}
	}
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '_' || r == '-' || r == '.' || r == ':' || r == '#' }), " "), unit
}

// find matches the headings of a table with the columns; given says which is
// which where she said so: a heading, or a column's number from 1.
func find(found []string, given map[string]string) (columns, error) {
	c := columns{at: map[column]int{}, unit: map[column]string{}}
	for _, h := range headings {
		at := -1
		if name, ok := given[string(h.column)]; ok {
			if at = named(found, name); at < 0 {
				return c, fmt.Errorf("no column is headed %q: %s", name, told(found))
			}
		}
		for i := 0; i < len(h.names) && at < 0; i++ {
			at = slices.IndexFunc(found, func(s string) bool { words, _ := heading(s); return words == h.names[i] })
		}
		if at < 0 {
			continue
		}
		words, unit := heading(found[at])
		c.at[h.column], c.unit[h.column] = at, unit
		c.finished = c.finished || h.column == sizeColumn && strings.Contains(words, "finished")
	}
	return c, c.enough(found)
}

// named finds a heading as she calls it, or a column by its number.
func named(found []string, name string) int {
	want, _ := heading(name)
	for i, f := range found {
		if words, _ := heading(f); strings.EqualFold(strings.TrimSpace(f), strings.TrimSpace(name)) || words == want {
			return i
		}
	}
	if n, err := strconv.Atoi(name); err == nil && n >= 1 && n <= len(found) {
		return n - 1
	}
	return -1
}

// enough says which columns are missing.
func (c columns) enough(found []string) error {
	var missing []string
	has := func(name column) bool { _, ok := c.at[name]; return ok }
	if !has(countColumn) {
		missing = append(missing, "count (how many pieces)")
	}
	if !has(sizeColumn) && !has(widthColumn) {
		missing = append(missing, "size, or width and height")
	}
	if !has(fabricColumn) {
		missing = append(missing, "fabric")
	}
	if len(missing) == 0 && has(heightColumn) && !has(sizeColumn) && c.unit[widthColumn] != c.unit[heightColumn] {
		return fmt.Errorf("width and height are headed in different units: %s", told(found))
	}
	if len(missing) == 0 {
		return nil
	}
	return fmt.Errorf("no column for %s: %s", strings.Join(missing, "; for "), told(found))
}

func told(found []string) string {
	var names []string
	for _, f := range found {
		if f = strings.TrimSpace(f); f != "" {
			names = append(names, fmt.Sprintf("%q", f))
		}
	}
	if len(names) == 0 {
		return "the first row has no headings"
	}
	return "the first row has " + strings.Join(names, ", ")
}

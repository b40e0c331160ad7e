package sheet

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// Loads has a row for each rough cut of each load.
func Loads(q *queue.Queue) Table {
	u := q.List.Unit
	t := Table{Columns: []string{"load", "drawing", "rough cut", "fabric", "panel", in("width", u), in("height", u),
		in("left edge", u), in("top edge", u), "pieces", "stacks", in("cut length of the load", u)}}
	letters := q.List.Letters()
	for _, l := range q.Loads {
		for i, r := range l.RoughCuts {
			pieces, stacks := stacksOf(&l, i, letters)
			t.Rows = append(t.Rows, []string{fmt.Sprint(l.Number), fmt.Sprint(l.Layout), fmt.Sprint(i + 1),
				q.List.Fabrics[r.Fabric].Name, fmt.Sprint(r.Panel), number(r.Width, u), number(r.Height, u),
				number(r.X, u), number(r.Y, u), fmt.Sprint(pieces), stacks, number(l.CutLength, u)})
		}
	}
	return t
}

// in is a heading with its unit: "width (in)".
func in(what string, u length.Unit) string { return fmt.Sprintf("%s (%s)", what, u) }

// stacksOf counts a rough cut's pieces: "8 A, 4 B".
func stacksOf(l *queue.Load, rough int, letters []rune) (pieces int, stacks string) {
	counts := make([]int, len(letters))
	for _, p := range l.Pieces {
		if p.RoughCut == rough {
			counts[p.Line]++
			pieces++
		}
	}
	var parts []string
	for line, n := range counts {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %c", n, letters[line]))
		}
	}
	return pieces, strings.Join(parts, ", ")
}

// Fabric has a row for each panel that is cut into or bought, and for each
// fabric that is too little.
func Fabric(q *queue.Queue) Table {
	u := q.List.Unit
	t := Table{Columns: []string{"fabric", "panel", in("width", u), in("length", u), in("cut into", u), "rough cuts", "by hand",
		in("to buy", u), "pieces missing", in("length missing", u)}}
	for _, s := range q.Stock {
		t.Rows = append(t.Rows, []string{q.List.Fabrics[s.Fabric].Name, fmt.Sprint(s.Panel), number(s.Width, u), number(s.Height, u),
			number(s.Reach(), u), fmt.Sprint(len(s.RoughCuts)), fmt.Sprint(len(s.ByHand)), bought(q, &s), "", ""})
	}
	for _, s := range q.Short {
		pieces := 0
		for _, n := range s.Missing {
			pieces += n
		}
		t.Rows = append(t.Rows, []string{q.List.Fabrics[s.Fabric].Name, "", "", "", "", "", "", "", fmt.Sprint(pieces), number(s.Length, u)})
	}
	return t
}

// bought is how much of a panel is to be bought: it has the length she buys
// before it is washed, so it isn't always the panel's.
func bought(q *queue.Queue, s *queue.PanelUse) string {
	for _, b := range q.Buy {
		if b.Fabric == s.Fabric {
			return number(b.Length, q.List.Unit)
		}
	}
	return ""
}

// The columns of Pieces, which CutList reads back.
var pieceColumns = []string{"count", "shape", "size", "unit", "finished", "fabric", "label", "notes", "called", "line"}

// Pieces has a row for each piece line and each setting of a cut list that reads
// without a mistake, in her own words. A size without a unit is in the row's.
func Pieces(text string, list *cutlist.List) Table {
	t := Table{Columns: pieceColumns}
	letters := list.Letters()
	doc := edit.Of(text)
	unit, fabric, at := length.In.String(), "", 0
	for n := range doc.Len() {
		p := doc.Parts(n)
		switch p.Says {
		case cutlist.SaysUnits:
			unit = unitOf(p.Rest)
		case cutlist.SaysSetting:
			t.Rows = append(t.Rows, []string{"", p.Name, noDate(p.Rest), unit, "", "", "", "", "", fmt.Sprint(n + 1)})
		case cutlist.SaysCutFrom:
			fabric = p.Name
		case cutlist.SaysPiece, cutlist.SaysStrips, cutlist.SaysBinding:
			t.Rows = append(t.Rows, pieceRow(p, unit, fabric, string(letters[at]), n+1))
			at++
		}
	}
	return t
}

func unitOf(word string) string {
	switch strings.ToLower(word) {
	case "cm":
		return "cm"
	case "mm":
		return "mm"
	}
	return "in"
}

func pieceRow(p cutlist.Parts, unit, fabric, letter string, line int) []string {
	shape, size, finished := p.Shape, p.Size, ""
	if p.Says == cutlist.SaysBinding {
		shape = "binding"
	}
	if p.Shape == "outline" {
		size = p.Name
	}
	if p.Degrees != 0 {
		shape += " " + fmt.Sprint(p.Degrees)
	}
	if p.Finished {
		finished = "yes"
	}
	return []string{p.Count, shape, noDate(size), unit, finished, fabric, p.Label, strings.Join(p.Attributes, ", "), letter, fmt.Sprint(line)}
}

var fraction = regexp.MustCompile(`^(?:(\d+)-)?(\d+/\d+)$`)

// noDate is a size that no spreadsheet takes for a day of the year: 1/2 is
// written 0 1/2, and 2-1/2 is written 2 1/2.
func noDate(size string) string {
	m := fraction.FindStringSubmatch(size)
	if m == nil {
		return size
	}
	return cmp.Or(m[1], "0") + " " + m[2]
}

package report

import (
	"fmt"
	"io"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutting"
	"example.org/matside/plan/queue"
)

// Fabric writes what a plan takes of each fabric, to buy and out of what
// there is, and then the cuts at the table in order, each piece labelled with
// its load.
func Fabric(w io.Writer, q *queue.Queue) error {
	t := text{q: q, unit: q.List.Unit}
	t.line("%s: the fabric for %s", q.List.Quilt, count(len(q.Loads), "load"))
	t.line("Sizes are across x along the lengthwise grain, in %s.", unitWord(t.unit))
	t.line("")
	for f := range q.List.Fabrics {
		t.takes(f)
	}
	t.short()
	if len(q.Stock) > 0 {
		t.line("")
		t.line("Square up the top and the left edge. A cut across runs from edge to edge of what")
		t.line("lies on the table, a cut along runs up the grain; each is measured from the edge")
		t.line("cut before it, from the top or from the left. %s", t.spare())
	}
	steps := cutting.Order(q)
	for _, u := range q.Stock {
		n := 0
		for n < len(steps) && steps[n].Fabric == u.Fabric && steps[n].Panel == u.Panel {
			n++
		}
		t.cuts(&u, steps[:n])
		steps = steps[n:]
	}
	_, err := w.Write(t.b.Bytes())
	return err
}

// spare says what the margin is good for.
func (t *text) spare() string {
	if m := t.q.List.Margin; m > 0 {
		return "Each rough cut has " + m.Show(t.unit) + " to spare all round."
	}
	return "Rough cuts have nothing to spare."
}

// takes says how much a plan takes of one fabric.
func (t *text) takes(fabric int) {
	f := &t.q.List.Fabrics[fabric]
	bought := false
	for _, b := range t.q.Buy {
		if b.Fabric == fabric {
			bought = true
			t.line("%s: buy %s, %s wide%s", f.Name, t.sold(b.Length), b.Width.FormatUnit(t.unit), t.washed(fabric))
		}
	}
	var had []string
	for _, u := range t.q.Stock {
		if u.Fabric == fabric && !bought {
			had = append(had, fmt.Sprintf("%s of panel %d (%s)", u.Reach().Show(t.unit), u.Panel, t.size(u.Width, u.Height)))
		}
	}
	switch {
	case len(had) > 0:
		t.line("%s: out of what you have, %s%s", f.Name, strings.Join(had, ", "), t.washed(fabric))
	case !bought && !t.isShort(fabric):
		t.line("%s: none", f.Name)
	}
}

func (t *text) isShort(fabric int) bool {
	for _, s := range t.q.Short {
		if s.Fabric == fabric {
			return true
		}
	}
	return false
}

// washed says that a fabric is counted as it is after washing, if it shrinks.
func (t *text) washed(fabric int) string {
	if f := &t.q.List.Fabrics[fabric]; f.ShrinkAcross == 0 && f.ShrinkAlong == 0 {
		return ""
	}
	for _, u := range t.q.Stock {
		if u.Fabric == fabric && len(t.q.List.Fabrics[fabric].Stock) == 0 {
			return fmt.Sprintf("; wash it first: %s is left to cut", t.size(u.Width, u.Height))
		}
	}
	return ", as it is once washed"
}

// cuts lists the cuts of one panel in order, each set in as deep as what is
// being cut; cuts alike that follow each other stand in one line.
func (t *text) cuts(u *queue.PanelUse, steps []cutting.Step) {
	t.line("")
	t.line("%s panel %d, %s", t.q.List.Fabrics[u.Fabric].Name, u.Panel, t.size(u.Width, u.Height))
	for len(steps) > 0 {
		n := 1
		for n < len(steps) && sameCut(&steps[0], &steps[n]) {
			n++
		}
		t.cut(steps[:n])
		steps = steps[n:]
	}
}

// sameCut says whether two steps are one cut made twice: no strip that is cut
// on between them.
func sameCut(a, b *cutting.Step) bool {
	return a.Depth == b.Depth && a.Across == b.Across && a.At == b.At && a.Width == b.Width && a.Height == b.Height &&
		(a.Load > 0) == (b.Load > 0) && a.Load+a.Copy > 0 && b.Load+b.Copy > 0 && (a.Copy == 0 || a.Line == b.Line)
}

func (t *text) cut(alike []cutting.Step) {
	s := &alike[0]
	what := "what is left"
	if s.At > 0 {
		way := "along"
		if s.Across {
			way = "across"
		}
		what = way + " at " + s.At.Show(t.unit)
	}
	if len(alike) > 1 {
		what += fmt.Sprintf(", %d times", len(alike))
	}
	what = strings.Repeat("  ", s.Depth+1) + what
	t.line("%s", strings.TrimRight(fmt.Sprintf("%-32s %-22s %s", what, t.size(s.Width, s.Height), t.purpose(alike)), " "))
}

// purpose says what cuts alike set free.
func (t *text) purpose(alike []cutting.Step) string {
	s := &alike[0]
	switch {
	case s.Copy > 0:
		l := &t.q.List.Lines[s.Line]
		what := "by hand: " + l.Shape
		if l.Kind == cutlist.Binding {
			what = "by hand: binding"
		}
		if l.Label != "" {
			what += " for " + l.Label
		}
		return what
	case s.Load > 0 && len(alike) == 1:
		return fmt.Sprintf("load %d", s.Load)
	case s.Load > 0:
		var loads []int
		for i := range alike {
			loads = append(loads, alike[i].Load)
		}
		return "loads " + Numbers(loads)
	case s.Offcut:
		return "left over"
	}
	return ""
}

// Numbers lists whole numbers, three or more in a row as a range: "2, 5 to 9".
func Numbers(all []int) string {
	var out []string
	for i := 0; i < len(all); {
		k := i
		for k+1 < len(all) && all[k+1] == all[k]+1 {
			k++
		}
		if k-i < 2 {
			k = i
			out = append(out, fmt.Sprint(all[i]))
		} else {
			out = append(out, fmt.Sprintf("%d to %d", all[i], all[k]))
		}
		i = k + 1
	}
	return strings.Join(out, ", ")
}

package report

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// Text writes q as the quilter reads it: what it comes to, each load with its
// rough cuts and pieces, then the fabric.
func Text(w io.Writer, q *queue.Queue) error {
	t := text{q: q, unit: q.List.Unit}
	t.heading()
	for rest := q.Loads; len(rest) > 0; {
		n := 1
		for n < len(rest) && t.alike(rest[0], rest[n]) {
			n++
		}
		t.load(rest[:n])
		rest = rest[n:]
	}
	t.stock()
	t.buy()
	t.short()
	_, err := w.Write(t.b.Bytes())
	return err
}

type text struct {
	q    *queue.Queue
	unit length.Unit
	b    bytes.Buffer
}

func (t *text) line(format string, a ...any) { fmt.Fprintf(&t.b, format+"\n", a...) }

func (t *text) size(w, h length.Len) string { return w.Show(t.unit) + " x " + h.Show(t.unit) }

func (t *text) heading() {
	pieces := 0
	for _, l := range t.q.Loads {
		pieces += len(l.Pieces)
	}
	t.line("%s: %s, %s", t.q.List.Quilt, count(pieces, "piece"), count(len(t.q.Loads), "load"))
	switch n := t.q.Fewest.Loads; {
	case len(t.q.Loads) == 0:
	case t.q.Fewest.Proved:
		t.line("It can't be done in fewer: %s is proved to be the least.", count(n, "load"))
	default:
		t.line("Fewer than %s can't be done.", count(n, "load"))
	}
	if len(t.q.Short) > 0 {
		t.line("There is too little fabric: see the end.")
	}
	t.line("Sizes are across x along the lengthwise grain, in %s.", unitWord(t.unit))
	t.line("Lay each rough cut with its grain up the mat. %s", t.offBy())
}

// offBy says how true rough cuts must lie: the margin is what she may be off.
func (t *text) offBy() string {
	if m := t.q.List.Margin; m > 0 {
		return "You may be off by " + m.Show(t.unit) + "."
	}
	return "Lay it true: there is no margin."
}

func unitWord(u length.Unit) string {
	switch u {
	case length.Cm:
		return "centimeters"
	case length.Mm:
		return "millimeters"
	default:
		return "inches"
	}
}

// alike says whether two loads read the same but for their numbers.
func (t *text) alike(a, b queue.Load) bool {
	if a.Layout != b.Layout || !slices.Equal(a.RoughCuts, b.RoughCuts) {
		return false
	}
	for i := range a.RoughCuts {
		if !slices.Equal(t.counts(a, i), t.counts(b, i)) {
			return false
		}
	}
	return true
}

// load tells of one load, or of several alike in a row.
func (t *text) load(alike []queue.Load) {
	l, last := alike[0], alike[len(alike)-1]
	which, layout, travels := fmt.Sprintf("Load %d", l.Number), fmt.Sprintf("layout %d", l.Layout), t.travel(l.CutLength)
	switch n := len(alike); n {
	case 1:
	case 2:
		which, layout = fmt.Sprintf("Loads %d and %d", l.Number, last.Number), layout+", cut twice"
		travels += " each time"
	default:
		which, layout = fmt.Sprintf("Loads %d to %d", l.Number, last.Number), fmt.Sprintf("%s, cut %d times", layout, n)
		travels += " each time"
	}
	t.line("")
	t.line("%s   %s   %d %% of the mat filled   the blade travels %s", which, layout, t.fill(l), travels)
	for i, r := range l.RoughCuts {
		t.line("  %s %s, from panel %d, laid %s across and %s down the mat", t.q.List.Fabrics[r.Fabric].Name, t.size(r.Width, r.Height), r.Panel,
			r.X.Show(t.unit), r.Y.Show(t.unit))
		for line, n := range t.counts(l, i) {
			if n > 0 {
				t.line("    %s", t.piece(line, n))
			}
		}
	}
}

// counts says how many pieces of each line stand in a rough cut.
func (t *text) counts(l queue.Load, roughCut int) []int {
	counts := make([]int, len(t.q.List.Lines))
	for _, p := range l.Pieces {
		if p.RoughCut == roughCut {
			counts[p.Line]++
		}
	}
	return counts
}

// piece names n pieces of a line: "24 squares 2 1/2, A (line 10)".
func (t *text) piece(line, n int) string {
	l := t.q.List.Lines[line]
	l.Count = n
	s := l.Say()
	if l.Kind == cutlist.Binding {
		s = count(n, "strip") + " of " + s
	}
	if l.Label != "" {
		s += ", " + l.Label
	}
	return fmt.Sprintf("%s (line %d)", s, l.Number)
}

// fill is how much of the usable part the load's pieces take, in hundredths,
// rounded down.
func (t *text) fill(l queue.Load) int {
	var twice length.Area
	for _, p := range l.Pieces {
		twice = twice.Add(p.Outline.TwiceArea())
	}
	m := t.q.List.Mat
	return twice.PerMille(length.Mul(m.UsableWidth, m.UsableHeight).Times(2)) / 10
}

// travel is a long length, in whole inches or centimetres.
func (t *text) travel(l length.Len) string {
	if t.unit == length.In {
		return fmt.Sprintf("%d in", (l+length.Inch/2)/length.Inch)
	}
	return fmt.Sprintf("%d cm", (l+length.Centimetre/2)/length.Centimetre)
}

func (t *text) stock() {
	if len(t.q.Stock) == 0 {
		return
	}
	t.line("")
	t.line("Where it comes out of the fabric, from the top left corner of each panel")
	for _, s := range t.q.Stock {
		if len(s.RoughCuts)+len(s.ByHand) == 0 {
			continue
		}
		t.line("  %s panel %d, %s", t.q.List.Fabrics[s.Fabric].Name, s.Panel, t.size(s.Width, s.Height))
		for _, c := range t.cutsOf(s) {
			t.line("    %-24s %s across, %s down   %s", c.size, c.x.Show(t.unit), c.y.Show(t.unit), c.what)
		}
	}
}

type tableCut struct {
	x, y       length.Len
	size, what string
}

// cutsOf lists what comes out of a panel from the top down.
func (t *text) cutsOf(s queue.PanelUse) []tableCut {
	var cuts []tableCut
	for _, r := range s.RoughCuts {
		cuts = append(cuts, tableCut{r.X, r.Y, t.size(r.Width, r.Height), fmt.Sprintf("for load %d", r.Load)})
	}
	for _, h := range s.ByHand {
		l := t.q.List.Lines[h.Line]
		what := "cut by hand"
		if l.Kind == cutlist.Binding {
			what = "binding, cut by hand"
		}
		if l.Label != "" {
			what += ", " + l.Label
		}
		cuts = append(cuts, tableCut{h.X, h.Y, t.size(h.Width, h.Height), what})
	}
	slices.SortStableFunc(cuts, func(a, b tableCut) int { return cmp.Or(cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x)) })
	return cuts
}

func (t *text) buy() {
	if len(t.q.Buy) == 0 {
		return
	}
	t.line("")
	t.line("To buy")
	for _, b := range t.q.Buy {
		t.line("  %s: %s, %s wide", t.q.List.Fabrics[b.Fabric].Name, t.sold(b.Length), b.Width.FormatUnit(t.unit))
	}
}

// sold is a length of fabric as a shop cuts it.
func (t *text) sold(l length.Len) string {
	if t.unit == length.In {
		return l.Yards()
	}
	return l.FormatUnit(t.unit)
}

func (t *text) short() {
	if len(t.q.Short) == 0 {
		return
	}
	t.line("")
	t.line("Too little fabric: these pieces are not in the plan")
	for _, s := range t.q.Short {
		var missing []string
		for line, n := range s.Missing {
			if n > 0 {
				missing = append(missing, t.piece(line, n))
			}
		}
		t.line("  %s: %s. %s", t.q.List.Fabrics[s.Fabric].Name, strings.Join(missing, "; "), t.wouldDo(&s))
	}
}

// wouldDo says how much more of a fabric gives what is missing, in whole
// steps as it is sold.
func (t *text) wouldDo(s *queue.Short) string {
	if s.Length == 0 {
		return "No length would do for all of it: one is wider than the fabric."
	}
	wide, long := s.ToBuy(t.q.List)
	return fmt.Sprintf("%s more, %s wide, would do.", t.sold(long), wide.FormatUnit(t.unit))
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

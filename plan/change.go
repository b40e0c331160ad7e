package plan

import (
	"reflect"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
)

// Change is what became of a plan when its cut list was edited, as facts: the
// words are the screen's.
type Change struct {
	Lines                   []LineChange
	Fabrics                 []FabricChange
	Mat                     bool // the mat, its usable part, the gap or the margin
	LoadsBefore, LoadsAfter int
}

// LineChange is one kind of piece that there are more or fewer of, or that
// has become another. Old and New stand for all lines that ask for the same;
// the one is nil where there were none, the other where there are none now.
type LineChange struct {
	Old, New      *cutlist.Line
	Fabric        string // its name: New's, where there is one
	Before, After int    // pieces; a binding counts as one
}

// FabricChange is a fabric that came, went or is another than it was. The one
// of Old and New is nil where it came or went.
type FabricChange struct{ Old, New *cutlist.Fabric }

// Compare says what changed from one queue and its list to another.
func Compare(old, now *queue.Queue) Change {
	a, b := old.List, now.List
	return Change{
		Lines:       CompareLists(a, b),
		Fabrics:     compareFabrics(a, b),
		Mat:         a.Mat != b.Mat || a.Gap != b.Gap || a.Margin != b.Margin,
		LoadsBefore: len(old.Loads), LoadsAfter: len(now.Loads),
	}
}

// CompareLists says which pieces a list asks for more or fewer of, in the
// order of the new list and then of the old one.
//
//	(1) Of what is asked for alike, only how often it is asked for in all
//	    counts: order, line numbers and splitting a line change nothing.
//	(2) Before and After, summed over the changes, differ by as much as the
//	    two lists' pieces do.
//	(3) Of what has gone and what has come, those that agree in all but the
//	    label, or in all but shape and size, are told as one change, each
//	    once, where no other could be meant.
func CompareLists(old, now *cutlist.List) []LineChange {
	was, is := sumsOf(old), sumsOf(now)
	var changes, gone []LineChange
	for _, s := range is {
		before := 0
		var line *cutlist.Line
		if i := find(was, s); i >= 0 {
			before, line = was[i].count, was[i].line
		}
		if before != s.count {
			changes = append(changes, LineChange{line, s.line, s.fabric, before, s.count})
		}
	}
	for _, s := range was {
		if find(is, s) < 0 {
			gone = append(gone, LineChange{s.line, nil, s.fabric, s.count, 0})
		}
	}
	for _, alike := range []func(a, b *cutlist.Line) bool{sameCut, recut} {
		gone = joined(changes, gone, alike)
	}
	return append(changes, gone...)
}

// sum is all lines of a list that ask for the same, by the first of them.
type sum struct {
	line   *cutlist.Line
	fabric string
	count  int
}

func sumsOf(l *cutlist.List) (all []sum) {
	for i := range l.Lines {
		line := &l.Lines[i]
		s := sum{line, l.Fabrics[line.Fabric].Name, line.Count}
		if line.Kind == cutlist.Binding {
			s.count = 1
		}
		if k := find(all, s); k >= 0 {
			all[k].count += s.count
			continue
		}
		all = append(all, s)
	}
	return all
}

// find is where a list's sums ask for the same as s, or -1.
func find(all []sum, s sum) int {
	return slices.IndexFunc(all, func(o sum) bool {
		return o.fabric == s.fabric && o.line.Label == s.line.Label && sameCut(o.line, s.line)
	})
}

// sameCut says whether two lines of one fabric ask for the same but for
// count and label.
func sameCut(a, b *cutlist.Line) bool {
	return sameWay(a, b) && a.StripWidth == b.StripWidth && a.Length == b.Length &&
		slices.Equal(a.Outline, b.Outline)
}

// sameWay says whether two lines are cut the same way, whatever their sizes.
func sameWay(a, b *cutlist.Line) bool {
	return a.Kind == b.Kind && a.Grain == b.Grain && a.Fussy == b.Fussy
}

// recut lines have another size or shape, for the same label.
func recut(a, b *cutlist.Line) bool { return sameWay(a, b) && a.Label == b.Label }

// joined makes one change of what has gone and what has come, where alike
// pairs just two of a fabric with each other. It returns what is left of gone.
func joined(changes, gone []LineChange, alike func(a, b *cutlist.Line) bool) (rest []LineChange) {
	pairs := func(g, c int) bool {
		old, now := &gone[g], &changes[c]
		return now.Old == nil && old.Fabric == now.Fabric && alike(old.Old, now.New)
	}
	partner := make([]int, len(gone))
	for g := range gone {
		partner[g] = only(len(changes), func(c int) bool { return pairs(g, c) })
		if c := partner[g]; c >= 0 && only(len(gone), func(o int) bool { return pairs(o, c) }) < 0 {
			partner[g] = -1 // another could be meant as well
		}
	}
	for g, c := range partner {
		if c < 0 {
			rest = append(rest, gone[g])
			continue
		}
		changes[c].Old, changes[c].Before = gone[g].Old, gone[g].Before
	}
	return rest
}

// only is the one number below n that is ok, or -1 where there are none or
// several.
func only(n int, ok func(i int) bool) int {
	found := -1
	for i := range n {
		if ok(i) && found >= 0 {
			return -1
		} else if ok(i) {
			found = i
		}
	}
	return found
}

func compareFabrics(old, now *cutlist.List) (out []FabricChange) {
	for i := range now.Fabrics {
		f := &now.Fabrics[i]
		was := fabricNamed(old, f.Name)
		if was == nil || !sameFabric(*was, *f) {
			out = append(out, FabricChange{was, f})
		}
	}
	for i := range old.Fabrics {
		if f := &old.Fabrics[i]; fabricNamed(now, f.Name) == nil {
			out = append(out, FabricChange{f, nil})
		}
	}
	return out
}

func fabricNamed(l *cutlist.List, name string) *cutlist.Fabric {
	for i := range l.Fabrics {
		if l.Fabrics[i].Name == name {
			return &l.Fabrics[i]
		}
	}
	return nil
}

// sameFabric says whether two fabrics differ in nothing but the line they
// stand on.
func sameFabric(a, b cutlist.Fabric) bool {
	stock := slices.Equal(a.Stock, b.Stock)
	a.Stock, b.Stock, a.Line, b.Line = nil, nil, 0, 0
	return stock && reflect.DeepEqual(a, b)
}

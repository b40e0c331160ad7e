package blade

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// Edge is one edge of a piece's outline, walked from A to B with the piece on
// the right hand.
type Edge struct {
	A, B outline.Point
	// Group and Part say whose edge it is: a run is never made of two groups,
	// and where two share a stretch it belongs to the higher one.
	Group, Part int
}

// Run is one straight cut.
//
// (1) Runs cover every edge and nothing else. (2) No two share more than a
// point. (3) No two of a group on one line meet: they would be one run.
type Run struct {
	A, B  outline.Point // A is left of B, or straight above it
	Group int
	Part  int // the highest of the parts whose edge it is
	// Inner says that some of it has a piece on both sides, Outer that some of
	// it has a piece on one side only. At least one of them holds.
	Inner, Outer bool
}

// Edges are the edges of one outline.
func Edges(o outline.Outline, group, part int) []Edge {
	edges := make([]Edge, len(o))
	for i, a := range o {
		edges[i] = Edge{a, o[(i+1)%len(o)], group, part}
	}
	return edges
}

// Length is how far the blade travels over the pieces' outlines; where two
// share a cut, it counts once.
func Length(pieces []queue.Placement) length.Len {
	var edges []Edge
	for _, p := range pieces {
		edges = append(edges, Edges(p.Outline, 0, 0)...)
	}
	var sum length.Len
	for _, r := range Runs(edges) {
		sum += Way(r.A, r.B)
	}
	return sum
}

// Runs joins edges into runs, sorted by line, parallel ones next to each
// other, and along each line.
func Runs(edges []Edge) []Run {
	ends := make([]end, 0, 2*len(edges))
	for _, e := range edges {
		if e.A == e.B {
			continue
		}
		a, b, right := e.A, e.B, true
		if before(b, a) {
			a, b, right = b, a, false
		}
		on := on{e.Group, e.Part, right}
		l := lineOf(a, b)
		ends = append(ends, end{l, a, on, true}, end{l, b, on, false})
	}
	slices.SortFunc(ends, end.compare)
	var runs []Run
	for len(ends) > 0 {
		n := 1
		for n < len(ends) && ends[n].line == ends[0].line {
			n++
		}
		runs = sweep(runs, ends[:n])
		ends = ends[n:]
	}
	return runs
}

// on is an edge as the sweep sees it: whose it is, and on which hand its piece
// lies for one who walks the line.
type on struct {
	group, part int
	right       bool
}

// end is where an edge begins or ends on its line.
type end struct {
	line
	at outline.Point
	on
	begins bool
}

func (e end) compare(o end) int {
	return cmp.Or(e.line.compare(o.line), cmp.Compare(e.place(e.at), o.place(o.at)), cmp.Compare(e.group, o.group),
		cmp.Compare(e.part, o.part))
}

// sweep adds the runs of one line, whose ends are sorted along it. Pieces that
// don't overlap have at most two edges at any place of it.
func sweep(runs []Run, ends []end) []Run {
	var active []on
	first := len(runs)
	for i, e := range ends {
		if e.begins {
			active = append(active, e.on)
		} else {
			at := slices.Index(active, e.on)
			active = slices.Delete(active, at, at+1)
		}
		if len(active) == 0 || i+1 == len(ends) || ends[i+1].at == e.at {
			continue
		}
		r := stretch(active, e.at, ends[i+1].at)
		if n := len(runs); n > first && runs[n-1].Group == r.Group && runs[n-1].B == r.A {
			last := &runs[n-1]
			last.B, last.Part = r.B, max(last.Part, r.Part)
			last.Inner, last.Outer = last.Inner || r.Inner, last.Outer || r.Outer
			continue
		}
		runs = append(runs, r)
	}
	return runs
}

// stretch is the run between two neighbouring ends.
func stretch(active []on, a, b outline.Point) Run {
	r := Run{A: a, B: b, Group: active[0].group, Part: active[0].part}
	right, left := false, false
	for _, e := range active {
		if e.group > r.Group || e.group == r.Group && e.part > r.Part {
			r.Group, r.Part = e.group, e.part
		}
		right, left = right || e.right, left || !e.right
	}
	r.Inner = right && left
	r.Outer = !r.Inner
	return r
}

package pack

import (
	"encoding/binary"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/nest"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// nests remembers outlines laid in a box. Laying them takes long, so that a
// job has only so many to spend.
type nests struct {
	seen   map[string][]nested
	left   int                  // layings of a box by area
	priced int                  // layings of a mat by worth
	lone   int                  // layings of a shape by itself
	alone  map[nesting][]nested // shapes laid by themselves
}

// nested is one outline laid: the how manieth of those asked for, its turn,
// and where its box begins.
type nested struct {
	item, turn int
	x, y       length.Len
}

func newNests(e rect.Effort) *nests {
	n := &nests{seen: map[string][]nested{}, left: 2, priced: 2, lone: 5, alone: map[nesting][]nested{}}
	switch e {
	case rect.Quick:
		n.left, n.priced, n.lone = 1, 0, 3
	case rect.Thorough:
		n.left, n.priced, n.lone = 240, 400, 200
	}
	return n
}

// slanted says whether any wanted piece of a fabric is no rectangle, or may
// lie aslant: only then can laying outlines gain on laying boxes.
func (j *Job) slanted(fabric int, want []int) bool {
	return slices.ContainsFunc(j.of[fabric], func(k int) bool {
		p := &j.Kinds[k]
		return want[k] > 0 && !p.Fussy && (!p.Outline.IsRect() || p.Turns == AnyTurn)
	})
}

// couldGain says whether a box holds less than all, and has area left for
// more, so that laying outlines may do better than g.
func (j *Job) couldGain(fabric int, want []int, g *Group, w, h length.Len) bool {
	left, least := square(w, h), int64(0)
	had := j.holds(g)
	for k, n := range had {
		left -= int64(n) * j.Kinds[k].area
	}
	for _, k := range j.of[fabric] {
		if p := &j.Kinds[k]; want[k] > had[k] && !p.Fussy && (least == 0 || p.area < least) {
			least = p.area
		}
	}
	return least > 0 && left >= least
}

// nested fills a box with outlines as they are, at the turns they may take,
// by area.
func (j *Job) nested(fabric int, want []int, w, h length.Len) Group {
	var items []nest.Item
	var kinds []int
	key := binary.AppendUvarint(binary.AppendUvarint(nil, uint64(w)), uint64(h))
	for _, k := range j.of[fabric] {
		if p := &j.Kinds[k]; want[k] > 0 && !p.Fussy {
			n := j.atMost(k, want[k], w, h)
			kinds = append(kinds, k)
			items = append(items, nest.Item{Outline: p.base, Turns: p.turns, Count: n})
			key = binary.AppendUvarint(binary.AppendUvarint(key, uint64(p.shape)), uint64(n))
		}
	}
	if len(kinds) == 1 {
		return j.laid(fabric, kinds, j.nestedAlone(kinds[0], string(key), w, h, items))
	}
	return j.laid(fabric, kinds, j.nests.lay(string(key), w, h, j.List.Gap, items, j.nesting()))
}

// nestedAlone is lay for a single kind: where its count doesn't matter, what
// was laid of its shape by itself serves, and serves later.
func (j *Job) nestedAlone(k int, key string, w, h length.Len, items []nest.Item) []nested {
	n := nesting{j.Kinds[k].shape, [2]length.Len{w, h}}
	if all, ok := j.nests.alone[n]; ok && len(all) <= items[0].Count {
		return all
	}
	all := j.nests.lay(key, w, h, j.List.Gap, items, j.nesting())
	if len(all) > 0 && len(all) < items[0].Count && !j.stopped() {
		j.nests.alone[n] = all
	}
	return all
}

// nesting is how hard outlines are laid. More effort goes into more layings,
// not into each.
func (j *Job) nesting() nest.Options { return nest.Options{Effort: rect.Quick, Stop: j.Stop} }

// laid is a group of outlines laid, of some kinds.
func (j *Job) laid(fabric int, kinds []int, all []nested) Group {
	g := Group{Fabric: fabric}
	for _, p := range all {
		g.Parts = append(g.Parts, Part{Kind: kinds[p.item], Turn: p.turn, X: p.x, Y: p.y})
	}
	j.tighten(&g)
	return g
}

// priced fills a box with a fabric's outlines as they are for the most worth,
// if there is work left for it.
func (j *Job) priced(fabric int, want []int, value []int64, w, h length.Len) Group {
	if j.nests.priced == 0 {
		return Group{}
	}
	j.nests.priced--
	var items []nest.Item
	var kinds []int
	for _, k := range j.of[fabric] {
		if p := &j.Kinds[k]; want[k] > 0 && !p.Fussy && value[k] > 0 {
			kinds = append(kinds, k)
			items = append(items, nest.Item{Outline: p.base, Turns: p.turns, Count: j.atMost(k, want[k], w, h), Value: max(1, value[k]>>12)})
		}
	}
	return j.laid(fabric, kinds, takenDown(nest.Fill(w, h, j.List.Gap, items, j.nesting())))
}

func (n *nests) lay(key string, w, h, gap length.Len, items []nest.Item, opt nest.Options) []nested {
	all, ok := n.seen[key]
	if ok || n.left == 0 {
		return all
	}
	n.left--
	all = takenDown(nest.Fill(w, h, gap, items, opt))
	n.seen[key] = all
	return all
}

func takenDown(placed []nest.Placed) []nested {
	var all []nested
	for _, p := range placed {
		b := p.Outline.Bounds()
		all = append(all, nested{p.Item, p.Turn, b.Min.X, b.Min.Y})
	}
	return all
}

// turnsFor lists the turns a kind may take on the mat, in micro-degrees.
// Any grain is tried in steps that suit squares, hexagons and octagons, and
// at the turn that makes it fit where no other does.
func (j *Job) turnsFor(k *Kind) []int {
	const step = outline.Degree
	switch k.Turns {
	case NoTurn:
		return []int{0}
	case HalfTurns:
		return []int{0, 180 * step}
	case QuarterTurns:
		return []int{0, 90 * step, 180 * step, 270 * step}
	}
	var out []int
	for q := range 4 {
		for _, t := range []int{0, 30, 45, 60} {
			out = append(out, (90*q+t)*step)
		}
	}
	if j.upright(k, j.W, j.H) {
		return out
	}
	if t, ok := cutlist.TurnThatFits(k.Outline, j.W, j.H); ok && !slices.Contains(out, t) {
		out = append(out, t)
	}
	return out
}

// shapeOf numbers kinds of the same outline and turns alike, whatever their
// fabrics, so that what was laid for one serves another.
func (j *Job) shapeOf(k *Kind) int {
	for i := range j.Kinds {
		if o := &j.Kinds[i]; o.alike(k) {
			return o.shape
		}
	}
	return len(j.Kinds)
}

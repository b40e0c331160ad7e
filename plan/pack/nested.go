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
	sheets map[string]*nest.Sheet
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
	n := &nests{sheets: map[string]*nest.Sheet{}, seen: map[string][]nested{}, left: 2, priced: 2, lone: 5, alone: map[nesting][]nested{}}
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
	var kinds, count []int
	for _, k := range j.of[fabric] {
		if want[k] > 0 && !j.Kinds[k].Fussy {
			kinds, count = append(kinds, k), append(count, j.atMost(k, want[k], w, h))
		}
	}
	if len(kinds) == 1 {
		return j.laid(fabric, kinds, j.nestedAlone(kinds[0], count[0], w, h))
	}
	return j.laid(fabric, kinds, j.nestedBy(kinds, count, w, h))
}

// nestedAlone is nestedBy for a single kind: where its count doesn't matter,
// what was laid of its shape by itself serves, and serves later.
func (j *Job) nestedAlone(k, count int, w, h length.Len) []nested {
	n := nesting{j.Kinds[k].shape, [2]length.Len{w, h}}
	if all, ok := j.nests.alone[n]; ok && len(all) <= count {
		return all
	}
	all := j.nestedBy([]int{k}, []int{count}, w, h)
	if len(all) > 0 && len(all) < count && !j.stopped() {
		j.nests.alone[n] = all
	}
	return all
}

// nestedBy lays so many of each of some kinds by area, if there is work left
// for it.
func (j *Job) nestedBy(kinds, count []int, w, h length.Len) []nested {
	key := j.boxKey(kinds, w, h)
	for _, n := range count {
		key = binary.AppendUvarint(key, uint64(n))
	}
	all, ok := j.nests.seen[string(key)]
	if ok || j.nests.left == 0 {
		return all
	}
	j.nests.left--
	all = takenDown(j.sheet(kinds, w, h).Fill(count, nil))
	j.nests.seen[string(key)] = all
	return all
}

// boxKey is the same for boxes of one size with kinds of the same shapes.
func (j *Job) boxKey(kinds []int, w, h length.Len) []byte {
	key := binary.AppendUvarint(binary.AppendUvarint(nil, uint64(w)), uint64(h))
	for _, k := range kinds {
		key = binary.AppendUvarint(key, uint64(j.Kinds[k].shape))
	}
	return key
}

// sheet is a box for outlines of some kinds to be laid in. More effort goes
// into more layings, not into each.
func (j *Job) sheet(kinds []int, w, h length.Len) *nest.Sheet {
	key := string(j.boxKey(kinds, w, h))
	if j.nests.sheets[key] == nil {
		var items []nest.Item
		for _, k := range kinds {
			items = append(items, nest.Item{Outline: j.Kinds[k].base, Turns: j.Kinds[k].turns})
		}
		j.nests.sheets[key] = nest.NewSheet(w, h, j.List.Gap, items, nest.Options{Effort: rect.Quick, Stop: j.Stop})
	}
	return j.nests.sheets[key]
}

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
// if there is work left for it. Pieces of one kind lie as they do by area.
func (j *Job) priced(fabric int, want []int, value []int64, w, h length.Len) Group {
	var kinds, count []int
	var worth []int64
	for _, k := range j.of[fabric] {
		if want[k] > 0 && !j.Kinds[k].Fussy && value[k] > 0 {
			kinds, count = append(kinds, k), append(count, j.atMost(k, want[k], w, h))
			worth = append(worth, max(1, value[k]>>12))
		}
	}
	if len(kinds) == 1 {
		return j.laid(fabric, kinds, j.nestedAlone(kinds[0], count[0], w, h))
	}
	if len(kinds) == 0 || j.nests.priced == 0 {
		return Group{}
	}
	j.nests.priced--
	return j.laid(fabric, kinds, takenDown(j.sheet(kinds, w, h).Fill(count, worth)))
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

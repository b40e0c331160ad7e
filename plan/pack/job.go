package pack

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// Kind is all pieces of one fabric that are alike to the packer: same
// outline, same turns. Several lines of the cut list may share a kind.
type Kind struct {
	Fabric  int
	Outline outline.Outline // as it lies on the mat unturned: mirrored already where the fabric lies face down
	W, H    length.Len      // of its bounding box
	Turns   Turns
	Fussy   bool
	Count   int   // pieces to be cut
	Lines   []int // indexes of the cut list's lines, in order

	base     outline.Outline   // Outline where it was turned about: aslant, corners round from there
	area     int64             // to compare by, at least 1
	turns    []int             // it may take, in micro-degrees
	shape    int               // the same for kinds alike of any fabric
	quarters []outline.Outline // at each quarter turn, boxes at 0,0
}

// Turns says how a kind may be turned, after its fabric has been asked.
type Turns uint8

// From none to any.
const (
	NoTurn Turns = iota
	HalfTurns
	QuarterTurns
	AnyTurn
)

// Job is what is to be packed. Build it with NewJob.
type Job struct {
	List   *cutlist.List
	Kinds  []Kind
	W, H   length.Len // the part of the mat that boxes of pieces may take up
	X, Y   length.Len // where on the mat that part begins
	Apart  length.Len // between pieces of different rough cuts: twice the margin, and never less than the gap
	Effort rect.Effort
	Stop   func() bool // may be asked from several goroutines at once
	Lower  int         // no fewer loads are possible: there is nothing to gain beyond

	of    [][]int // the kinds of each fabric
	nests *nests
}

// NewJob reads what is on the mat out of a cut list. count says how many
// pieces of each line are to be cut. Kinds that fit no mat are left with a
// Count of 0.
func NewJob(list *cutlist.List, count []int, effort rect.Effort, stop func() bool) *Job {
	m := list.Mat
	j := &Job{List: list, Effort: effort, Stop: stop, Apart: max(2*list.Margin, list.Gap), of: make([][]int, len(list.Fabrics)), nests: newNests(effort)}
	j.X, j.W = reach(m.Width, m.UsableWidth, list.Margin)
	j.Y, j.H = reach(m.Height, m.UsableHeight, list.Margin)
	for i := range list.Lines {
		if list.Lines[i].Kind == cutlist.OnMat && count[i] > 0 {
			j.add(i, count[i])
		}
	}
	return j
}

// reach says where the boxes of pieces may lie on one side of the mat: in
// the usable part, and so far from the edge that the margin is on the mat.
func reach(mat, usable, margin length.Len) (from, size length.Len) {
	rim := (mat - usable) / 2
	from = max(rim, margin)
	return from, min(rim+usable, mat-margin) - from
}

// add takes in count pieces of a line, as a kind of their own or with others
// that are alike.
func (j *Job) add(line, count int) {
	k := kindOf(j.List, line)
	for _, i := range j.of[k.Fabric] {
		if o := &j.Kinds[i]; o.alike(&k) {
			o.Lines = append(o.Lines, line)
			if j.fits(o) {
				o.Count += count
			}
			return
		}
	}
	if j.fits(&k) {
		k.Count = count
	}
	k.measure()
	k.turns, k.shape = j.turnsFor(&k), j.shapeOf(&k)
	j.of[k.Fabric] = append(j.of[k.Fabric], len(j.Kinds))
	j.Kinds = append(j.Kinds, k)
}

func kindOf(list *cutlist.List, line int) Kind {
	l := &list.Lines[line]
	f := &list.Fabrics[l.Fabric]
	k := Kind{Fabric: l.Fabric, Outline: l.Outline, Fussy: l.Fussy, Lines: []int{line}, Turns: turnsOf(l.Grain, f.OneWay)}
	k.base = l.Outline
	if f.FaceDown {
		k.base = l.Outline.Mirror()
		k.Outline = k.base.Normalise()
	}
	b := k.Outline.Bounds()
	k.W, k.H = b.Width(), b.Height()
	return k
}

func turnsOf(g cutlist.Grain, oneWay bool) Turns {
	switch {
	case oneWay:
		return NoTurn
	case g == cutlist.AnyGrain:
		return AnyTurn
	case g == cutlist.QuarterTurns:
		return QuarterTurns
	}
	return HalfTurns
}

func (k *Kind) alike(o *Kind) bool {
	if k.W != o.W || k.H != o.H || k.Turns != o.Turns || k.Fussy != o.Fussy || len(k.Outline) != len(o.Outline) {
		return false
	}
	for i, p := range k.Outline {
		if p != o.Outline[i] {
			return false
		}
	}
	return true
}

// measure works out what the search asks for again and again.
func (k *Kind) measure() {
	k.area = max(1, k.Outline.Area().FloorDiv(length.Mul(tenth, tenth)))
	for q := range 4 {
		k.quarters = append(k.quarters, k.Outline.Turn(q*quarter).Normalise())
	}
}

// fits says whether a kind goes on the mat at a turn it may take.
func (j *Job) fits(k *Kind) bool {
	if j.upright(k, j.W, j.H) {
		return true
	}
	_, ok := cutlist.TurnThatFits(k.Outline, j.W, j.H)
	return ok && k.Turns == AnyTurn
}

// upright says whether a kind's box goes in w x h at a quarter turn it may
// take.
func (j *Job) upright(k *Kind, w, h length.Len) bool {
	return k.W <= w && k.H <= h || k.Turns >= QuarterTurns && k.H <= w && k.W <= h
}

// Counts are the pieces to be cut of each kind.
func (j *Job) Counts() []int {
	out := make([]int, len(j.Kinds))
	for k := range out {
		out[k] = j.Kinds[k].Count
	}
	return out
}

// Empty says whether a fabric has no pieces to be cut on the mat.
func (j *Job) Empty(fabric int) bool {
	for _, k := range j.of[fabric] {
		if j.Kinds[k].Count > 0 {
			return false
		}
	}
	return true
}

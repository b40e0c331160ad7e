package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Limit is the largest box of pieces that a rough cut of a fabric may hold;
// zero means as large as the mat allows. Groups, where there are any, are
// what the fabric's stock can give, to be taken as they are.
type Limit struct {
	W, H   length.Len
	Groups []Group
}

// Loads packs the whole job. limits has one entry for each fabric, or is nil.
// The error is rect.ErrTooBig when a piece fits no mat.
func (j *Job) Loads(limits []Limit) ([]Mat, error) {
	var mats []Mat
	for f := range j.List.Fabrics {
		groups, err := j.Fabric(f, limitOf(limits, f))
		if err != nil {
			return nil, err
		}
		for _, g := range groups {
			g.X, g.Y = j.X, j.Y
			mats = append(mats, Mat{Groups: []Group{g}})
		}
	}
	return j.share(mats), nil
}

func limitOf(limits []Limit, f int) Limit {
	if limits == nil {
		return Limit{}
	}
	return limits[f]
}

// Fabric packs the pieces of one fabric by themselves, as groups at 0,0.
func (j *Job) Fabric(f int, l Limit) ([]Group, error) {
	if l.Groups != nil {
		return l.Groups, nil
	}
	w, h := j.W, j.H
	if l.W > 0 {
		w = min(w, l.W)
	}
	if l.H > 0 {
		h = min(h, l.H)
	}
	return j.within(f, j.counts(), w, h)
}

// counts are the pieces to be cut of each kind.
func (j *Job) counts() []int {
	want := make([]int, len(j.Kinds))
	for k := range j.Kinds {
		want[k] = j.Kinds[k].Count
	}
	return want
}

// Pieces packs some pieces of one fabric by themselves: want[k] of each kind.
func (j *Job) Pieces(f int, want []int) ([]Group, error) { return j.within(f, want, j.W, j.H) }

// within packs wanted pieces of a fabric, others in want are ignored, into
// boxes of at most w x h, fussy ones each by itself.
func (j *Job) within(f int, want []int, w, h length.Len) ([]Group, error) {
	var fussy []Group
	plain, any := make([]int, len(j.Kinds)), false
	for k := range j.Kinds {
		p := &j.Kinds[k]
		switch {
		case p.Fabric != f || want[k] == 0:
		case p.Fussy:
			g := j.alone(k)
			if g.W > w || g.H > h {
				return nil, rect.ErrTooBig
			}
			for range want[k] {
				fussy = append(fussy, g)
			}
		default:
			plain[k], any = want[k], true
		}
	}
	if !any {
		return fussy, nil
	}
	groups, err := j.sheets(f, plain, w, h)
	return append(groups, fussy...), err
}

// alone is a group of a single piece, turned if it only fits so.
func (j *Job) alone(k int) Group {
	p := &j.Kinds[k]
	g := Group{Fabric: p.Fabric, W: p.W, H: p.H, Parts: []Part{{Kind: k}}, Rigid: true}
	if p.W > j.W || p.H > j.H {
		g.W, g.H, g.Parts[0].Turn = p.H, p.W, quarter
	}
	return g
}

// area is a measure to sort by, not an exact area: square tenths of a
// millimetre, which fit an int64 for anything a mat can be.
func (g *Group) area() int64 { return int64(g.W/100_000) * int64(g.H/100_000) }

// filled is what the pieces' boxes on a mat cover, in the same measure.
func (j *Job) filled(m *Mat) int64 {
	var sum int64
	for i := range m.Groups {
		for _, p := range m.Groups[i].Parts {
			w, h := j.size(p)
			sum += int64(w/100_000) * int64(h/100_000)
		}
	}
	return sum
}

// byFill sorts mats, the fullest first.
func (j *Job) byFill(mats []Mat) {
	slices.SortStableFunc(mats, func(a, b Mat) int { return cmp.Compare(j.filled(&b), j.filled(&a)) })
}

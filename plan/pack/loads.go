package pack

import (
	"slices"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Limit is the largest box of pieces that a rough cut of a fabric may hold;
// zero means as large as the mat allows. Groups, where they aren't nil, are
// what the fabric's stock can give, to be taken as they are.
type Limit struct {
	W, H   length.Len
	Groups []Group
}

// Fabric packs the pieces of one fabric by themselves, as groups at 0,0, with
// little effort: it is for telling limits apart. The error is rect.ErrTooBig
// where a piece is larger than the limit.
func (j *Job) Fabric(f int, l Limit) ([]Group, error) {
	if l.Groups != nil {
		return l.Groups, nil
	}
	w, h := j.reachOf(l)
	return j.within(f, j.Counts(), w, h, j.Effort.Less())
}

func (j *Job) reachOf(l Limit) (w, h length.Len) {
	w, h = j.W, j.H
	if l.W > 0 {
		w = min(w, l.W)
	}
	if l.H > 0 {
		h = min(h, l.H)
	}
	return w, h
}

// Pieces packs some pieces of one fabric by themselves, want[k] of each kind, as
// Fabric does.
func (j *Job) Pieces(f int, want []int) ([]Group, error) {
	return j.within(f, want, j.W, j.H, j.Effort.Less())
}

// within packs wanted pieces of a fabric into boxes of at most w x h, fussy
// ones each by itself.
func (j *Job) within(f int, want []int, w, h length.Len, e rect.Effort) ([]Group, error) {
	out, err := j.asBlocks(f, want, w, h, e)
	if (err != nil || len(out) > j.byArea(f, want, w, h)) && j.slanted(f, want) {
		if one, ok := j.byFilling(f, want, w, h); ok && (err != nil || len(one) < len(out)) {
			out, err = one, nil
		}
	}
	if err != nil {
		return nil, err
	}
	for _, k := range j.of[f] {
		if want[k] == 0 || !j.Kinds[k].Fussy {
			continue
		}
		g := j.alone(k)
		if g.W > w || g.H > h {
			return nil, rect.ErrTooBig
		}
		for range want[k] {
			out = append(out, g)
		}
	}
	return out, nil
}

// byArea is how many boxes the pieces take by area alone, about.
func (j *Job) byArea(f int, want []int, w, h length.Len) int {
	var sum int64
	for _, k := range j.of[f] {
		if p := &j.Kinds[k]; !p.Fussy {
			sum += int64(want[k]) * p.area
		}
	}
	return int((sum + square(w, h) - 1) / square(w, h))
}

// asBlocks packs all pieces as blocks of rectangles.
func (j *Job) asBlocks(f int, want []int, w, h length.Len, e rect.Effort) (out []Group, err error) {
	for _, k := range j.of[f] {
		if p := &j.Kinds[k]; want[k] > 0 && !p.Fussy && !j.upright(p, w, h) {
			return nil, rect.ErrTooBig
		}
	}
	bs := j.blocks(f, want)
	if len(bs) == 0 {
		return nil, nil
	}
	w, h, sizes := w+j.List.Gap, h+j.List.Gap, j.sizes(bs)
	lower := bound.Bins(w, h, sizes, bound.Options{Effort: rect.Quick})
	bins, err := rect.Pack(w, h, sizes, rect.Options{Effort: e, Lower: lower, Stop: j.Stop})
	for _, b := range bins {
		out = append(out, j.group(f, bs, b))
	}
	return out, err
}

// byFilling packs one box after another as full as it can. It may leave a
// piece that fits no box.
func (j *Job) byFilling(f int, want []int, w, h length.Len) (out []Group, ok bool) {
	fill := j.filler(nil)
	rest := need{want: slices.Clone(want)}
	for _, k := range j.of[f] {
		if j.Kinds[k].Fussy {
			rest.want[k] = 0
		}
	}
	for {
		g := fill.fill(f, rest.want, w, h)
		if len(g.Parts) == 0 {
			break
		}
		l := load{offers: []offer{{g, -1}}}
		for range rest.times(&l) {
			out = append(out, g)
			rest.addLoad(&l, -1)
		}
	}
	for _, k := range j.of[f] {
		if rest.want[k] > 0 {
			return nil, false
		}
	}
	return out, true
}

// effortFor is the effort for one fabric by itself. Where several fabrics
// share mats, the work is better spent on how they share.
func (j *Job) effortFor(f int) rect.Effort {
	if len(j.of[f]) == len(j.Kinds) {
		return j.Effort
	}
	return j.Effort.Less()
}

// Packing is a job on its way to its mats.
type Packing struct {
	*solver
	loads []load
}

// Start packs the whole job, each fabric by itself. limits has one entry for
// each fabric, or is nil. The error is rect.ErrTooBig where a piece is larger
// than its limit.
func (j *Job) Start(limits []Limit) (*Packing, error) {
	if limits == nil {
		limits = make([]Limit, len(j.List.Fabrics))
	}
	s := j.solver(limits)
	loads, err := s.start()
	return &Packing{s, loads}, err
}

// Loads is how many there are so far.
func (p *Packing) Loads() int { return len(p.loads) }

// Improved lets fabrics share mats, as few as it can, and gives the mats.
func (p *Packing) Improved() (mats []Mat) {
	for _, l := range p.improve(p.loads) {
		m := l.mat()
		for i := range m.Groups {
			if l.offers[i].solid < 0 {
				p.trim(&m.Groups[i], len(m.Groups) == 1)
			}
		}
		mats = append(mats, m)
	}
	return mats
}

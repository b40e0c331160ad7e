package plan

import (
	"cmp"
	"encoding/binary"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/stock"
)

// Every different layout is another drawing to open at the cutter. So when
// loads and fabric are settled, loads are laid alike as far as that costs
// neither: those that hold the same outlines are given one drawing, and what
// lies on the loads of a few layouts is dealt out anew, so that fewer layouts
// hold it (the combining of patterns in cutting stock: Foerster and Wäscher,
// "Pattern reduction in one-dimensional cutting stock problems", Int. J. of
// Production Research 38, 2000; from memory. There a pattern that holds
// enough will do; here it must hold exactly what is needed).

// pattern is loads with the same drawing and the same pieces.
type pattern struct {
	drawing int // the drawing's number
	fabrics []int
	want    []int // pieces of each kind on each of them
	mats    []int // indexes of the attempt's
}

// alike is an attempt with loads laid alike.
type alike struct {
	*maker
	*attempt
	numbers  map[string]int // of the drawings there have been
	drawings []int          // of each mat, the drawing's number
	examples []int          // a mat of each drawing, that cut most often first
	fixed    []bool         // fabrics laid out by rescue: to be left as they are
	most     []int64        // area of each fabric's rough cuts
	work     int            // left: rough cuts laid out, packings weighing packingWork
}

// mostMore is the part that a fabric's rough cuts may grow by together, where
// it takes none more: as much as the ruler's steps add to them anyway. What is
// left over of a step or a panel then stays as useful as it was.
const mostMore = 50

// packingWork is what laying some pieces on a mat in all ways counts for.
const packingWork = 50

// laidAlike gives an attempt fewer different layouts, as far as the effort
// reaches.
//
//	(1) It has as many loads, no more layouts and no more pieces missing, and
//	    of each fabric it takes no more, in buying steps where it is bought.
//	(2) No fabric's rough cuts grow together by more than one part in mostMore.
func (m *maker) laidAlike(a *attempt) *attempt {
	w := &alike{maker: m, attempt: a, numbers: map[string]int{}, fixed: make([]bool, len(m.tables)), work: m.alikeWork()}
	for f, s := range a.spread {
		w.fixed[f] = len(s.layout.Left) > 0 || s.cuts > s.rough+len(s.table.hand)
		area := a.roughArea(f)
		w.most = append(w.most, area+area/mostMore)
	}
	for i := range a.mats {
		w.drawings = append(w.drawings, w.number(&a.mats[i]))
	}
	w.exemplify()
	m.say(Alike)
	for w.unified() || w.dealtAnew() {
	}
	return w.attempt
}

func (m *maker) alikeWork() int {
	switch m.opt.Effort {
	case rect.Quick:
		return 2_000
	case rect.Thorough:
		return 400_000
	}
	return 20_000
}

func (w *alike) spent() bool { return w.work <= 0 || w.stopped() }

// patterns lists what is cut, the drawing that is cut most seldom first,
// without what has to stay as it is.
func (w *alike) patterns() (all []pattern) {
	at := map[string]int{}
	for i := range w.mats {
		if w.stays(i) {
			continue
		}
		want := planned(w.job, w.mats[i:i+1])
		key := binary.AppendUvarint(nil, uint64(w.drawings[i]))
		for _, n := range want {
			key = binary.AppendUvarint(key, uint64(n))
		}
		n, ok := at[string(key)]
		if !ok {
			n = len(all)
			at[string(key)], all = n, append(all, pattern{w.drawings[i], w.fabricsOf(want), want, nil})
		}
		all[n].mats = append(all[n].mats, i)
	}
	slices.SortStableFunc(all, func(a, b pattern) int { return cmp.Compare(len(a.mats), len(b.mats)) })
	return all
}

// stays says that a mat has to stay as it is.
func (w *alike) stays(mat int) bool {
	return slices.ContainsFunc(w.mats[mat].Groups, func(g pack.Group) bool { return w.fixed[g.Fabric] })
}

// number is the number of a mat's drawing.
func (w *alike) number(mat *pack.Mat) int {
	d := w.sketch(mat)
	n, ok := w.numbers[d]
	if !ok {
		n = len(w.numbers)
		w.numbers[d] = n
	}
	return n
}

// exemplify picks the examples.
func (w *alike) exemplify() {
	times := map[int]int{}
	w.examples = nil
	for i, d := range w.drawings {
		if times[d]++; times[d] == 1 {
			w.examples = append(w.examples, i)
		}
	}
	slices.SortStableFunc(w.examples, func(a, b int) int { return cmp.Compare(times[w.drawings[b]], times[w.drawings[a]]) })
}

// unified gives all loads of one drawing another that holds the same.
func (w *alike) unified() bool {
	examples := w.examples
	for i := len(examples) - 1; i >= 0; i-- {
		var mats []int
		fixed := false
		for k, d := range w.drawings {
			if d == w.drawings[examples[i]] {
				mats = append(mats, k)
				fixed = fixed || w.stays(k)
			}
		}
		for k := 0; k < len(examples) && !fixed; k++ {
			if k != i && w.unify(mats, examples[k]) {
				return true
			}
		}
	}
	return false
}

func (w *alike) unify(mats []int, example int) bool {
	var to []laid
	for _, k := range mats {
		l, ok := w.like(&w.mats[k], example)
		if !ok || w.spent() {
			return false
		}
		to = append(to, l)
	}
	return w.take(mats, to)
}

// laid is a mat with its rough cuts as they lie on it.
type laid struct {
	mat   pack.Mat
	rough []stock.Box
}

// like lays a mat's pieces as one of the attempt's lies.
func (w *alike) like(mat *pack.Mat, example int) (laid, bool) {
	out, ok := w.job.Like(mat, &w.mats[example])
	if !ok {
		return laid{}, false
	}
	if len(out.Groups) < len(w.rough[example]) {
		return w.onSteps(out), true
	}
	return laid{out, w.rough[example]}, true
}

// onSteps is a mat with its rough cuts on whole steps of the ruler.
func (w *alike) onSteps(mat pack.Mat) laid {
	mat.Groups = slices.Clone(mat.Groups)
	return laid{mat, w.snapped(&mat)}
}

// mostDealt is how many patterns are dealt out anew together.
const mostDealt = 3

// dealtAnew finds loads of up to mostDealt patterns, or all those of the same
// fabrics, that fewer layouts can hold.
func (w *alike) dealtAnew() bool {
	all := w.patterns()
	for size := 1; size <= mostDealt; size++ {
		if w.choose(all, nil, size) {
			return true
		}
	}
	for i := range all {
		same := sameFabrics(all, i)
		if len(same) > mostDealt && same[0] == i && w.deal(all, same) {
			return true
		}
	}
	return false
}

// choose goes through all sets of so many patterns more of the same fabrics.
func (w *alike) choose(all []pattern, chosen []int, more int) bool {
	if more == 0 {
		return w.deal(all, chosen)
	}
	from := 0
	if len(chosen) > 0 {
		from = chosen[len(chosen)-1] + 1
	}
	for i := from; i < len(all) && !w.spent(); i++ {
		if len(chosen) > 0 && !slices.Equal(all[chosen[0]].fabrics, all[i].fabrics) {
			continue
		}
		if w.choose(all, append(slices.Clip(chosen), i), more-1) {
			return true
		}
	}
	return false
}

func sameFabrics(all []pattern, i int) (out []int) {
	for k := range all {
		if slices.Equal(all[i].fabrics, all[k].fabrics) {
			out = append(out, k)
		}
	}
	return out
}

// fabricsOf lists the fabrics of pieces, ascending.
func (w *alike) fabricsOf(want []int) (out []int) {
	for k, n := range want {
		if n > 0 {
			out = append(out, w.job.Kinds[k].Fabric)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// take changes some mats, if that makes fewer layouts and takes no more
// fabric.
func (w *alike) take(mats []int, to []laid) bool {
	b := *w.attempt
	b.mats, b.rough, b.spread = slices.Clone(b.mats), slices.Clone(b.rough), slices.Clone(b.spread)
	drawings := slices.Clone(w.drawings)
	for i, k := range mats {
		b.mats[k], b.rough[k] = to[i].mat, to[i].rough
		drawings[k] = w.number(&to[i].mat)
	}
	if distinct(drawings) >= distinct(w.drawings) {
		return false
	}
	for i := range b.rough { // place may change them
		b.rough[i] = slices.Clone(b.rough[i])
	}
	changed := make([]bool, len(w.tables))
	for _, k := range mats {
		for _, g := range b.mats[k].Groups {
			changed[g.Fabric] = true
		}
	}
	for f, t := range w.tables {
		if !changed[f] {
			continue
		}
		w.place(&b, f)
		w.work -= 2 * b.spread[f].cuts
		if len(b.spread[f].layout.Left) > 0 || w.cost(t, b.spread[f]) > w.cost(t, w.spread[f]) || b.roughArea(f) > w.most[f] {
			return false
		}
	}
	w.sum(&b)
	w.attempt, w.drawings = &b, drawings
	w.exemplify()
	return true
}

func distinct(numbers []int) int {
	return len(slices.Compact(slices.Sorted(slices.Values(numbers))))
}

// roughArea is the area of a fabric's rough cuts, to compare by.
func (a *attempt) roughArea(f int) (sum int64) {
	for _, c := range a.roughCuts(f) {
		sum += int64(c.W/length.TenthMM) * int64(c.H/length.TenthMM)
	}
	return sum
}

package plan

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
)

// deal is a way to deal pieces out to loads: one share to so many of them and
// another to the rest, if there is a rest.
type deal struct {
	share  [2][]int // pieces of each kind
	times  [2]int
	larger length.Area // of the shares
}

// shares is how many different shares there are.
func (d *deal) shares() int {
	if d.times[1] == 0 {
		return 1
	}
	return 2
}

// mostDeals is how many ways to deal some patterns out anew are looked at.
const mostDeals = 64

// deal deals what lies on the loads of some patterns out anew, in one share
// for all loads or two, where that makes fewer layouts.
func (w *alike) deal(all []pattern, chosen []int) bool {
	var mats []int
	dealt := make([]bool, len(w.drawings))
	total := make([]int, len(w.job.Kinds))
	for _, i := range chosen {
		mats = append(mats, all[i].mats...)
		for _, k := range all[i].mats {
			dealt[k] = true
		}
		for k, n := range all[i].want {
			total[k] += n * len(all[i].mats)
		}
	}
	kept := map[int]bool{} // drawings that stay for others
	for i, d := range w.drawings {
		kept[d] = kept[d] || !dealt[i]
	}
	fresh := -1 // new ones to gain by at most: one less than go
	for _, stays := range kept {
		if !stays {
			fresh++
		}
	}
	if fresh < 0 {
		return false
	}
	for _, d := range w.deals(total, len(mats)) {
		if w.spent() {
			return false
		}
		if w.dealt(d, mats, kept, fresh) {
			return true
		}
	}
	return false
}

// dealt lays a deal out, in at most so many layouts that are new.
func (w *alike) dealt(d deal, mats []int, kept map[int]bool, fresh int) bool {
	var ways [2][]way
	lacking := 0 // shares that no known layout holds
	for s := range d.shares() {
		if ways[s] = w.known(d.share[s], kept); len(ways[s]) == 0 {
			lacking++
		}
	}
	if lacking > fresh {
		return false
	}
	for s := range d.shares() {
		if len(ways[s]) == 0 || lacking < fresh {
			ways[s] = append(ways[s], w.fresh(d.share[s])...)
		}
	}
	if d.shares() == 1 {
		ways[1] = []way{{}}
	}
	for _, a := range ways[0] {
		for _, b := range ways[1] {
			if a.fresh+b.fresh <= fresh && w.takeDeal(d, mats, [2]way{a, b}) {
				return true
			}
		}
	}
	return false
}

// way is a share laid on a mat.
type way struct {
	laid
	fresh int // 1 for a layout that there isn't yet, else 0
}

// mostWays is how many ways to lay a share anew are tried.
const mostWays = 3

// known are the ways to lay a share as other loads are laid that stay.
func (w *alike) known(share []int, kept map[int]bool) (out []way) {
	loose := w.loose(share)
	for _, i := range w.examples {
		if !kept[w.drawings[i]] || len(out) == mostWays {
			continue
		}
		if l, ok := w.like(&loose, i); ok {
			out = append(out, way{l, 0})
		}
	}
	return out
}

// fresh are ways to lay a share anew, that which takes least fabric first.
func (w *alike) fresh(share []int) (out []way) {
	w.work -= packingWork
	all := w.job.Together(share)
	for _, mat := range all[:min(len(all), mostWays)] {
		out = append(out, way{w.onSteps(mat), 1})
	}
	return out
}

// loose is a share as groups whose pieces have no places yet.
func (w *alike) loose(share []int) (m pack.Mat) {
	for _, f := range w.fabricsOf(share) {
		g := pack.Group{Fabric: f}
		for k, n := range share {
			if w.job.Kinds[k].Fabric == f {
				for range n {
					g.Parts = append(g.Parts, pack.Part{Kind: k})
				}
			}
		}
		m.Groups = append(m.Groups, g)
	}
	return m
}

func (w *alike) takeDeal(d deal, mats []int, ways [2]way) bool {
	var to []laid
	for s, n := range d.times {
		for range n {
			to = append(to, ways[s].laid)
		}
	}
	return w.take(mats, to)
}

// deals lists ways to deal pieces out to n loads, each of which holds its
// share by area: a single share if there is one, else those whose larger
// share is least come first. A fussy piece has a rough cut to itself, and
// stays out of it.
func (w *alike) deals(total []int, n int) []deal {
	d := &dealer{job: w.job, total: total, mat: length.Mul(w.job.W, w.job.H)}
	whole := true
	for k, c := range total {
		if c > 0 && w.job.Kinds[k].Fussy {
			return nil
		}
		if c > 0 {
			d.kinds = append(d.kinds, k)
		}
		whole = whole && c%n == 0
	}
	if whole {
		share := slices.Clone(total)
		for k := range share {
			share[k] /= n
		}
		return []deal{{share: [2][]int{share, nil}, times: [2]int{n, 0}}}
	}
	for x := n - 1; 2*x >= n; x-- {
		d.times = [2]int{x, n - x}
		d.share = [2][]int{make([]int, len(total)), make([]int, len(total))}
		d.nodes = mostNodes
		d.split(0, [2]length.Area{})
	}
	slices.SortStableFunc(d.out, func(a, b deal) int { return a.larger.Cmp(b.larger) })
	return d.out
}

// dealer deals kind by kind, in every way that comes out even.
type dealer struct {
	deal
	job   *pack.Job
	mat   length.Area
	total []int
	kinds []int
	nodes int // left
	out   []deal
}

// mostNodes bounds the search for ways to deal to two numbers of loads.
const mostNodes = 2_000

func (d *dealer) split(i int, area [2]length.Area) {
	if d.nodes--; d.nodes < 0 || len(d.out) >= mostDeals {
		return
	}
	if i == len(d.kinds) {
		one := d.deal
		one.share = [2][]int{slices.Clone(d.share[0]), slices.Clone(d.share[1])}
		if one.larger = area[0]; one.larger.Less(area[1]) {
			one.larger = area[1]
		}
		d.out = append(d.out, one)
		return
	}
	k := d.kinds[i]
	x, y, each := d.times[0], d.times[1], d.job.Kinds[k].Outline.Area()
	for a := d.total[k] / x; a >= 0; a-- {
		b := (d.total[k] - a*x) / y
		next := [2]length.Area{area[0].Add(each.Times(a)), area[1].Add(each.Times(b))}
		if (d.total[k]-a*x)%y > 0 || d.mat.Less(next[0]) || d.mat.Less(next[1]) {
			continue
		}
		d.share[0][k], d.share[1][k] = a, b
		d.split(i+1, next)
	}
}

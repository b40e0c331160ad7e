package plan

import (
	"math/bits"
	"slices"
)

// mostExact is how many sets route orders by trying everything.
const mostExact = 10

// route is an order of sets of fabrics in which as few fabrics as can be are
// new, each compared with the set before it, the first with before. Up to
// mostExact sets it is the least there is (dynamic programming over subsets;
// Held and Karp, J. SIAM 10(1), 1962) and of equal orders the first by index;
// with more, each set follows the one that suits best, and sets are then
// moved as long as that helps.
func route(sets [][]int, before []int) []int {
	if len(sets) > mostExact {
		return moved(sets, before, nearest(sets, before))
	}
	n := len(sets)
	// left[last][done] is the cost of all sets not in done, when last, or
	// before at index n, lies on the mat.
	left := make([][]int, n+1)
	for last := range left {
		left[last] = make([]int, 1<<n)
	}
	step := func(last, next, done int) int {
		return newIn(sets[next], setAt(sets, before, last)) + left[next][done|1<<next]
	}
	for done := 1<<n - 2; done >= 0; done-- {
		for last := range left {
			least := -1
			for next := range sets {
				if done>>next&1 == 0 {
					if c := step(last, next, done); least < 0 || c < least {
						least = c
					}
				}
			}
			left[last][done] = least
		}
	}
	var out []int
	for last, done := n, 0; bits.OnesCount(uint(done)) < n; {
		for next := range sets {
			if done>>next&1 == 0 && step(last, next, done) == left[last][done] {
				out, last, done = append(out, next), next, done|1<<next
				break
			}
		}
	}
	return out
}

func setAt(sets [][]int, before []int, i int) []int {
	if i == len(sets) {
		return before
	}
	return sets[i]
}

// newIn counts the fabrics of a set that are not in the one before it.
func newIn(set, before []int) (n int) {
	for _, f := range set {
		if !slices.Contains(before, f) {
			n++
		}
	}
	return n
}

// nearest goes from set to set, each time to the one with fewest new fabrics.
func nearest(sets [][]int, before []int) (out []int) {
	used := make([]bool, len(sets))
	for range sets {
		best := -1
		for i := range sets {
			if !used[i] && (best < 0 || newIn(sets[i], before) < newIn(sets[best], before)) {
				best = i
			}
		}
		used[best], before = true, sets[best]
		out = append(out, best)
	}
	return out
}

// moved takes single sets out of an order and puts them elsewhere, as long as
// that makes fewer fabrics new.
func moved(sets [][]int, before []int, order []int) []int {
	best := changes(sets, before, order)
	for again := true; again; {
		again = false
		for i := range order {
			for k := range order {
				try := slices.Delete(slices.Clone(order), i, i+1)
				try = slices.Insert(try, k, order[i])
				if c := changes(sets, before, try); c < best {
					order, best, again = try, c, true
				}
			}
		}
	}
	return order
}

// changes counts the fabrics that are new along an order.
func changes(sets [][]int, before []int, order []int) (n int) {
	for _, i := range order {
		n += newIn(sets[i], before)
		before = sets[i]
	}
	return n
}

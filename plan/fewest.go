package plan

import (
	"math/bits"

	"example.org/matside/plan/queue"
)

// fewest is a true lower bound on the loads for the pieces planned. The area
// of the pieces must fit the part of the mats the blade reaches, whatever
// fabrics share a mat.
func (m *maker) fewest(q *queue.Queue) queue.Fewest {
	var hi, lo uint64
	for i := range q.Loads {
		for _, p := range q.Loads[i].Pieces {
			h, l := doubleArea(p.Outline)
			var carry uint64
			lo, carry = bits.Add64(lo, l, 0)
			hi += h + carry
		}
	}
	n := atLeast(hi, lo, m)
	return queue.Fewest{Loads: n, Proved: n == len(q.Loads)}
}

// atLeast is how many mats an area of half (hi, lo) takes at least.
func atLeast(hi, lo uint64, m *maker) int {
	if m.job.W <= 0 || m.job.H <= 0 {
		return 0
	}
	mh, ml := bits.Mul64(2*uint64(m.job.W), uint64(m.job.H))
	n := 0
	for hi > 0 || lo > 0 {
		n++
		if hi < mh || hi == mh && lo <= ml {
			break
		}
		var borrow uint64
		lo, borrow = bits.Sub64(lo, ml, 0)
		hi -= mh + borrow
	}
	return n
}

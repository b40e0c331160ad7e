package plan

import (
	"slices"

	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/rect"
)

// prove begins to look for how few loads there can be at the least, beside the
// search for fewer than so many. It takes about as long as that, and the one
// tells the other nothing.
func (m *maker) prove(loads int) {
	if m.proof != nil || loads <= m.job.Lower {
		return
	}
	m.proof = cores.Start(func() int { return m.least(m.job.Counts(), loads, m.opt.Effort) })
}

// fewest is a lower bound on the loads for what an attempt plans. What was
// proved with more loads in mind holds for it too, and is no less than what
// would be proved for its own: beyond those there is nothing to be found.
func (m *maker) fewest(a *attempt) int {
	pieces, proved := planned(m.job, a.mats), m.bound
	if m.proof != nil {
		proved = max(proved, m.proof()) // waited for in any case: nothing goes on once a plan is made
	}
	if !slices.Equal(pieces, m.job.Counts()) { // some are missing
		effort := m.opt.Effort
		if m.stopped() {
			effort = rect.Quick // she waits
		}
		return m.least(pieces, len(a.mats), effort)
	}
	return proved
}

package plan

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/say"
)

// Options of Make; the zero value plans the whole list with usual effort.
type Options struct {
	Effort rect.Effort
	// Wanted says for each line of the list which copies to plan, counted
	// from 1; nil is all of them. For what is cut by hand too, except that a
	// binding is planned whole or, with no copies, not at all.
	Wanted [][]int
	// SkipHand leaves out what is cut by hand: a recut must not reserve it
	// a second time.
	SkipHand bool
	// Used is what has come out of the panels already, or is planned to;
	// new cuts keep clear of it. Sizes are read from FromPanel and HandCut.
	Used []queue.PanelUse
	// First is a label whose pieces come in the earliest loads.
	First string
	// Stop, when it says true, ends the search; the best plan so far is
	// given. It is called often, from one goroutine at a time.
	Stop func() bool
	// Progress, if not nil, is told now and then what is being done.
	Progress func(step say.Sentence)
}

// Make plans a cut list: the fewest pieces missing, then the fewest loads,
// then the least fabric that it finds.
func Make(list *cutlist.List, opt Options) *queue.Queue {
	m := newMaker(list, opt)
	best := m.best()
	a := m.cutOut(best)
	if opt.Effort == rect.Thorough {
		// As many loads may do with less fabric.
		a = front(append(m.thrifty(best), a))[0]
	}
	return m.emit(m.laidAlike(a))
}

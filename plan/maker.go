package plan

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/say"
)

// maker makes one plan.
type maker struct {
	list   *cutlist.List
	opt    Options
	copies [][]int // of each line, still to be planned
	job    *pack.Job
	tables []*table // one for each fabric

	bound int        // a lower bound on the loads for all pieces, found at once
	proof func() int // waits for a better one; nil: not looked for
}

func newMaker(list *cutlist.List, opt Options) *maker {
	opt.Stop = cores.InTurn(opt.Stop) // the bound is looked for beside the search
	m := &maker{list: list, opt: opt, copies: wanted(list, opt)}
	count := make([]int, len(list.Lines))
	for i := range count {
		count[i] = len(m.copies[i])
	}
	m.job = pack.NewJob(list, count, opt.Effort, opt.Stop)
	for f := range list.Fabrics {
		m.tables = append(m.tables, newTable(list, f, m.copies, opt))
	}
	return m
}

// wanted lists the copies of each line that are to be planned.
func wanted(list *cutlist.List, opt Options) [][]int {
	out := make([][]int, len(list.Lines))
	for i := range list.Lines {
		l := &list.Lines[i]
		switch {
		case l.Kind != cutlist.OnMat && opt.SkipHand:
		case opt.Wanted != nil:
			out[i] = opt.Wanted[i]
		case l.Kind == cutlist.Binding:
			out[i] = []int{1}
		default:
			out[i] = make([]int, l.Count)
			for c := range out[i] {
				out[i][c] = c + 1
			}
		}
		if l.Kind == cutlist.Binding {
			out[i] = out[i][:min(1, len(out[i]))]
		}
	}
	return out
}

func (m *maker) say(step *say.Kind) {
	if m.opt.Progress != nil {
		m.opt.Progress(step.Say())
	}
}

func (m *maker) stopped() bool { return m.opt.Stop != nil && m.opt.Stop() }

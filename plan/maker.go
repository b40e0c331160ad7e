package plan

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/stock"
)

// maker makes one plan.
type maker struct {
	list   *cutlist.List
	opt    Options
	copies [][]int // of each line, still to be planned
	job    *pack.Job
	tables []*table // one for each fabric
	limits []pack.Limit
	mats   []pack.Mat
}

func newMaker(list *cutlist.List, opt Options) *maker {
	m := &maker{list: list, opt: opt, copies: wanted(list, opt)}
	count := make([]int, len(list.Lines))
	for i := range count {
		count[i] = len(m.copies[i])
	}
	m.job = pack.NewJob(list, count, opt.Effort, opt.Stop)
	m.limits = make([]pack.Limit, len(list.Fabrics))
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
	}
	return out
}

func (m *maker) say(step string) {
	if m.opt.Progress != nil {
		m.opt.Progress(step)
	}
}

// make packs as if there were fabric enough, sees what the fabric allows,
// and packs again to suit it where it runs short.
func (m *maker) make() *queue.Queue {
	m.say("packing the loads")
	m.pack()
	if m.suit() {
		m.say("packing again to suit the fabric")
		m.pack()
		m.settle()
	}
	return m.queue()
}

// pack packs all loads within the limits and lays their rough cuts out.
func (m *maker) pack() {
	mats, err := m.job.Loads(m.limits)
	if err != nil {
		panic("plan: a piece that fits no mat was packed: " + err.Error())
	}
	m.mats = mats
	for f, t := range m.tables {
		t.lay(m.roughCuts(f))
	}
}

// roughCuts are the rough cuts of a fabric on all mats.
func (m *maker) roughCuts(f int) []stock.Cut {
	var out []stock.Cut
	for i := range m.mats {
		for k := range m.mats[i].Groups {
			if g := &m.mats[i].Groups[k]; g.Fabric == f {
				out = append(out, m.rough(g))
			}
		}
	}
	return out
}

// rough is the rough cut of a group: its box with the margin round it.
func (m *maker) rough(g *pack.Group) stock.Cut {
	return stock.Cut{W: g.W + 2*m.list.Margin, H: g.H + 2*m.list.Margin}
}

// suit finds limits for the fabrics that run short, and says whether there
// were any.
func (m *maker) suit() bool {
	any := false
	for f, t := range m.tables {
		if len(t.layout.Left) > 0 && !t.endless {
			m.limits[f] = m.suited(f)
			any = true
		}
	}
	return any
}

// settle makes good what sharing mats has spoiled: a fabric whose rough cuts
// no longer fit its panels is packed for them piece by piece, and those rough
// cuts are kept.
func (m *maker) settle() {
	again := false
	for f, t := range m.tables {
		if len(t.layout.Left) > 0 && !t.endless && m.limits[f].Groups == nil {
			m.limits[f] = m.cutOut(f, m.limits[f])
			again = true
		}
	}
	if !again {
		return
	}
	mats, err := m.job.Loads(m.limits)
	if err != nil {
		panic("plan: " + err.Error())
	}
	m.mats = mats
	for f, t := range m.tables {
		if m.limits[f].Groups == nil {
			t.lay(m.roughCuts(f))
		}
	}
}

// inset is a panel's side as the box of a rough cut's pieces sees it.
func (m *maker) inset(side length.Len) length.Len { return side - 2*m.list.Margin }

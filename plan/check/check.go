package check

import (
	"fmt"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// Asked is what a queue was to plan.
type Asked struct {
	// Wanted lists, for each of the list's lines, the copies to be planned, each
	// once. For a binding any copy stands for all of its strips, none for leaving
	// it out. Nil asks for everything.
	Wanted [][]int
	// Used is what came out of the panels before, or is planned to.
	Used []queue.PanelUse
}

// Check is every fault of a queue that was to plan its whole cut list, in the
// order of the queue; none means that it can be cut as it stands.
func Check(q *queue.Queue) []Fault { return Against(q, Asked{}) }

// Against is every fault of a queue against what was asked of it.
func Against(q *queue.Queue, asked Asked) []Fault {
	if q.List == nil || asked.Wanted != nil && len(asked.Wanted) != len(q.List.Lines) {
		return []Fault{{Reference, "the plan belongs to another cut list"}}
	}
	c := &checker{queue: q, list: q.List, asked: asked, models: map[pose]*model{}, loadOf: map[int]int{},
		planned: make([]map[int]bool, len(q.List.Lines)), strips: make([]stripTally, len(q.List.Lines)),
		missing: make([]int, len(q.List.Lines))}
	c.loads()
	c.layouts()
	c.stock()
	c.buy()
	c.short()
	c.counts()
	c.bindings()
	c.fewest()
	return c.faults
}

// checker is one check under way.
type checker struct {
	queue  *queue.Queue
	list   *cutlist.List
	asked  Asked
	faults []Fault

	models  map[pose]*model
	loadOf  map[int]int    // a load's index by its number
	planned []map[int]bool // the copies of each line that have been seen
	strips  []stripTally   // what has been seen of each binding
	missing []int          // what is short of each line
	travel  travel
}

// nowhere is where a fault lies that is in no load.
const nowhere = -1

// fault notes what is wrong, in the load with that index or nowhere.
func (c *checker) fault(kind Kind, load int, format string, args ...any) {
	what := fmt.Sprintf(format, args...)
	if load != nowhere {
		what = fmt.Sprintf("load %d: %s", c.queue.Loads[load].Number, what)
	}
	c.faults = append(c.faults, Fault{kind, what})
}

// name is a piece in words.
func (c *checker) name(line, copy int) string {
	l := &c.list.Lines[line]
	label := ""
	if l.Label != "" {
		label = " for " + l.Label
	}
	return fmt.Sprintf("%s %s%s, copy %d (line %d)", l.Shape, l.Size, label, copy, l.Number)
}

// see notes that a copy of a line is planned, once, in a load or nowhere.
func (c *checker) see(line, copy, load int) {
	if c.planned[line] == nil {
		c.planned[line] = map[int]bool{}
	}
	if c.planned[line][copy] {
		c.fault(Count, load, "%s is planned twice", c.name(line, copy))
	}
	c.planned[line][copy] = true
}

// mat is the mat, and usable the part of it the blade reaches.
func (c *checker) mat() (mat, usable outline.Box) {
	m := c.list.Mat
	mat = outline.NewBox(0, 0, m.Width, m.Height)
	return mat, outline.NewBox((m.Width-m.UsableWidth)/2, (m.Height-m.UsableHeight)/2, m.UsableWidth, m.UsableHeight)
}

package check

import (
	"maps"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
)

// buy looks at how much fabric is to be bought: as wide as fabric is sold, a
// whole number of steps, and no step more than it takes.
func (c *checker) buy() {
	bought := map[int]bool{}
	for _, b := range c.queue.Buy {
		if !c.isFabric(b.Fabric) {
			c.fault(Reference, nowhere, "there is fabric to be bought that the list doesn't have")
			continue
		}
		f := &c.list.Fabrics[b.Fabric]
		step := length.Yard / 8
		if c.list.Unit != length.In {
			step = 10 * length.Centimetre
		}
		reach := c.reach(b.Fabric)
		switch {
		case bought[b.Fabric]:
			c.fault(Buy, nowhere, "%s is bought twice", f.Name)
		case len(f.Stock) > 0:
			c.fault(Buy, nowhere, "%s has stock and is not to be bought", f.Name)
		case b.Width != cutlist.BuyWidth || b.Length <= 0 || b.Length%step != 0:
			c.fault(Buy, nowhere, "%s is not sold in %s x %s", f.Name, b.Width, b.Length)
		case washed(b.Length-step, f.ShrinkAlong) >= reach:
			c.fault(Buy, nowhere, "%s of %s is more than it takes", b.Length, f.Name)
		}
		bought[b.Fabric] = true
	}
}

// reach is how far down what is cut from the newly bought panel of a fabric
// goes. That it is not too far is looked at with the panel.
func (c *checker) reach(fabric int) (reach length.Len) {
	for i := range c.queue.Stock {
		u := &c.queue.Stock[i]
		if u.Fabric != fabric || c.used(fabric, u.Panel) != nil {
			continue
		}
		for _, r := range u.RoughCuts {
			reach = max(reach, r.Y+r.Height)
		}
		for _, h := range u.ByHand {
			reach = max(reach, h.Y+h.Height)
		}
	}
	return reach
}

// short looks at what is told to be missing.
func (c *checker) short() {
	told := map[int]bool{}
	for _, s := range c.queue.Short {
		if !c.isFabric(s.Fabric) || len(s.Missing) != len(c.list.Lines) {
			c.fault(Reference, nowhere, "what is short belongs to another list")
			continue
		}
		if told[s.Fabric] {
			c.fault(Short, nowhere, "%s is told to be short twice", c.fabricName(s.Fabric))
		}
		told[s.Fabric] = true
		total := 0
		for i, n := range s.Missing {
			if n < 0 || n > 0 && (c.list.Lines[i].Fabric != s.Fabric || n > c.most(i)) {
				c.fault(Short, nowhere, "%d pieces of line %d can't be short of %s", n, c.list.Lines[i].Number, c.fabricName(s.Fabric))
				continue
			}
			c.missing[i] += n
			total += n
		}
		if total == 0 || s.Length < 0 {
			c.fault(Short, nowhere, "%s is short of %d pieces by %s", c.fabricName(s.Fabric), total, s.Length)
		}
	}
}

// most is how many pieces of a line can be missing.
func (c *checker) most(line int) int {
	l := &c.list.Lines[line]
	if l.Kind != cutlist.Binding {
		return len(c.wanted(line))
	}
	if len(c.wanted(line)) == 0 {
		return 0
	}
	return int(l.Length) // strips at least a nanometre long
}

// wanted is the copies of a line that were asked for.
func (c *checker) wanted(line int) []int {
	l := &c.list.Lines[line]
	switch {
	case c.asked.Wanted != nil:
		return c.asked.Wanted[line]
	case l.Kind == cutlist.Binding:
		return []int{1}
	}
	all := make([]int, l.Count)
	for i := range all {
		all[i] = i + 1
	}
	return all
}

// counts compares the copies planned with those asked for. Where everything was
// asked for, copies are numbered from 1 without a hole, whatever is short.
func (c *checker) counts() {
	for i := range c.list.Lines {
		l := &c.list.Lines[i]
		if l.Kind == cutlist.Binding {
			continue
		}
		wanted := c.wanted(i)
		want := len(wanted) - c.missing[i]
		if c.asked.Wanted == nil {
			wanted = wanted[:max(want, 0)]
		}
		asked := make(map[int]bool, len(wanted))
		for _, n := range wanted {
			asked[n] = true
		}
		have := 0
		for _, n := range sortedKeys(c.planned[i]) {
			if asked[n] {
				have++
			} else {
				c.fault(Count, nowhere, "%s was not asked for", c.name(i, n))
			}
		}
		if have != want {
			c.fault(Count, nowhere, "%d of line %d (%s) are planned, %d should be", have, l.Number, l.Shape, want)
		}
	}
}

func sortedKeys(set map[int]bool) []int {
	return slices.Sorted(maps.Keys(set))
}

// bindings looks at the strips of each binding: long enough together, none of
// them in vain, numbered from 1.
func (c *checker) bindings() {
	for i := range c.list.Lines {
		l := &c.list.Lines[i]
		if l.Kind != cutlist.Binding {
			continue
		}
		t := c.strips[i]
		switch {
		case len(c.wanted(i)) == 0 && t.count > 0:
			c.fault(Count, nowhere, "the binding of line %d was not asked for", l.Number)
		case len(c.wanted(i)) == 0:
		case c.missing[i] == 0 && t.together < l.Length:
			c.fault(Binding, nowhere, "the binding strips of line %d are %s long together, not %s", l.Number, t.together, l.Length)
		case c.missing[i] > 0 && t.together >= l.Length || t.count > 0 && t.together-t.shortest >= l.Length:
			c.fault(Binding, nowhere, "the binding of line %d is long enough without its last strip", l.Number)
		}
		for n := range t.count {
			if !c.planned[i][n+1] {
				c.fault(Count, nowhere, "strip %d of the binding of line %d is missing", n+1, l.Number)
			}
		}
	}
}

// fewest looks at the bound on the number of loads.
func (c *checker) fewest() {
	f, have := c.queue.Fewest, len(c.queue.Loads)
	if f.Loads < 0 || f.Loads > have {
		c.fault(Fewest, nowhere, "%d loads are said to be the fewest, and there are %d", f.Loads, have)
	} else if f.Proved != (f.Loads == have) {
		c.fault(Fewest, nowhere, "of %d loads, with %d the fewest, proved is %v", have, f.Loads, f.Proved)
	}
}

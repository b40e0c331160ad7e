package stock

import (
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

// (1) Spots lie inside their panels and off each other and off what was used
// before; (2) each cut has a spot or is left; (3) straight cuts free them all,
// and what is left.
func TestLay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Custom(func(t *rapid.T) length.Len { return length.Len(rapid.IntRange(1, 30).Draw(t, "side")) * in })
		var panels []Panel
		for range rapid.IntRange(1, 3).Draw(t, "panels") {
			p := Panel{W: 10*in + side.Draw(t, "w"), H: 10*in + side.Draw(t, "h")}
			if rapid.Bool().Draw(t, "used") {
				p.Used = []Box{{2 * in, 3 * in, 4 * in, 5 * in}}
			}
			panels = append(panels, p)
		}
		var cuts []Cut
		for range rapid.IntRange(1, 12).Draw(t, "cuts") {
			cuts = append(cuts, Cut{W: side.Draw(t, "w"), H: side.Draw(t, "h"), Turn: rapid.Bool().Draw(t, "turn"), Hand: rapid.Bool().Draw(t, "hand"),
				Across: rapid.IntRange(0, 5).Draw(t, "across") == 0})
		}
		l := Lay(panels, cuts)
		seen := map[int]bool{}
		for _, s := range l.Spots {
			seen[s.Cut] = true
		}
		for i, c := range cuts {
			left := slices.Contains(l.Left, i)
			if !seen[i] && !left || seen[i] && left && !c.Across {
				t.Errorf("cut %d: placed %v, left %v", i, seen[i], left)
			}
		}
		for p := range panels {
			all := slices.Clone(panels[p].Used)
			for _, s := range l.Spots {
				if s.Panel == p {
					all = append(all, s.Box)
				}
			}
			checkPanel(t, panels[p], append(all, l.Free(p)...))
		}
	})
}

func checkPanel(t *rapid.T, p Panel, all []Box) {
	for i, a := range all {
		if a.W <= 0 || a.H <= 0 {
			t.Errorf("%v is nothing", a)
		}
		if a.X < 0 || a.Y < 0 || a.X+a.W > p.W || a.Y+a.H > p.H {
			t.Errorf("%v is off the panel", a)
		}
		for _, b := range all[:i] {
			if a.X < b.X+b.W && b.X < a.X+a.W && a.Y < b.Y+b.H && b.Y < a.Y+a.H {
				t.Errorf("%v and %v overlap", a, b)
			}
		}
	}
	if !freed(all) {
		t.Errorf("straight cuts don't free %v", all)
	}
}

// freed tries every straight cut along a box's edge.
func freed(all []Box) bool {
	if len(all) < 2 {
		return true
	}
	for _, c := range all {
		var above, below, left, right []Box
		for _, b := range all {
			if b.Y+b.H <= c.Y+c.H {
				above = append(above, b)
			} else if b.Y >= c.Y+c.H {
				below = append(below, b)
			}
			if b.X+b.W <= c.X+c.W {
				left = append(left, b)
			} else if b.X >= c.X+c.W {
				right = append(right, b)
			}
		}
		if len(above)+len(below) == len(all) && len(below) > 0 {
			return freed(above) && freed(below)
		}
		if len(left)+len(right) == len(all) && len(right) > 0 {
			return freed(left) && freed(right)
		}
	}
	return false
}

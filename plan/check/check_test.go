package check

import (
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

func TestGood(t *testing.T) {
	for _, f := range Check(good()) {
		t.Error(f)
	}
}

// Each case breaks the good plan in one place, by one nanometre or one piece
// where that can be, and only faults of that kind are found.
func TestFaults(t *testing.T) {
	cases := []struct {
		kind   Kind
		name   string
		faults int
		spoil  func(q *queue.Queue)
	}{
		{Reference, "a piece in a rough cut that isn't there", 1, func(q *queue.Queue) { q.Loads[0].Pieces[1].RoughCut = 3 }},
		{Reference, "a rough cut of a load that isn't there", 1, func(q *queue.Queue) {
			q.Stock[0].RoughCuts = append(q.Stock[0].RoughCuts, from(5, 0, 31, 8, 1, 1))
		}},
		{Reference, "a piece cut by hand for a line of the mat", 1, func(q *queue.Queue) {
			q.Stock[0].ByHand = append(q.Stock[0].ByHand, hand(squares, 5, 31, 8, 2, 2))
		}},
		{Count, "a copy twice, another not at all", 2, func(q *queue.Queue) { q.Loads[0].Pieces[1].Copy = 1 }},
		{Count, "a copy beyond the last", 2, func(q *queue.Queue) { q.Loads[0].Pieces[3].Copy = 5 }},
		{Count, "one piece short less than told", 1, func(q *queue.Queue) { q.Short = nil }},
		{Count, "one piece short more than told", 1, func(q *queue.Queue) { q.Short[0].Missing[large] = 2 }},
		{Count, "a hole in the copies", 2, func(q *queue.Queue) { q.Loads[1].Pieces[5].Copy = 3 }},
		{Count, "a strip too few", 1, func(q *queue.Queue) { q.Stock[0].ByHand = q.Stock[0].ByHand[1:]; q.Stock[0].ByHand[0].Copy = 1 }},
		{Count, "binding strips numbered with a hole", 1, func(q *queue.Queue) { q.Stock[1].ByHand[2].Copy = 4 }},
		{Outline, "a corner a nanometre off", 1, func(q *queue.Queue) { q.Loads[0].Pieces[4].Outline[1].Y-- }},
		{Outline, "no outline", 1, func(q *queue.Queue) { q.Loads[0].Pieces[4].Outline = nil }},
		{Turn, "one-way, upside down", 1, func(q *queue.Queue) { turnTo(q, 1, 3, 2*outline.QuarterTurn) }},
		{Turn, "crosswise, a quarter turn", 1, func(q *queue.Queue) { turnTo(q, 1, 2, outline.QuarterTurn) }},
		{Turn, "quarter turns only, turned by a sixth", 2, func(q *queue.Queue) { q.List.Lines[hexagons].Grain = cutlist.QuarterTurns }},
		{Turn, "a full turn too far", 1, func(q *queue.Queue) { q.Loads[0].Pieces[0].Turn = outline.FullTurn }},
		{Mirror, "mirrored, face up", 1, func(q *queue.Queue) { q.Loads[0].Pieces[0].Mirrored = true }},
		{Mirror, "face down, as seen from the right side", 1, func(q *queue.Queue) {
			q.Loads[1].Pieces[3].Mirrored = false
			turnTo(q, 1, 3, 0)
		}},
		{Usable, "a nanometre outside", 2, func(q *queue.Queue) {
			for _, l := range q.Loads[2:] { // both, since they share a drawing
				l.Pieces[0].Outline = l.Pieces[0].Outline.Move(-1, 0)
				l.RoughCuts[0].X--
			}
		}},
		{Margin, "a nanometre too little", 1, func(q *queue.Queue) { q.Loads[2].RoughCuts[0].X++ }},
		{Gap, "an overlap of a nanometre", 1, func(q *queue.Queue) {
			l := &q.Loads[0]
			l.Pieces[1].Outline = l.Pieces[1].Outline.Move(-1, 0)
			l.CutLength += in(2) - 1
		}},
		{Gap, "a gap of a nanometre where there is none", 9, func(q *queue.Queue) { q.List.Gap = 1 }},
		{RoughCuts, "they overlap by a nanometre", 1, func(q *queue.Queue) {
			r, f := &q.Loads[0].RoughCuts[1], &q.Stock[0].RoughCuts[2]
			r.X, r.Width, f.Width = r.X-1, r.Width+1, f.Width+1
		}},
		{Mat, "a nanometre over the edge", 1, func(q *queue.Queue) {
			r, f := &q.Loads[0].RoughCuts[0], &q.Stock[0].RoughCuts[1]
			r.Width += r.X + 1
			r.X, f.Width = -1, r.Width
		}},
		{Idle, "a rough cut without a piece", 1, func(q *queue.Queue) {
			q.Loads[2].RoughCuts = append(q.Loads[2].RoughCuts, rough(ink, 1, 3, 3, 1, 1))
			q.Stock[0].RoughCuts = append(q.Stock[0].RoughCuts, from(3, 1, 31, 8, 1, 1))
		}},
		{Fabric, "a piece in another fabric", 1, func(q *queue.Queue) { q.List.Lines[motif].Fabric = ink }},
		{Fussy, "fussy pieces in one rough cut", 4, func(q *queue.Queue) { q.List.Lines[squares].Fussy = true }},
		{FromPanel, "out of no panel", 1, func(q *queue.Queue) { q.Stock[0].RoughCuts = q.Stock[0].RoughCuts[1:] }},
		{FromPanel, "out of two places", 1, func(q *queue.Queue) {
			q.Stock[0].RoughCuts = append(q.Stock[0].RoughCuts, from(3, 0, 31, 8, 2.5, 2.5))
		}},
		{FromPanel, "out of another panel", 1, func(q *queue.Queue) { q.Loads[1].RoughCuts[2].Panel = 1 }},
		{FromPanel, "a nanometre narrower in the fabric", 1, func(q *queue.Queue) { q.Stock[0].RoughCuts[0].Width-- }},
		{OffPanel, "a nanometre over the edge", 1, func(q *queue.Queue) { q.Stock[0].RoughCuts[0].Y++ }},
		{OffPanel, "a buying step too little", 2, func(q *queue.Queue) {
			q.Buy[0].Length, q.Stock[1].Height = in(9), washedSand(9)
		}},
		{PanelShare, "an overlap of a nanometre", 1, func(q *queue.Queue) { q.Stock[0].RoughCuts[0].Y-- }},
		{HandSize, "a nanometre short", 1, func(q *queue.Queue) { q.Stock[0].ByHand[2].Width-- }},
		{HandSize, "turned against the grain", 1, func(q *queue.Queue) { q.List.Lines[border].Grain = cutlist.Lengthwise }},
		{HandSize, "a strip too narrow", 1, func(q *queue.Queue) { q.Stock[0].ByHand[0].Height-- }},
		{Strip, "a nanometre short of the edge", 1, func(q *queue.Queue) { q.Stock[0].ByHand[0].Width-- }},
		{Strip, "not from the edge", 1, func(q *queue.Queue) { q.Stock[0].ByHand[0].X++; q.Stock[0].ByHand[0].Width-- }},
		{Binding, "a nanometre too short together", 1, func(q *queue.Queue) { q.List.Lines[binding].Length = in(120) + 1 }},
		{Binding, "long enough without one", 1, func(q *queue.Queue) { q.List.Lines[binding].Length = in(80) }},
		{Binding, "said to be short and long enough", 1, func(q *queue.Queue) {
			q.Short = append(q.Short, queue.Short{Fabric: sand, Missing: []int{binding: 1, singles: 0}})
		}},
		{Panel, "a nanometre longer than the stock", 1, func(q *queue.Queue) { q.Stock[0].Height++ }},
		{Panel, "longer than what is bought", 1, func(q *queue.Queue) { q.Stock[1].Height++ }},
		{Panel, "nothing bought", 1, func(q *queue.Queue) { q.Buy = nil }},
		{Panel, "a third of two panels", 1, func(q *queue.Queue) { q.Stock[2].Panel, q.Loads[1].RoughCuts[2].Panel = 3, 3 }},
		{Panel, "a panel twice", 1, func(q *queue.Queue) {
			q.Stock = append(q.Stock, q.Stock[0])
			q.Stock[3].RoughCuts, q.Stock[3].ByHand = nil, nil
		}},
		{Buy, "a step too much", 1, func(q *queue.Queue) { q.Buy[0].Length, q.Stock[1].Height = in(18), washedSand(18) }},
		{Buy, "no whole step", 1, func(q *queue.Queue) { q.Buy[0].Length, q.Stock[1].Height = in(13), washedSand(13) }},
		{Buy, "twice", 1, func(q *queue.Queue) { q.Buy = append(q.Buy, q.Buy[0]) }},
		{Buy, "though there is stock", 1, func(q *queue.Queue) {
			q.Buy = append(q.Buy, queue.Buy{Fabric: ink, Width: in(40), Length: in(4.5)})
		}},
		{Short, "of nothing", 1, func(q *queue.Queue) {
			q.Short = append(q.Short, queue.Short{Fabric: sand, Missing: make([]int, len(q.List.Lines))})
		}},
		{Short, "of a line of another fabric", 2, func(q *queue.Queue) {
			q.Short = append(q.Short, queue.Short{Fabric: sand, Missing: []int{squares: 1, singles: 0}})
		}},
		{Fewest, "more than there are", 1, func(q *queue.Queue) { q.Fewest.Loads = 5 }},
		{Fewest, "proved though there may be fewer", 1, func(q *queue.Queue) { q.Fewest.Proved = true }},
		{Fewest, "not proved though none can be fewer", 1, func(q *queue.Queue) { q.Fewest.Loads = 4 }},
		{Layout, "one number for two drawings", 1, func(q *queue.Queue) { q.Loads[1].Layout = 1 }},
		{Layout, "no number", 1, func(q *queue.Queue) { q.Loads[1].Layout = 0 }},
		{Layout, "a nanometre aside in one of two loads", 1, func(q *queue.Queue) {
			l := &q.Loads[3]
			l.Pieces[0].Outline = l.Pieces[0].Outline.Move(1, 0)
			l.RoughCuts[0].X++
		}},
		{CutLength, "a nanometre more than it is", 1, func(q *queue.Queue) { q.Loads[2].CutLength++ }},
		{CutLength, "a shared cut counted twice", 1, func(q *queue.Queue) { q.Loads[0].CutLength += in(2) }},
		{Number, "from 0", 1, func(q *queue.Queue) {
			q.Loads[0].Number = 0
			for i := range q.Stock[0].RoughCuts {
				if f := &q.Stock[0].RoughCuts[i]; f.Load == 1 {
					f.Load = 0
				}
			}
		}},
	}
	broken := map[Kind]bool{Stuck: true} // below
	for _, c := range cases {
		q := good()
		c.spoil(q)
		faults := Check(q)
		for _, f := range faults {
			if f.Kind != c.kind {
				t.Errorf("%v, %s: found %v", c.kind, c.name, f)
			}
		}
		if len(faults) != c.faults {
			t.Errorf("%v, %s: %d faults, want %d: %v", c.kind, c.name, len(faults), c.faults, faults)
		}
		broken[c.kind] = true
	}
	for k := range kindNames {
		if !broken[Kind(k)] {
			t.Errorf("no case breaks a plan by %v", Kind(k))
		}
	}
}

// turnTo turns one piece within its bounding box.
func turnTo(q *queue.Queue, load, piece, turn int) {
	p := &q.Loads[load].Pieces[piece]
	p.Turn = turn
	at := p.Outline.Bounds().Min
	lay(q.List, p, at.X, at.Y)
}

// pinwheel is five pieces by hand round and round, which no cut straight across
// frees. Apart by a nanometre in the right place they come free.
func pinwheel() *queue.Queue {
	l := goodList()
	l.Fabrics = []cutlist.Fabric{{Name: "Ink", Stock: []cutlist.Panel{{Width: in(3), Height: in(3) + 1}}}}
	l.Lines = []cutlist.Line{
		{Kind: cutlist.ByHand, Count: 4, Shape: "rectangle", Outline: outline.Rect(0, 0, in(2), in(1))},
		{Kind: cutlist.ByHand, Count: 1, Shape: "square", Outline: outline.Rect(0, 0, in(1), in(1))},
	}
	return &queue.Queue{List: l, Fewest: queue.Fewest{Proved: true}, Stock: []queue.PanelUse{{Panel: 1, Width: in(3), Height: in(3) + 1, ByHand: []queue.HandCut{
		hand(0, 1, 0, 0, 2, 1), hand(0, 2, 2, 0, 1, 2), hand(0, 3, 1, 2, 2, 1), hand(0, 4, 0, 1, 1, 2), hand(1, 1, 1, 1, 1, 1),
	}}}}
}

func TestStuck(t *testing.T) {
	q := pinwheel()
	if f := Check(q); len(f) != 1 || f[0].Kind != Stuck {
		t.Errorf("a pinwheel: %v", f)
	}
	// The second piece moved to lie under the first one's line comes free with it.
	q.Stock[0].ByHand = []queue.HandCut{
		hand(0, 1, 0, 0, 2, 1), hand(0, 2, 2, 1, 1, 2), hand(0, 3, 0, 2, 2, 1), hand(0, 4, 0, 1, 2, 1), hand(1, 1, 2, 0, 1, 1)}
	if f := Check(q); len(f) != 0 {
		t.Errorf("rows: %v", f)
	}
}

// What was asked for may be less than the list, and fabric may be gone already.
func TestAsked(t *testing.T) {
	q := pinwheel()
	q.Stock[0].ByHand = q.Stock[0].ByHand[:2]
	wanted := [][]int{{1, 2}, nil}
	if f := Against(q, Asked{Wanted: wanted}); len(f) != 0 {
		t.Errorf("two of five: %v", f)
	}
	if f := Against(q, Asked{Wanted: [][]int{{1, 3}, nil}}); len(f) != 2 || f[0].Kind != Count {
		t.Errorf("another copy: %v", f)
	}
	used := []queue.PanelUse{{Panel: 1, RoughCuts: []queue.FromPanel{from(7, 0, 0, 1, 2, 1)}}}
	if f := Against(q, Asked{wanted, used}); len(f) != 0 {
		t.Errorf("beside what was cut before: %v", f)
	}
	used[0].RoughCuts[0].Y--
	if f := Against(q, Asked{wanted, used}); len(f) != 1 || f[0].Kind != PanelShare {
		t.Errorf("over what was cut before: %v", f)
	}
}

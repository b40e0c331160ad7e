package queue

import (
	"slices"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// TestDrawing: two loads are one drawing when the same outlines lie at the same
// places, in any order and from any corner on, whatever pieces they are; else
// not.
func TestDrawing(t *testing.T) {
	outlines := func() []outline.Outline {
		return []outline.Outline{outline.Rect(0, 0, 5, 5), outline.Rect(5, 0, 3, 9), {{X: 9, Y: 0}, {X: 14, Y: 0}, {X: 9, Y: 7}}}
	}
	drawing := func(all []outline.Outline) string {
		var l Load
		for i, o := range all {
			l.Pieces = append(l.Pieces, Placement{Line: i, Outline: o})
		}
		return l.Drawing()
	}
	want := drawing(outlines())
	for what, c := range map[string]struct {
		change func([]outline.Outline) []outline.Outline
		same   bool
	}{
		"as it is":       {func(o []outline.Outline) []outline.Outline { return o }, true},
		"another order":  {func(o []outline.Outline) []outline.Outline { slices.Reverse(o); return o }, true},
		"another corner": {func(o []outline.Outline) []outline.Outline { o[0] = append(o[0][2:], o[0][:2]...); return o }, true},
		"a triangle from its tip": {func(o []outline.Outline) []outline.Outline {
			o[2] = append(o[2][1:], o[2][0])
			return o
		}, true},
		"a nanometre aside":  {func(o []outline.Outline) []outline.Outline { o[1] = o[1].Move(1, 0); return o }, false},
		"one less":           {func(o []outline.Outline) []outline.Outline { return o[1:] }, false},
		"one twice":          {func(o []outline.Outline) []outline.Outline { return append(o, o[0]) }, false},
		"two that are one":   {func(o []outline.Outline) []outline.Outline { return append(o[2:], append(o[0], o[1]...)) }, false},
		"an outline of none": {func(o []outline.Outline) []outline.Outline { return append(o, nil) }, false},
	} {
		if got := drawing(c.change(outlines())) == want; got != c.same {
			t.Errorf("%s: the same is %v", what, got)
		}
	}
}

// TestReach: the lowest edge of all that comes out of a panel.
func TestReach(t *testing.T) {
	u := PanelUse{RoughCuts: []FromPanel{{Y: 3, Height: 4}, {Y: 0, Height: 2}}, ByHand: []HandCut{{Y: 1, Height: 5}}}
	if u.Reach() != 7 {
		t.Errorf("%v", u.Reach())
	}
	if u.ByHand[0].Height++; u.Reach() != 7 {
		t.Errorf("%v", u.Reach())
	}
	if u.ByHand[0].Height++; u.Reach() != 8 {
		t.Errorf("%v", u.Reach())
	}
}

// TestToBuy: what is missing in whole steps as fabric is sold, as wide as the
// widest panel.
func TestToBuy(t *testing.T) {
	const in = length.Inch
	list := &cutlist.List{Fabrics: []cutlist.Fabric{{Stock: []cutlist.Panel{{Width: 7 * in}, {Width: 18 * in}, {Width: 5 * in}}}, {}}}
	for _, c := range []struct {
		unit        length.Unit
		fabric      int
		missing     length.Len
		width, long length.Len
	}{
		{length.In, 0, 10 * in, 18 * in, 27 * in / 2}, {length.In, 0, 9 * in, 18 * in, 9 * in}, {length.In, 0, 9*in + 1, 18 * in, 27 * in / 2},
		{length.Cm, 0, 10 * in, 18 * in, 30 * length.Centimetre}, {length.In, 1, 1, 40 * in, 9 * in / 2}, {length.In, 0, 0, 18 * in, 0},
	} {
		list.Unit = c.unit
		s := Short{Fabric: c.fabric, Length: c.missing}
		if width, long := s.ToBuy(list); width != c.width || long != c.long {
			t.Errorf("%v of fabric %d in %v: %v long, %v wide", c.missing, c.fabric, c.unit, long, width)
		}
	}
}

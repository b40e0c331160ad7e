package bound_test

import (
	"os"
	"testing"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// cut is a piece of a fabric in whole units; alone, it shares no rough cut.
type cut struct {
	piece
	fabric int
	alone  bool
}

// shares tells by exhaustion whether cuts share a w x h mat, groups of one
// fabric each apart from the next: every way to split them into groups, every
// box each group packs in, every packing of the boxes grown by the distance.
func shares(w, h, apart int, cuts []cut) bool {
	return split(w, h, apart, cuts, nil)
}

// split puts the first cut in a group there is or one of its own.
func split(w, h, apart int, cuts []cut, groups [][]cut) bool {
	if len(cuts) == 0 {
		return boxed(w, h, apart, groups, nil)
	}
	c, rest := cuts[0], cuts[1:]
	for i, g := range groups {
		if g[0].fabric == c.fabric && !c.alone && !g[0].alone {
			groups[i] = append(g[:len(g):len(g)], c)
			ok := split(w, h, apart, rest, groups)
			groups[i] = g
			if ok {
				return true
			}
		}
	}
	return split(w, h, apart, rest, append(groups[:len(groups):len(groups)], []cut{c}))
}

// boxed tries the smallest boxes that the first group packs in.
func boxed(w, h, apart int, groups [][]cut, boxes []piece) bool {
	if len(groups) == 0 {
		return packs(w+apart, h+apart, boxes)
	}
	var pieces []piece
	for _, c := range groups[0] {
		pieces = append(pieces, c.piece)
	}
	lowest := h + 1
	for bw := 1; bw <= w; bw++ {
		for bh := 1; bh < lowest; bh++ {
			if packs(bw, bh, pieces) {
				lowest = bh
				if boxed(w, h, apart, groups[1:], append(boxes[:len(boxes):len(boxes)], piece{w: bw + apart, h: bh + apart})) {
					return true
				}
			}
		}
	}
	return false
}

// fewestShared is the least number of mats for cuts that each fit one.
func fewestShared(w, h, apart int, cuts []cut) int {
	all := 1 << len(cuts)
	mats := make([]int, all)
	for m := 1; m < all; m++ {
		mats[m] = len(cuts) + 1
		for s := m; s > 0; s = (s - 1) & m {
			if mats[m&^s]+1 >= mats[m] {
				continue
			}
			var some []cut
			for i, c := range cuts {
				if s>>i&1 == 1 {
					some = append(some, c)
				}
			}
			if shares(w, h, apart, some) {
				mats[m] = mats[m&^s] + 1
			}
		}
	}
	return mats[all-1]
}

// mostCuts is how many pieces brute force is asked to cut.
func mostCuts() int {
	if os.Getenv("MATSIDE_LONG") == "1" {
		return 5
	}
	return 3
}

// efforts are those that are held to brute force.
func efforts() []rect.Effort {
	if os.Getenv("MATSIDE_LONG") == "1" {
		return []rect.Effort{rect.Quick, rect.Usual}
	}
	return []rect.Effort{rect.Quick}
}

// (1) Loads is never above the fewest there can be, found by brute force. The
// pieces are told it as rectangles, and again as outlines of the same boxes.
func TestLoadsTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h, apart := rapid.IntRange(3, 7).Draw(t, "w"), rapid.IntRange(3, 7).Draw(t, "h"), rapid.IntRange(0, 2).Draw(t, "apart")
		var cuts []cut
		for range rapid.IntRange(1, mostCuts()).Draw(t, "n") {
			if len(cuts) > 0 && rapid.Bool().Draw(t, "again") {
				cuts = append(cuts, cuts[len(cuts)-1])
				continue
			}
			cuts = append(cuts, cut{piece{rapid.IntRange(1, min(w, h)).Draw(t, "pw"), rapid.IntRange(1, min(w, h)).Draw(t, "ph"), rapid.Bool().Draw(t, "turn")},
				rapid.IntRange(0, 2).Draw(t, "fabric"), rapid.IntRange(0, 5).Draw(t, "alone") == 0})
		}
		const u = 1234567 * length.Nanometre
		mat := bound.Mat{W: length.Len(w) * u, H: length.Len(h) * u, Apart: length.Len(apart) * u}
		outlines := rapid.Bool().Draw(t, "outlines")
		var pieces []bound.Piece
		for i, c := range cuts {
			if i > 0 && c == cuts[i-1] {
				pieces[len(pieces)-1].Count++
				continue
			}
			pw, ph := length.Len(c.w)*u, length.Len(c.h)*u
			pieces = append(pieces, bound.Piece{Fabric: c.fabric, W: pw, H: ph, Turn: c.turn, Rect: !outlines, Alone: c.alone, Area: length.Mul(pw, ph), Count: 1, Ways: []outline.Outline{outline.Rect(0, 0, pw, ph)}})
			if last := &pieces[len(pieces)-1]; c.turn {
				last.Ways = append(last.Ways, outline.Rect(0, 0, ph, pw))
			}
		}
		most := fewestShared(w, h, apart, cuts)
		for _, e := range efforts() {
			if got := bound.Loads(mat, pieces, bound.Options{Effort: e}); got > most {
				t.Errorf("%d mats needed, it is said, but %d do", got, most)
			}
		}
	})
}

// What is known, and takes the margins to prove.
func TestLoadsKnown(t *testing.T) {
	in := length.Inch
	mat := bound.Mat{W: 11 * in, H: 11 * in, Apart: in / 2}
	square := func(fabric int, eighths, n int) bound.Piece {
		s := length.Len(eighths) * in / 8
		return bound.Piece{Fabric: fabric, W: s, H: s, Turn: true, Rect: true, Area: length.Mul(s, s), Count: n}
	}
	long := func(fabric, n int) bound.Piece {
		w, h := 11*in/2, 19*in/2
		return bound.Piece{Fabric: fabric, W: w, H: h, Turn: true, Rect: true, Area: length.Mul(w, h), Count: n}
	}
	for _, c := range []struct {
		name   string
		pieces []bound.Piece
		want   int
	}{
		{"nothing", nil, 0},
		{"sixteen to a mat", []bound.Piece{square(0, 20, 33)}, 3},
		{"one more than half", []bound.Piece{square(0, 45, 7)}, 7},
		{"beside each other but for the margins", []bound.Piece{square(0, 44, 2), square(1, 44, 2)}, 2},
		{"too large counts for nothing", []bound.Piece{square(0, 90, 5)}, 0},
		{"two of a fabric to a mat, none of two fabrics", []bound.Piece{long(0, 5), long(1, 5), long(2, 5)}, 9},
		// 2 1/4 in and the margin need more than what a 9 in block leaves
		{"no room in the corner", []bound.Piece{square(0, 36, 40), square(1, 18, 32)}, 12},
	} {
		if got := bound.Loads(mat, c.pieces, bound.Options{}); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}

package ruler

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan/length"
)

func TestStripsFirstThenPiecesOfStrips(t *testing.T) {
	// A panel 40 x 30 with two boxes of 10 x 12 in one strip, one below.
	boxes := []Box{{0, 0, 10, 12}, {10, 0, 10, 12}, {0, 12, 15, 8}}
	panel := Box{0, 0, 40, 30}
	strip, rest := Box{0, 0, 40, 12}, Box{0, 12, 40, 18}
	for _, c := range []struct {
		earlier, want []int
		cuts          []Cut
	}{
		{nil, []int{0}, []Cut{{panel, true, 12}, {strip, false, 10}}},
		{[]int{0}, []int{1}, []Cut{{Box{10, 0, 30, 12}, false, 10}}},
		{[]int{0, 1}, []int{2}, []Cut{{rest, true, 8}, {Box{0, 12, 40, 8}, false, 15}}},
		{nil, []int{1, 0}, []Cut{{panel, true, 12}, {strip, false, 10}, {Box{10, 0, 30, 12}, false, 10}}},
	} {
		if got := Cuts(40, 30, boxes, c.earlier, c.want); !reflect.DeepEqual(got, c.cuts) {
			t.Errorf("%v after %v: %v, want %v", c.want, c.earlier, got, c.cuts)
		}
	}
}

func TestABoxThatIsThePanelNeedsNoCut(t *testing.T) {
	if got := Cuts(5, 5, []Box{{0, 0, 5, 5}}, nil, []int{0}); got != nil {
		t.Errorf("%v", got)
	}
}

func TestWhatCannotBePartedEnds(t *testing.T) {
	pinwheel := []Box{{0, 0, 2, 1}, {2, 0, 1, 2}, {1, 2, 2, 1}, {0, 1, 1, 2}}
	for i := range pinwheel {
		Cuts(3, 3, pinwheel, nil, []int{i})
	}
}

// split cuts a piece at random into boxes, some of them waste.
func split(t *rapid.T, b Box, depth int) []Box {
	if depth == 0 || b.W < 4 || b.H < 4 {
		if rapid.IntRange(0, 3).Draw(t, "waste") == 0 {
			return nil
		}
		return []Box{b}
	}
	c := Cut{b, rapid.Bool().Draw(t, "across"), length.Len(rapid.IntRange(1, 3).Draw(t, "at"))}
	one, other := c.parts()
	return append(split(t, one, depth-1), split(t, other, depth-1)...)
}

// Freed one after the other, in any order, each box comes out whole: every
// cut runs through what is in hand and through no box, no cut is made twice,
// and in the end each box is a piece by itself.
func TestEveryBoxComesOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		panel := Box{0, 0, 20, 16}
		boxes := split(t, panel, 4)
		if len(boxes) == 0 {
			return
		}
		order := rapid.Permutation(indexes(len(boxes))).Draw(t, "order")
		pieces := []Box{panel}
		for n, i := range order {
			for _, cut := range Cuts(panel.W, panel.H, boxes, order[:n], []int{i}) {
				at := -1
				for j, p := range pieces {
					if p == cut.Hand {
						at = j
					}
				}
				if at < 0 {
					t.Fatalf("cut %v is of no piece there is: %v", cut, pieces)
				}
				one, other := cut.parts()
				if one.W <= 0 || one.H <= 0 || other.W <= 0 || other.H <= 0 {
					t.Fatalf("cut %v takes nothing off", cut)
				}
				pieces = append(append(pieces[:at:at], pieces[at+1:]...), one, other)
			}
			found := false
			for _, p := range pieces {
				found = found || p == boxes[i]
			}
			if !found {
				t.Fatalf("box %v is not free: %v", boxes[i], pieces)
			}
		}
	})
}

func indexes(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

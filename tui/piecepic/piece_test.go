package piecepic

import (
	"slices"
	"strings"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/shape"
)

const inch = length.Inch

func cut(t *testing.T, s shape.Spec) outline.Outline {
	t.Helper()
	c, err := s.Cut()
	if err != nil {
		t.Fatal(err)
	}
	return c.Outline
}

func TestASquareWithItsSeamAllowance(t *testing.T) {
	got := Piece{outline.Rect(0, 0, 5*inch/2, 5*inch/2), inch / 4, "2 1/2", "2 1/2"}.Draw(18, 7).Lines()
	want := []string{
		"▒▒▒▒▒▒▒▒▒▒▒▒",
		"▒██████████▒",
		"▒██████████▒",
		"▒██████████▒ 2 1/2",
		"▒██████████▒",
		"▒▒▒▒▒▒▒▒▒▒▒▒",
		"   2 1/2",
	}
	if !slices.Equal(got, want) {
		t.Errorf("\n%s", strings.Join(got, "\n"))
	}
}

// Of a half-square triangle half of its square is drawn, in steps of half a
// cell, and none of it is seam allowance where none is told.
func TestATriangleIsHalfOfItsSquare(t *testing.T) {
	o := cut(t, shape.Spec{Kind: shape.HalfSquare, Sizes: []length.Len{3 * inch}})
	got := strings.Join(Piece{o, 0, "", ""}.Draw(21, 11).Lines(), "\n")
	halves := 2*strings.Count(got, "█") + strings.Count(got, "▀") + strings.Count(got, "▄")
	if halves < 190 || halves > 210 || strings.Contains(got, "▒") {
		t.Errorf("%d of 400 half cells:\n%s", halves, got)
	}
}

// However little room there is, the picture is no larger.
func TestNeverLargerThanAsked(t *testing.T) {
	p := Piece{outline.Rect(0, 0, 10*inch, 3*inch), inch / 4, "10", "3"}
	for w := range 40 {
		for h := range 12 {
			if c := p.Draw(w, h); c.W > w || c.H > h {
				t.Fatalf("%d by %d asked, %d by %d drawn", w, h, c.W, c.H)
			}
		}
	}
	// A side twice as long is drawn twice as long.
	c := Piece{outline.Rect(0, 0, 8*inch, 4*inch), 0, "", ""}.Draw(41, 40)
	if row := c.Lines()[0]; len([]rune(row)) != 40 || c.H != 11 {
		t.Errorf("8 x 4 in: %d columns and %d rows", len([]rune(row)), c.H-1)
	}
}

package nest

import (
	"math/big"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// checkLayout is the tests' own exact verdict: it shares nothing with the
// search. Outlines here are convex, so two share no area exactly when a side
// of one has all of the other on its outer side.
func checkLayout(t testing.TB, w, h length.Len, ps []Placed) {
	t.Helper()
	for i, p := range ps {
		for _, c := range p.Outline {
			if c.X < 0 || c.Y < 0 || c.X > w || c.Y > h {
				t.Fatalf("piece %d sticks out at %v", i, c)
			}
		}
		for j, q := range ps[:i] {
			if !farApart(p.Outline, q.Outline, 0) && !sideBetween(p.Outline, q.Outline) && !sideBetween(q.Outline, p.Outline) {
				t.Fatalf("pieces %d and %d overlap", i, j)
			}
		}
	}
}

func sideBetween(a, b outline.Outline) bool {
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		out := true
		for _, c := range b {
			l := new(big.Int).Mul(big.NewInt(int64(q.X-p.X)), big.NewInt(int64(c.Y-p.Y)))
			r := new(big.Int).Mul(big.NewInt(int64(q.Y-p.Y)), big.NewInt(int64(c.X-p.X)))
			out = out && l.Cmp(r) <= 0
		}
		if out {
			return true
		}
	}
	return false
}

func TestMost(t *testing.T) {
	for _, c := range []struct {
		name  string
		o     outline.Outline
		w, h  float64
		least int
	}{
		{"half-square triangle 3 7/8", halfSquare(3.875), 11, 11, 13},
		{"quarter-square triangle 5 1/4", quarterSquare(5.25), 11, 11, 16},
		{"hexagon 1.2887", hexagon(1.2887), 11.5, 11.5, 24},
		{"circle 1.9", circle(1.9, 64), 8, 8, 16},
	} {
		t.Run(c.name, func(t *testing.T) {
			ps := Most(in(c.w), in(c.h), 0, Item{Outline: c.o, Turns: quarters}, Options{Effort: rect.Quick})
			checkLayout(t, in(c.w), in(c.h), ps)
			if len(ps) < c.least {
				t.Errorf("%d laid, want %d", len(ps), c.least)
			}
		})
	}
}

// Rows of pieces that may not be turned: a short row at the left and one at the
// right must not be taken for one row.
func TestRowsOneWay(t *testing.T) {
	m := newModel(newContainer(in(11), in(11), 0), []Item{{Outline: halfSquare(2.875), Turns: []int{0}, Count: 1000}})
	if n := len(m.stacked(0, 1000)); n < 12 {
		t.Errorf("%d laid, want 12", n)
	}
}

// The targets as whole jobs, and mixed ones: every piece laid, in few loads.
func TestJobs(t *testing.T) {
	for _, j := range append(equalJobs, mixedJobs...) {
		if loads := j.fill(t, rect.Quick); loads > j.loads {
			t.Errorf("%s: %d loads, want %d", j.name, loads, j.loads)
		}
	}
}

// fill fills container after container until all is laid, each layout as often
// as the pieces left allow, and says how many that takes.
func (j *job) fill(t testing.TB, effort rect.Effort) (loads int) {
	sheet := NewSheet(j.side, j.side, j.gap, j.items, Options{Effort: effort})
	left := newModel(newContainer(j.side, j.side, j.gap), j.items).counts()
	for total(left) > 0 {
		ps := sheet.Fill(left, nil)
		if len(ps) == 0 {
			t.Fatalf("%s: %v left and nothing laid", j.name, left)
		}
		if j.gap == 0 {
			checkLayout(t, j.side, j.side, ps)
		}
		used := make([]int, len(left))
		for _, p := range ps {
			used[p.Item]++
		}
		for again := true; again; loads++ {
			for i, n := range used {
				left[i] -= n
				again = again && left[i] >= n
			}
		}
	}
	return loads
}

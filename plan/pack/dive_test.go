package pack

import (
	"slices"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// onMats is a list of lines for a mat of 12 x 12 in, 11 x 11 of it usable.
func onMats(fabrics int, lines ...cutlist.Line) *cutlist.List {
	return &cutlist.List{Margin: in / 4, Mat: cutlist.Mat{Width: 12 * in, Height: 12 * in, UsableWidth: 11 * in, UsableHeight: 11 * in},
		Fabrics: make([]cutlist.Fabric, fabrics), Lines: lines}
}

// draw is a job of a few rectangles in three fabrics.
func draw(t *rapid.T) *Job {
	l := onMats(3)
	var count []int
	for n := range rapid.IntRange(1, 6).Draw(t, "lines") {
		side := func() length.Len { return length.Len(rapid.IntRange(8, 60).Draw(t, "eighths")) * in / 8 }
		l.Lines = append(l.Lines, cutlist.Line{Fabric: n % 3, Outline: outline.Rect(0, 0, side(), side())})
		count = append(count, rapid.IntRange(1, 30).Draw(t, "count"))
	}
	return NewJob(l, count, rect.Quick, nil)
}

// (1) A dive packs what is needed, no more; (2) no load that the relaxation
// knows holds more than that.
func TestDive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t).solver(make([]Limit, 3))
		pool, err := s.start()
		if err != nil {
			t.Fatal(err)
		}
		d, loads := s.dive(pool)
		left := s.all.clone()
		for i := range loads {
			left.addLoad(&loads[i], -1)
		}
		if slices.ContainsFunc(left.want, func(n int) bool { return n != 0 }) {
			t.Errorf("(1) left over of each kind: %v", left.want)
		}
		for i := range d.pool {
			if s.all.times(&d.pool[i]) < 1 {
				t.Errorf("(2) a load of more than is needed: %+v", d.pool[i])
			}
		}
	})
}

// Nine pieces, no two alike, each a rough cut of its own, lie on one mat in
// three rows. Priced as if there were nine of the dearest, no mat of several
// would pay.
func TestDiveOfUnlikePieces(t *testing.T) {
	l := onMats(1)
	var count []int
	for n := range 9 {
		side := 3*in + length.Len(n)*in/64
		l.Lines, count = append(l.Lines, cutlist.Line{Fussy: true, Outline: outline.Rect(0, 0, side, side)}), append(count, 1)
	}
	s := NewJob(l, count, rect.Usual, nil).solver(make([]Limit, 1))
	pool, err := s.start()
	if err != nil {
		t.Fatal(err)
	}
	if _, loads := s.dive(pool); len(pool) != 9 || len(loads) != 1 {
		t.Errorf("%d loads out of %d, want 1 out of 9", len(loads), len(pool))
	}
}

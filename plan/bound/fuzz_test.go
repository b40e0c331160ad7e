package bound

import (
	"os"
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// choices are what a fuzzer chooses, one byte at a time; when they run out,
// the rest are 0.
type choices []byte

func (c *choices) of(n int) int {
	if len(*c) == 0 {
		return 0
	}
	b := int((*c)[0])
	*c = (*c)[1:]
	return b % n
}

// mats is a cutting that is known to be possible: mats cut along straight
// lines into boxes of one fabric each, margins between them left over, and the
// boxes into pieces without a rest. Sides are few whole units, so that the
// same pieces come again and again.
type mats struct {
	*choices
	Mat
	unit   length.Len
	turns  bool
	pieces []Piece
}

// cut cuts a mat or what is left of it into boxes.
func (m *mats) cut(w, h length.Len, depth int) {
	switch n := m.of(4); {
	case depth > 0 && n == 1 && w > 2*m.unit+m.Apart:
		x := m.part(w - m.Apart)
		m.cut(x, h, depth-1)
		m.cut(w-m.Apart-x, h, depth-1)
	case depth > 0 && n == 2 && h > 2*m.unit+m.Apart:
		y := m.part(h - m.Apart)
		m.cut(w, y, depth-1)
		m.cut(w, h-m.Apart-y, depth-1)
	case n == 3 && m.of(3) == 0:
		m.add(outline.Rect(0, 0, w, h), m.of(3), true)
	default:
		m.fill(w, h, m.of(3), 4)
	}
}

// part is a part of a side, of whole units where it has two.
func (m *mats) part(side length.Len) length.Len {
	n := int(side / m.unit)
	if n < 2 {
		return max(1, side/2)
	}
	return m.unit * length.Len(1+m.of(n-1))
}

// fill cuts a box into pieces of a fabric.
func (m *mats) fill(w, h length.Len, fabric, depth int) {
	switch n := m.of(8); {
	case depth > 0 && n < 3 && w > 2*m.unit+m.Gap:
		x := m.part(w - m.Gap)
		m.fill(x, h, fabric, depth-1)
		m.fill(w-m.Gap-x, h, fabric, depth-1)
	case depth > 0 && n < 6 && h > 2*m.unit+m.Gap:
		y := m.part(h - m.Gap)
		m.fill(w, y, fabric, depth-1)
		m.fill(w, h-m.Gap-y, fabric, depth-1)
	case n%3 == 1 && m.Gap == 0:
		m.add(corner(w, h), fabric, false)
		m.add(outline.Outline{{X: w}, {X: w, Y: h}, {Y: h}}, fabric, false)
	case n%3 == 2 && w > 2:
		m.add(slope(w, h), fabric, false)
		if m.Gap == 0 {
			m.add(corner(w/2, h), fabric, false)
			m.add(outline.Outline{{}, {X: w - w/2}, {X: w - w/2, Y: h}}, fabric, false)
		}
	default:
		m.add(outline.Rect(0, 0, w, h), fabric, false)
	}
}

// add adds a piece to its kind.
func (m *mats) add(o outline.Outline, fabric int, alone bool) {
	b := o.Bounds()
	p := Piece{Fabric: fabric, W: b.Width(), H: b.Height(), Turn: m.turns, Rect: o.IsRect(), Alone: alone, Area: o.Area(), Count: 1, Ways: []outline.Outline{o}}
	if m.turns {
		p.Ways = waysOf(o)
	}
	if p.Rect {
		p.Area = p.Area.Add(length.Mul(p.W+p.H, m.Gap))
	}
	at := slices.IndexFunc(m.pieces, func(q Piece) bool {
		return q.Fabric == p.Fabric && q.Alone == p.Alone && among(q.Ways, p.Ways[0])
	})
	if at < 0 {
		m.pieces = append(m.pieces, p)
		return
	}
	m.pieces[at].Count++
}

// cutUp reads mats out of a fuzzer's choices.
func cutUp(data []byte) (m *mats, count int) {
	c := choices(data)
	const eighth = in / 8
	m = &mats{choices: &c, unit: []length.Len{in, 3 * in / 2, 11 * in / 4, 5 * in, 23_456_789}[c.of(5)], turns: c.of(2) == 0}
	m.Mat = Mat{W: 8*in + eighth*length.Len(c.of(40)), H: 8*in + eighth*length.Len(c.of(60)), Apart: []length.Len{0, in / 4, in / 2}[c.of(3)]}
	if c.of(4) == 0 {
		m.Gap = []length.Len{eighth, 3_333_333}[c.of(2)]
		m.Apart = max(m.Apart, m.Gap)
		m.Keep = m.Gap * 70 / 99
	}
	count = 1 + c.of(4)
	if c.of(2) == 0 {
		m.cut(m.W, m.H, 3)
		for i := range m.pieces {
			m.pieces[i].Count *= count
		}
		return m, count
	}
	for range count {
		m.cut(m.W, m.H, 3)
	}
	return m, count
}

// (1) of Loads: no more mats are said to be needed than were cut up. Mats cut
// up are full, so that the bound is close to where it would be false.
func FuzzLoads(f *testing.F) {
	f.Add([]byte{0, 0, 24, 24, 2, 1, 3, 1, 1, 3, 2, 0, 2, 1, 5, 0, 2, 3, 7})
	f.Add([]byte{1, 1, 24, 24, 2, 1, 1, 0, 0, 1, 1, 1, 1, 4, 1, 7, 2, 2, 2})
	f.Add([]byte("mats are cut up by what is written here, one letter after the other"))
	f.Add([]byte{2, 0, 24, 24, 0, 0, 1, 3, 1, 3, 0, 1, 4, 4, 4, 4, 1, 1, 2, 2, 3, 3, 7, 7, 8, 8})
	f.Add([]byte{3, 0, 39, 59, 1, 2, 2, 1, 2, 2, 1, 7, 6, 5, 4, 3, 2, 1, 0, 9, 8, 7, 6, 5, 4, 3, 2, 1})
	tried := []spending{{30_000, 1_000_000, 12, 24, 200, 4, 1 << 18}}
	if os.Getenv("MATSIDE_LONG") == "1" {
		tried = append(tried, spentOn(rect.Usual))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		m, count := cutUp(data)
		if len(m.pieces) > 12 {
			return // slow
		}
		for _, spent := range tried {
			if n := newSharing(m.Mat, m.pieces).loads(Options{}, spent); n > count {
				t.Errorf("%d mats were cut up, but %d are said to be needed of %+v for %+v, spending %+v", count, n, m.Mat, m.pieces, spent)
			}
		}
	})
}

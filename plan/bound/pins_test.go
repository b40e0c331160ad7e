package bound

import (
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/nest"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

const in = length.Inch

// waysOf are an outline's quarter turns.
func waysOf(o outline.Outline) (out []outline.Outline) {
	for q := range 4 {
		if w := o.Turn(q * outline.QuarterTurn).Normalise(); !among(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// corner is the triangle with a square corner and short sides a and b; slope
// the one with side a and height b.
func corner(a, b length.Len) outline.Outline { return outline.Outline{{}, {X: a}, {Y: b}} }
func slope(a, b length.Len) outline.Outline  { return outline.Outline{{X: a / 2}, {X: a, Y: b}, {Y: b}} }

// hexagon has its flats across; 1351/780 is √3 to six digits.
func hexagon(side length.Len) outline.Outline {
	h := side * 1351 / 780
	return outline.Outline{{X: side / 2}, {X: 3 * side / 2}, {X: 2 * side, Y: h / 2}, {X: 3 * side / 2, Y: h}, {X: side / 2, Y: h}, {Y: h / 2}}
}

func arrow(a length.Len) outline.Outline {
	return outline.Outline{{X: a / 2}, {X: a, Y: a}, {X: a / 2, Y: a / 2}, {Y: a}}
}

func drawShape(t *rapid.T) outline.Outline {
	side := func() length.Len { return length.Len(rapid.Int64Range(int64(in), int64(6*in)).Draw(t, "side")) }
	switch rapid.IntRange(0, 4).Draw(t, "shape") {
	case 0:
		return outline.Rect(0, 0, side(), side())
	case 1:
		return corner(side(), side())
	case 2:
		return slope(side(), side())
	case 3:
		return hexagon(side() / 2)
	}
	return arrow(side())
}

// What an imprint has is inside the outline, strictly, at all ends of its
// cell; and every place is in a cell. Sides are often whole pitches, so that
// points come to lie on the outline.
func TestImprints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, w, h := drawShape(t), 12*in, 13*in
		l := newLattice(w, h, rapid.IntRange(8, 20).Draw(t, "points"))
		if n := rapid.IntRange(0, 5).Draw(t, "pitches"); n > 0 {
			side := length.Len(int64(n+1) * l.pitch / half)
			o = []outline.Outline{outline.Rect(0, 0, side, side), corner(side, side), slope(side, side)}[n%3]
		}
		cut := rapid.SampledFrom([]int64{1, 2, finest}).Draw(t, "cut")
		s, b := l.pitch/cut, o.Bounds()
		all := l.imprints(o, cut)
		if len(all) != int(cut*cut) {
			t.Fatalf("%d imprints", len(all))
		}
		x := rapid.Int64Range(0, half*int64(w-b.Width())).Draw(t, "x") - l.x0
		y := rapid.Int64Range(0, half*int64(h-b.Height())).Draw(t, "y") - l.y0
		found := false
		for k, im := range all {
			rx, ry := int64(k)/cut*s, int64(k)%cut*s
			i, j := int(floorDiv(x-rx, l.pitch)), int(floorDiv(y-ry, l.pitch))
			if x-rx-int64(i)*l.pitch < s && y-ry-int64(j)*l.pitch < s {
				found = found || im.a <= i && i < im.a+im.na && im.b <= j && j < im.b+im.nb
			}
			for _, end := range [][2]int64{{rx, ry}, {rx + s - 1, ry}, {rx, ry + s - 1}, {rx + s - 1, ry + s - 1}} {
				laid := make(outline.Outline, len(o))
				for i, p := range o {
					laid[i] = outline.Point{X: half*p.X + length.Len(end[0]), Y: half*p.Y + length.Len(end[1])}
				}
				for _, r := range im.runs {
					for _, i := range []int{r.from, r.to} {
						if !inside(laid, outline.Point{X: length.Len(int64(i) * l.pitch), Y: length.Len(int64(r.row) * l.pitch)}) {
							t.Fatalf("point %d in row %d is not inside %v", i, r.row, laid)
						}
					}
				}
			}
		}
		if !found {
			t.Fatal("a place in no cell")
		}
	})
}

// inside counts the sides that a ray crosses; what lies on a side is outside.
func inside(o outline.Outline, p outline.Point) bool {
	in := false
	for i, a := range o {
		b := o[(i+1)%len(o)]
		box := outline.Outline{a, b}.Bounds()
		if outline.Orient(a, b, p) == 0 && box.Min.X <= p.X && p.X <= box.Max.X && box.Min.Y <= p.Y && p.Y <= box.Max.Y {
			return false
		}
		if a.Y > b.Y {
			a, b = b, a
		}
		if a.Y <= p.Y && p.Y < b.Y && outline.Orient(a, b, p) > 0 {
			in = !in
		}
	}
	return in
}

// some calls do with so many seeds, ten times as many in the long form.
func some(t *testing.T, n uint64, do func(t *testing.T, r *rand.Rand)) {
	if os.Getenv("MATSIDE_LONG") == "1" {
		n *= 10
	}
	for seed := range n {
		if do(t, rand.New(rand.NewPCG(seed, 4))); t.Failed() {
			t.Fatalf("with seed %d", seed)
		}
	}
}

// upTo is a length from a to b.
func upTo(r *rand.Rand, a, b length.Len) length.Len { return a + length.Len(r.Int64N(int64(b-a+1))) }

// (1), with a gap and without: as many as a layout has are not too many.
func TestPinsHoldForLayouts(t *testing.T) {
	some(t, 6, func(t *testing.T, r *rand.Rand) {
		w, h, side := upTo(r, 8*in, 12*in), 11*in, upTo(r, 2*in, 5*in)
		gap := []length.Len{0, 0, in / 8, 3_333_333}[r.IntN(4)]
		o := []outline.Outline{corner(side, side), corner(side, 3*in), slope(side, side/2), slope(side, side), hexagon(side / 2), arrow(side)}[r.IntN(6)]
		turns := []int{0, outline.QuarterTurn, 2 * outline.QuarterTurn, 3 * outline.QuarterTurn}
		laid := len(nest.Most(w, h, gap, nest.Item{Outline: o, Turns: turns}, nest.Options{Effort: rect.Quick}))
		p := Piece{W: o.Bounds().Width(), H: o.Bounds().Height(), Turn: true, Rect: o.IsRect(), Area: o.Area(), Count: laid, Ways: waysOf(o)}
		s := newSharing(Mat{W: w, H: h, Gap: gap}, []Piece{p})
		w, h = w+s.rim(), h+s.rim()
		one := []shape{{ways: s.shapes[0].ways, area: s.shapes[0].area, count: 1}}
		spent := spending{first: 150, last: 200}
		for by, pins := range map[string]*pins{
			"linear programs": linearly(w, h, one, movesOf(w == h, one), spent),
			"the game":        playing(w, h, one, movesOf(w == h, one), 40_000),
		} {
			if pins == nil || pins.worth[0] <= 0 {
				continue
			}
			if n := pins.whole / pins.worth[0]; int64(laid) > n {
				t.Errorf("%d of %v are laid, but it is said by %s that no more than %d can be", laid, o, by, n)
			}
		}
	})
}

// halves is a mat cut up: boxes down to about a size, each left whole or cut
// into triangles. Boxes are those that it was cut along, with what they hold.
type halves struct {
	pieces []outline.Outline
	boxes  []outline.Box
	held   [][]int
}

func (c *halves) cut(r *rand.Rand, b outline.Box, depth int) {
	first := len(c.pieces)
	w, h := b.Width(), b.Height()
	part := func(side length.Len) length.Len {
		return side * length.Len(3+r.IntN(5)) / 10
	}
	switch n := r.IntN(6); {
	case depth > 0 && (n < 2 || w > 7*in):
		x := part(w)
		c.cut(r, outline.NewBox(b.Min.X, b.Min.Y, x, h), depth-1)
		c.cut(r, outline.NewBox(b.Min.X+x, b.Min.Y, w-x, h), depth-1)
	case depth > 0 && (n < 4 || h > 7*in):
		y := part(h)
		c.cut(r, outline.NewBox(b.Min.X, b.Min.Y, w, y), depth-1)
		c.cut(r, outline.NewBox(b.Min.X, b.Min.Y+y, w, h-y), depth-1)
	case n%3 == 0:
		c.pieces = append(c.pieces, corner(w, h), outline.Outline{{X: w}, {X: w, Y: h}, {Y: h}})
	case n%3 == 1:
		c.pieces = append(c.pieces, slope(w, h), corner(w/2, h), outline.Outline{{}, {X: w - w/2}, {X: w - w/2, Y: h}})
	default:
		c.pieces = append(c.pieces, outline.Rect(0, 0, w, h))
	}
	var held []int
	for i := first; i < len(c.pieces); i++ {
		held = append(held, i)
	}
	c.boxes, c.held = append(c.boxes, b), append(c.held, held)
}

// (1), (2): mats cut up without a rest are filled by their pieces, and so is
// every box that was cut, but no more than filled; Loads says no more mats.
func TestPinsHoldForMatsCutUp(t *testing.T) {
	some(t, 4, func(t *testing.T, r *rand.Rand) {
		w, h := 11*in, upTo(r, 8*in, 16*in)
		c := &halves{}
		c.cut(r, outline.NewBox(0, 0, w, h), 4)
		mats := 1 + r.IntN(3)
		mat := Mat{W: w, H: h}
		s := newSharing(mat, nil)
		var pieces []Piece
		var shapes []int
		for _, o := range c.pieces {
			b := o.Bounds()
			p := Piece{W: b.Width(), H: b.Height(), Turn: true, Rect: o.IsRect(), Area: o.Area(), Count: mats, Ways: waysOf(o)}
			pieces, shapes = append(pieces, p), append(shapes, s.shapeOf(p))
		}
		if n := Loads(mat, pieces, Options{Effort: rect.Quick}); n > mats {
			t.Errorf("%d loads are said to be needed for %d mats", n, mats)
		}
		s.stick(Options{}, spentOn(rect.Quick))
		for _, pins := range s.pins {
			for i, b := range c.boxes {
				var worth int64
				for _, k := range c.held[i] {
					worth += pins.worth[shapes[k]]
				}
				if most := pins.within(b.Width(), b.Height()); worth > most {
					t.Errorf("a box of %v x %v holds %d, more than %d", b.Width(), b.Height(), worth, most)
				}
			}
		}
	})
}

// (3) and that the same is found again.
func TestPinsAlike(t *testing.T) {
	shapes := []shape{{ways: waysOf(corner(3*in, 3*in)), area: corner(3*in, 3*in).Area(), count: 5}, {ways: waysOf(hexagon(in)), area: hexagon(in).Area(), count: 9}}
	p := stickFor(11*in, 11*in, shapes, []int{5, 9}, spentOn(rect.Quick))
	q := stickFor(11*in, 11*in, shapes, []int{5, 9}, spentOn(rect.Quick))
	if !slices.Equal(p.sums, q.sums) || !slices.Equal(p.worth, q.worth) {
		t.Error("other pins the second time")
	}
	moves := movesOf(true, shapes)
	if len(moves) != 3 {
		t.Errorf("%d moves", len(moves))
	}
	for i := range p.n {
		for j := range p.m {
			for _, m := range moves {
				k, l := m.point(p.lattice, i, j)
				if p.window(i, j, 1, 1) != p.window(k, l, 1, 1) {
					t.Fatalf("the pin at %d, %d is not the one at %d, %d", i, j, k, l)
				}
			}
		}
	}
}

// How many of one shape 11 x 11 in can hold at the most, by pins and by area,
// and how many nest lays.
func TestPinsKnown(t *testing.T) {
	for _, c := range []struct {
		name         string
		o            outline.Outline
		byArea, most int64
	}{
		{"quarter-square triangles 9 1/4", slope(37*in/4, 37*in/8), 5, 4},
		{"quarter-square triangles 7 1/4", slope(29*in/4, 29*in/8), 9, 8},
		{"half-square triangles 6 7/8", corner(55*in/8, 55*in/8), 5, 3},
		{"half-square triangles 4 finished", corner(123_280_256, 123_280_256), 10, 9},
		{"half-square triangles 5 finished", corner(148_680_256, 148_680_256), 7, 5},
		{"hexagons 2", hexagon(2 * in), 11, 9},
		{"hexagons 2 1/4", hexagon(9 * in / 4), 9, 6},
	} {
		p := stickFor(11*in, 11*in, []shape{{ways: waysOf(c.o), area: c.o.Area()}}, []int{1}, spentOn(rect.Usual))
		if n := length.Mul(11*in, 11*in).FloorDiv(c.o.Area()); n != c.byArea {
			t.Errorf("%s: %d by area", c.name, n)
		}
		if n := p.whole / p.worth[0]; n != c.most {
			t.Errorf("%s: %d a mat, want %d", c.name, n, c.most)
		}
	}
}

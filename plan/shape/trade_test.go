package shape

import (
	"math"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// Published allowances at a seam of 1/4 in, each with its page. A published rule
// is one of three: exact; safe, that is a little more than the true size, as
// ruler sizes are; or too small, and then the true value is the one to cut.

// grownBy is the SIZE that a finished shape is cut in; with ruler, as
// `allowance ruler` gives it.
func grownBy(t *testing.T, s Spec, ruler bool) []length.Len {
	t.Helper()
	s.Finished, s.Ruler, s.Seam = true, ruler, quarter
	return mustCut(t, s).Sizes
}

// near says whether l is x inches to within some of them.
func near(l length.Len, x, within float64) bool {
	return math.Abs(float64(l)/float64(length.Inch)-x) <= within
}

// The rules of the trade that ruler sizes reproduce to the nanometre.
func TestRulerIsWhatIsPublished(t *testing.T) {
	cases := []struct {
		source string
		spec   Spec
		want   []length.Len
	}{
		// Square and rectangle +1/2: thesprucecrafts.com/cut-patchwork-shapes-for-quilts-2821913;
		// smartplatequilting.com/?p=447.
		{"square", Spec{Kind: Square, Sizes: ins(4)}, ins(4.5)},
		{"rectangle", Spec{Kind: Rectangle, Sizes: ins(2, 4)}, ins(2.5, 4.5)},
		// Half-square triangle +7/8: karencombs.com/page.php?ID=31; ukqu.co.uk/size-i-cut-triangles/;
		// allpeoplequilt.com/print/325998; mountainstarsquiltersguild.org.
		{"half-square 2", Spec{Kind: HalfSquare, Sizes: ins(2)}, ins(2.875)},
		{"half-square 3", Spec{Kind: HalfSquare, Sizes: ins(3)}, ins(3.875)},
		{"half-square 4 1/2", Spec{Kind: HalfSquare, Sizes: ins(4.5)}, ins(5.375)},
		// Quarter-square triangle +1 1/4: karencombs.com; allpeoplequilt.com.
		{"quarter-square 3", Spec{Kind: QuarterSquare, Sizes: ins(3)}, ins(4.25)},
		// Equilateral strip +3/4: quilting.about.com cutting_shapes_5;
		// chrisandbarbaraquilts rotary-cutting-part-6.
		{"equilateral 3", Spec{Kind: Equilateral, Sizes: ins(3)}, ins(3.75)},
		// The same by its edge, +7/8: quilting.about.com cutting_shapes_5.
		{"equilateral edge 3", Spec{Kind: Equilateral, Sizes: ins(3), Measure: Side}, ins(3.875)},
		// Diamonds, strip +1/2: chrisandbarbara parts 6 and 7; francesquilts.com/2022/08/14.
		{"diamond 60 from a strip of 3 1/2", Spec{Kind: Diamond, Sizes: ins(3), Degrees: 60, Measure: Height}, ins(3.5)},
		{"diamond 45 from a strip of 2 1/2", Spec{Kind: Diamond, Sizes: ins(2), Degrees: 45, Measure: Height}, ins(2.5)},
		// Hexagon flat to flat +1/2: softsolder.com/2020/07/27.
		{"hexagon by its height", Spec{Kind: Hexagon, Sizes: ins(2.25), Measure: Height}, ins(2.75)},
		// Half-rectangle 1:2, +11/16 and +1 5/16 (from memory): rounded on to eighths.
		{"half-rectangle 1:2", Spec{Kind: HalfRectangle, Sizes: ins(2, 4)}, ins(2.75, 5.375)},
		// Setting triangles on 12 in blocks: corners 9 3/8, cut from a square once; sides 18 1/4
		// (docsbay, pinemeadowsdesigns.com; lukas.is-a-geek.org/tani/chart.htm). Their finished
		// sizes are 12/√2 and 12·√2.
		{"corner of blocks of 12", Spec{Kind: HalfSquare, Sizes: ins(12 / math.Sqrt2)}, ins(9.375)},
		{"side of blocks of 12", Spec{Kind: QuarterSquare, Sizes: ins(12 * math.Sqrt2)}, ins(18.25)},
	}
	for _, c := range cases {
		got := grownBy(t, c.spec, true)
		for i := range c.want {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, published %v", c.source, got, c.want)
			}
		}
		for i, exact := range grownBy(t, c.spec, false) {
			if exact > got[i] || got[i]-exact >= length.Inch/8 {
				t.Errorf("%s: true %v, ruler %v", c.source, exact, got[i])
			}
		}
	}
}

// Flying geese, finished W x H: one large square of W + 1 1/4 gives the geese and
// four small ones of H + 7/8 their wings. 22 of 22 published cells:
// members.shaw.ca/beverlysquiltingpage/ffg.htm, alinequilts.blogspot.com/2011/03.
// The large square cut twice is the goose's quarter-square triangle, the small
// one cut once the wing's half-square triangle.
func TestFlyingGeese(t *testing.T) {
	for _, g := range [][4]float64{
		{2, 1, 3.25, 1.875}, {2.5, 1.25, 3.75, 2.125}, {3, 1.5, 4.25, 2.375}, {3.5, 1.75, 4.75, 2.625},
		{4, 2, 5.25, 2.875}, {4.5, 2.25, 5.75, 3.125}, {5, 2.5, 6.25, 3.375}, {5.5, 2.75, 6.75, 3.625},
		{6, 3, 7.25, 3.875}, {7, 3.5, 8.25, 4.375}, {8, 4, 9.25, 4.875},
	} {
		goose := grownBy(t, Spec{Kind: QuarterSquare, Sizes: ins(g[0])}, true)
		wing := grownBy(t, Spec{Kind: HalfSquare, Sizes: ins(g[1])}, true)
		if goose[0] != in(g[2]) || wing[0] != in(g[3]) {
			t.Errorf("geese %v x %v: %v and %v, published %v and %v", g[0], g[1], goose[0], wing[0], g[2], g[3])
		}
	}
}

// settingTriangles is the published chart for blocks set on point, three pages:
// block, A side, A corner, B side, B corner, C side, C corner; 0 is no entry.
// A: lukas.is-a-geek.org/tani/chart.htm (up to 1/8), B: phoebemoon.com/tutorials/
// on-point.htm (up to 1/4), C: quiltnotes.com/learning-center/
// triangle-cutting-chart/ (up to 1/8).
var settingTriangles = [][7]float64{
	{3, 0, 0, 0, 0, 5.5, 3}, {3.5, 0, 0, 0, 0, 6.25, 3.625}, {4, 0, 0, 7, 3.75, 7, 3.75},
	{4.5, 0, 0, 0, 0, 7.625, 4.125}, {5, 8.375, 4.5, 8.5, 4.5, 8.375, 4.5}, {5.5, 0, 0, 0, 0, 9.125, 4.875},
	{6, 9.75, 5.125, 9.75, 5.25, 9.75, 5.125}, {6.5, 0, 0, 0, 0, 10.5, 5.5}, {7, 11.25, 5.875, 11.25, 6, 11.25, 5.625},
	{7.5, 0, 0, 0, 0, 12, 6.25}, {8, 12.625, 6.625, 12.75, 6.75, 12.625, 6.625}, {8.5, 0, 0, 0, 0, 13.375, 6.875},
	{9, 14, 7.25, 14, 7.5, 14, 7.25}, {9.5, 0, 0, 0, 0, 14.75, 7.625}, {10, 15.5, 8, 15.5, 8, 5.5, 8},
	{10.5, 0, 0, 0, 0, 16.125, 8.375}, {11, 16.875, 8.75, 17, 8.75, 16.875, 8.75}, {11.5, 0, 0, 0, 0, 17.5, 9.125},
	{12, 18.25, 9.375, 18.25, 9.5, 18.25, 9.375}, {12.5, 0, 0, 0, 0, 19, 9.75}, {13, 19.75, 10.125, 19.75, 10.25, 19.75, 10.125},
	{13.5, 0, 0, 0, 0, 20.375, 10.5}, {14, 21.125, 10.875, 21, 11, 21.125, 10.875}, {14.5, 0, 0, 0, 0, 21.75, 11.125},
	{15, 22.5, 11.5, 22.5, 11.75, 22.5, 11.5}, {16, 23.875, 12.25, 24, 12.25, 0, 0}, {17, 0, 0, 25.25, 13, 0, 0},
	{18, 0, 0, 26.75, 13.75, 0, 0}, {19, 0, 0, 28.25, 14.5, 0, 0}, {20, 0, 0, 29.5, 15.25, 0, 0},
}

// Every entry of the chart holds the triangle it is cut for, but for three that
// are printed too small: typing errors or rounding the wrong way.
func TestSettingTriangles(t *testing.T) {
	short := map[[2]float64]float64{ // block, published: what it takes
		{14, 21}:   21.0061, // page B: 21, truly short
		{7, 5.625}: 5.8033,  // page C: 5 5/8 for 5 7/8
		{10, 5.5}:  15.3492, // page C: 5 1/2 for 15 1/2
	}
	found, entries := 0, 0
	for _, row := range settingTriangles {
		block := row[0]
		side := grownBy(t, Spec{Kind: QuarterSquare, Sizes: ins(block * math.Sqrt2)}, false)[0]
		corner := grownBy(t, Spec{Kind: HalfSquare, Sizes: ins(block / math.Sqrt2)}, false)[0]
		for i, published := range row[1:] {
			if published == 0 {
				continue
			}
			entries++
			need := side
			if i%2 == 1 {
				need = corner
			}
			want, isShort := short[[2]float64{block, published}]
			if isShort {
				found++
			}
			switch {
			case isShort && (in(published) >= need || !near(need, want, 0.0001)):
				t.Errorf("block %v: published %v is short, needs %v (want %v)", block, published, need, want)
			case !isShort && in(published) < need:
				t.Errorf("block %v: published %v does not hold %v", block, published, need)
			case !isShort && in(published)-need > length.Inch*3/8:
				t.Errorf("block %v: published %v is far more than %v", block, published, need)
			}
		}
	}
	if found != len(short) || entries != 24+34+50 {
		t.Errorf("%d short entries of %d, want %d", found, entries, len(short))
	}
}

// Page A with its own rounding: up to an eighth of b·√2 + 1 1/4 and
// b/√2 + 7/8, which is what `ruler` gives wherever the two eighths agree.
func TestSettingTrianglesByRuler(t *testing.T) {
	same, rows := 0, 0
	for _, row := range settingTriangles {
		if row[1] == 0 {
			continue
		}
		rows++
		side := grownBy(t, Spec{Kind: QuarterSquare, Sizes: ins(row[0] * math.Sqrt2)}, true)[0]
		corner := grownBy(t, Spec{Kind: HalfSquare, Sizes: ins(row[0] / math.Sqrt2)}, true)[0]
		if side > in(row[1]) || corner > in(row[2]) || in(row[1])-side > length.Inch/8 || in(row[2])-corner > length.Inch/8 {
			t.Errorf("blocks of %v: %v and %v, published %v and %v", row[0], side, corner, row[1], row[2])
		}
		if side == in(row[1]) && corner == in(row[2]) {
			same++
		}
	}
	if rows != 12 || same < 8 {
		t.Errorf("%d of %d rows are the same", same, rows)
	}
}

// Worked examples to a few decimals.
func TestWorkedExamples(t *testing.T) {
	cases := []struct {
		source string
		spec   Spec
		number int
		want   float64
	}{
		// Legs and long edges, blackforestquilting.com/What_size_should_my_triangle_be:
		// long edge 2 finished, L x 0.707 + 7/8 = 2.29; exactly 2.2678.
		{"half-square by its long edge of 2", Spec{Kind: HalfSquare, Sizes: ins(math.Sqrt2)}, 0, 2.2678},
		// Short edge 2 finished, S x 1.414 + 1 1/4 = 4.08; exactly 4.0355.
		{"quarter-square by its short edge of 2", Spec{Kind: QuarterSquare, Sizes: ins(2 * math.Sqrt2)}, 0, 4.0355},
		// softsolder.com/2020/07/27: flats 2.75 have an edge of 1.5877.
		{"hexagon of flats 2 1/4 finished", Spec{Kind: Hexagon, Sizes: ins(2.25 / math.Sqrt(3))}, 0, 1.5877},
		// Setting triangles, 10 in blocks: side 15.39 by the rule (stockingisthenewplanking.com),
		// 15.3492 exactly.
		{"side of blocks of 10", Spec{Kind: QuarterSquare, Sizes: ins(10 * math.Sqrt2)}, 0, 15.3492},
		// generations-quilt-patterns.com/cutting-triangles-from-rectangles.html: "no single number":
		// a + s + s(a+c)/b.
		{"half-rectangle 3 x 4", Spec{Kind: HalfRectangle, Sizes: ins(3, 4)}, 0, 3 + 0.25 + 0.25*(3+5)/4},
		{"half-rectangle 3 x 4", Spec{Kind: HalfRectangle, Sizes: ins(3, 4)}, 1, 4 + 0.25 + 0.25*(4+5)/3},
	}
	for _, c := range cases {
		if got := grownBy(t, c.spec, false)[c.number]; !near(got, c.want, 0.00005) {
			t.Errorf("%s: %v, want %v", c.source, got, c.want)
		}
	}
}

// Published and wrong: what the page says, and what it takes.
func TestPublishedWrong(t *testing.T) {
	cases := []struct {
		source    string
		spec      Spec
		number    int
		published float64
		exact     float64
	}{
		// bkkquilt.com; stockingisthenewplanking.com: "finished 2 -> 3 3/8"; their own rule gives 2 7/8.
		{"half-square 2", Spec{Kind: HalfSquare, Sizes: ins(2)}, 0, 3.375, 2.8536},
		// chrisandbarbaraquilts rotary-cutting-part-8, the sides of a triangle in a square:
		// +5/8 and +1 1/4 are too small.
		{"side of a triangle in a square, across", Spec{Kind: HalfRectangle, Sizes: ins(2, 4)}, 0, 2.625, 2.6545},
		{"side of a triangle in a square, along", Spec{Kind: HalfRectangle, Sizes: ins(2, 4)}, 1, 5.25, 5.3090},
		// quiltartdesigns.blogspot.com/2014/01: an edge of 2 finished is cut 2 1/2.
		{"hexagon edge 2", Spec{Kind: Hexagon, Sizes: ins(2)}, 0, 2.5, 2.2887},
		// quiltingboard.com t247758: the edge of a diamond cut from a 2 in strip, "about 2 3/4" at 45
		// degrees and "about 2 1/4" at 60: both too small. (Cut 2 in is finished 1 1/2.)
		{"diamond 45 from a 2 in strip", Spec{Kind: Diamond, Degrees: 45, Sizes: ins(1.5 * math.Sqrt2)}, 0, 2.75, 2.8284},
		{"diamond 60 from a 2 in strip", Spec{Kind: Diamond, Degrees: 60, Sizes: ins(3 / math.Sqrt(3))}, 0, 2.25, 2.3094},
	}
	for _, c := range cases {
		got := grownBy(t, c.spec, false)[c.number]
		if !near(got, c.exact, 0.00005) {
			t.Errorf("%s: %v, want %v", c.source, got, c.exact)
		}
		if near(got, c.published, 0.01) {
			t.Errorf("%s: %v is the wrong page's number", c.source, got)
		}
	}
}

// The middle of a triangle in a square, base as long as its height: +1 is
// published (chrisandbarbaraquilts rotary-cutting-part-8), s(1+√5) = 0.8090 is
// exact. As a shape of her own it is the same law that grows it.
func TestTriangleInASquare(t *testing.T) {
	c := mustCut(t, Spec{Kind: Own, Own: points(0, 4, 2, 0, 4, 4), Finished: true, Seam: quarter})
	b := c.Outline.Bounds()
	if !near(b.Width(), 4.8090, 0.00005) || !near(b.Height(), 4.8090, 0.00005) {
		t.Errorf("%v x %v", b.Width(), b.Height())
	}
}

// Rules that are safe: no smaller than the true size, and published as more
// than it takes, to be trimmed.
func TestSafeRules(t *testing.T) {
	for f := 1.0; f <= 12; f += 0.5 {
		half := grownBy(t, Spec{Kind: HalfSquare, Sizes: ins(f)}, false)[0]
		quarter := grownBy(t, Spec{Kind: QuarterSquare, Sizes: ins(f)}, false)[0]
		for _, rule := range []struct {
			source           string
			published, exact length.Len
		}{
			{"+1 and trim: stitchobsessed.com/half-square-triangle-chart", in(f + 1), half},
			{"H + 1 for the wings of geese: quiltingpassion.com QuadrupleSquareMethod; allpeoplequilt.com", in(f + 1), half},
			{"+1 1/8: north-hampshire-quilters.org.uk/hblk402b.htm", in(f + 1.125), half},
			{"+1 1/2 for quarter-squares: the same", in(f + 1.5), quarter},
			// Eight at a time come out of a square of two cut sizes: mesquitequiltguildinc.com/?p=923.
			{"2f + 1 3/4, eight at a time", in(2*f + 1.75), 2 * half},
			// quilting.about.com cutting_shapes_5.
			{"+7/8 for the edge of an equilateral", in(f + 0.875), grownBy(t, Spec{Kind: Equilateral, Sizes: ins(f), Measure: Side}, false)[0]},
		} {
			if rule.published < rule.exact {
				t.Errorf("%s, finished %v: %v is less than %v", rule.source, f, rule.published, rule.exact)
			}
		}
	}
}

// Half-rectangle triangles have no single allowance; these are worked out
// (calculated): legs a and b grow by s + s(a+c)/b and s + s(b+c)/a.
func TestHalfRectangles(t *testing.T) {
	for _, c := range [][4]float64{{2, 4, 0.6545, 1.3090}, {2, 3, 0.7171, 1.0757}, {1, 3, 0.5969, 1.7906}} {
		got := grownBy(t, Spec{Kind: HalfRectangle, Sizes: ins(c[0], c[1])}, false)
		if !near(got[0], c[0]+c[2], 0.00005) || !near(got[1], c[1]+c[3], 0.00005) {
			t.Errorf("%v x %v: %v", c[0], c[1], got)
		}
	}
}

// Hexagons named by their edge, flat to flat and point to point: 1 in "about
// 1 3/4 x 2", 3 in 5 1/4 and 6 (texasfreckles.com 2010/03; dendaria.home.blog:
// both round up to quarters); and with their seams, f·√3 + 1/2 and 2f + 0.5774
// (softsolder.com/2020/07/27).
func TestHexagonsByTheirEdge(t *testing.T) {
	for edge, published := range map[float64][2]float64{1: {1.75, 2}, 3: {5.25, 6}} {
		b := mustCut(t, Spec{Kind: Hexagon, Sizes: ins(edge)}).Outline.Bounds()
		if !near(b.Height(), edge*math.Sqrt(3), 0.00001) || !near(b.Width(), 2*edge, 0.00001) {
			t.Errorf("edge %v: %v x %v", edge, b.Width(), b.Height())
		}
		if in(published[0]) < b.Height() || in(published[1]) < b.Width() || in(published[0])-b.Height() > length.Inch/8 {
			t.Errorf("edge %v: published %v, %v x %v", edge, published, b.Width(), b.Height())
		}
		b = mustCut(t, Spec{Kind: Hexagon, Sizes: ins(edge), Finished: true, Seam: quarter}).Outline.Bounds()
		if !near(b.Height(), edge*math.Sqrt(3)+0.5, 0.00001) || !near(b.Width(), 2*edge+0.57735, 0.00001) {
			t.Errorf("edge %v with its seams: %v x %v", edge, b.Width(), b.Height())
		}
	}
}

// Blocks set on point, corner to corner, to the nearest eighth: quilterscache.com,
// 9 of 9; four of them are a little less than the true diagonal.
func TestDiagonals(t *testing.T) {
	less := 0
	for side, published := range map[float64]float64{4: 5.625, 5: 7.125, 6: 8.5, 7: 9.875, 8: 11.375, 9: 12.75, 10: 14.125, 12: 17, 14: 19.75} {
		d := mustCut(t, Spec{Kind: Square, Sizes: ins(side)}).Outline.Turn(45 * outline.Degree).Bounds().Width()
		if off := in(published) - d; off > length.Inch/16 || off < -length.Inch/16 {
			t.Errorf("a block of %v: %v, published %v", side, d, published)
		} else if off < 0 {
			less++
		}
	}
	if less != 4 {
		t.Errorf("%d are less than the diagonal, want 4", less)
	}
}

// Four half-square triangles at a time: two squares sewn all round and cut along
// both diagonals. For triangles of u with their seams that takes u·√2 + 1/2. The
// rule u/0.64 (broadclothstudio.com/blog/four-at-a-time-hsts) is too small for
// u under about 3.4 in, and generous above.
func TestFourAtATime(t *testing.T) {
	for _, c := range []struct {
		source              string
		u, published, exact float64
		holds               bool
	}{
		{"the rule, finished 1", 1.5, 2.34, 2.6213, false},
		{"the rule, finished 2", 2.5, 3.91, 4.0355, false},
		{"the rule, finished 2 1/2", 3, 4.69, 4.7426, false},
		{"the rule, finished 6", 6.5, 10.16, 9.6924, true},
		{"reddit quilting, \"real maths\": 5 gives 3.18", 3.18, 5, 4.9972, true},
		{"quilted-diary.com/hst-4-at-a-time: 4 1/2 gives 2 1/2, to trim", 2.5, 4.5, 4.0355, true},
	} {
		got := mustCut(t, Spec{Kind: Square, Sizes: ins(c.u)}).Outline.Turn(45*outline.Degree).Bounds().Width() + 2*quarter
		if !near(got, c.exact, 0.00005) || in(c.published) >= got != c.holds {
			t.Errorf("%s: %v, published %v", c.source, got, c.published)
		}
	}
}

// An eight-pointed star is the edge of its diamonds times 2+√2 wide: two
// diamonds side by side. Published as 3.41 (karencombs.com), 0.12 % too small.
func TestStarBlock(t *testing.T) {
	two := 2 * mustCut(t, Spec{Kind: Diamond, Degrees: 45, Sizes: ins(1)}).Outline.Bounds().Width()
	if !near(two, 3.4142, 0.00005) || in(3.41) >= two {
		t.Errorf("%v", two)
	}
}

// A rosette of two rings of hexagons is five of them high and four across,
// corner to corner. "Roughly" (faeriesandfibres.blogspot.com/2015/01): 26 1/4 x
// 24 for an edge of 3, which holds, and 10 1/2 x 10 for 1 1/4, which does not.
func TestRosettes(t *testing.T) {
	for edge, c := range map[float64]struct {
		high, across, exact float64
		holds               bool
	}{3: {26.25, 24, 25.9808, true}, 1.25: {10.5, 10, 10.8253, false}} {
		b := mustCut(t, Spec{Kind: Hexagon, Sizes: ins(edge)}).Outline.Bounds()
		if !near(5*b.Height(), c.exact, 0.00005) || 4*b.Width() != in(c.across) || in(c.high) >= 5*b.Height() != c.holds {
			t.Errorf("edge %v: %v x %v", edge, 5*b.Height(), 4*b.Width())
		}
	}
}

// A wedge 4 1/4 high and 1 and 2 3/8 wide, "20 of them"
// (grilledsal.blogspot.com/2012/03): at 18.378 degrees each, 20 are 7.6 degrees
// more than a circle and do not lie flat.
func TestWedges(t *testing.T) {
	o := mustCut(t, Spec{Kind: Trapezoid, Sizes: ins(2.375, 1, 4.25)}).Outline
	slant := o[2].Sub(o[1])
	degrees := 2 * math.Atan2(float64(slant.X), float64(slant.Y)) * 180 / math.Pi
	if math.Abs(degrees-18.378) > 0.0005 || math.Abs(20*degrees-367.6) > 0.05 {
		t.Errorf("%v degrees, 20 of them %v", degrees, 20*degrees)
	}
}

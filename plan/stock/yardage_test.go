package stock

import (
	"slices"
	"testing"

	"example.org/matside/plan/length"
)

const in = length.Inch

// half makes a length of so many half inches.
func half(n int) length.Len { return length.Len(n) * in / 2 }

// goes says how many squares of a side a panel gives, trying one more than
// want.
func goes(w, h, side length.Len, want int) int {
	l := Lay([]Panel{{W: w, H: h}}, many(want+1, Cut{W: side, H: side}))
	return len(l.Spots)
}

func many(n int, c Cut) []Cut {
	out := make([]Cut, n)
	for i := range out {
		out[i] = c
	}
	return out
}

// takes is how far down a panel without end is cut for all of the cuts, and
// how many eighths of a yard that is to buy.
func takes(t *testing.T, width length.Len, cuts []Cut) (reach length.Len, eighths int) {
	t.Helper()
	l := Lay([]Panel{{W: width, H: 1000 * length.Metre, Endless: true}}, cuts)
	if len(l.Left) > 0 {
		t.Errorf("%v does not go on %v", cuts[0], width)
	}
	return l.Reach[0], int((l.Reach[0] + length.Yard/8 - 1) / (length.Yard / 8))
}

// Published yardage of many equal pieces: how far down, and eighths of a yard
// to buy. Where a page only rounds up generously, its figure is in the comment.
func TestYardage(t *testing.T) {
	for _, c := range []struct {
		source  string
		width   length.Len
		cuts    []Cut
		inches  length.Len
		eighths int
	}{
		// 48 in, "buy 1 1/2" where 1 3/8 do; 45 in when turned, 1 1/4.
		{"bobbininquilts.com how to figure out how much fabric", 40 * in, many(300, Cut{W: 3 * in, H: 2 * in}), 48 * in, 11},
		{"the same, turned", 40 * in, many(300, Cut{W: 2 * in, H: 3 * in}), 45 * in, 10},
		{"the same, either way", 40 * in, many(300, Cut{W: 3 * in, H: 2 * in, Turn: true}), 45 * in, 10},
		{"quiltingboard.com 6228687-post7", 42 * in, many(63, Cut{W: half(19), H: half(19)}), 152 * in, 34},
		{"harriger.com/inch2yard.htm", 44 * in, many(100, Cut{W: half(7), H: half(7)}), half(63), 7},
		// "fits in 3/4".
		{"quiltingboard.com t131707", 44 * in, append(many(52, Cut{W: 4 * in, H: 4 * in}), many(20, Cut{W: 3 * in, H: 3 * in})...), 26 * in, 6},
		{"quilterscache.com/StartQuiltingPages/startquiltingtwo.html", 42 * in, many(112, Cut{W: eighth(62), H: eighth(31)}), eighth(713), 20},
		{"the same, turned", 42 * in, many(112, Cut{W: eighth(31), H: eighth(62)}), 93 * in, 21},
		{"the same page", 42 * in, many(56, Cut{W: 14 * in, H: half(7)}), half(133), 15},
		{"the same page, turned", 42 * in, many(56, Cut{W: half(7), H: 14 * in}), 70 * in, 16},
		// The post offers 1 1/2, 2 and 2 yd.
		{"quiltingboard.com t46327, 60 of 5", 40 * in, many(60, Cut{W: 5 * in, H: 5 * in}), 40 * in, 9},
		{"quiltingboard.com t46327, 15 of 12 1/2", 40 * in, many(15, Cut{W: half(25), H: half(25)}), half(125), 14},
		{"quiltingboard.com t46327, 60 of 6 1/2", 40 * in, many(60, Cut{W: half(13), H: half(13)}), 65 * in, 15},
		// Strips: four of 2 1/2 are 10 in, 3/8 yd (anniescatalog.com "Precuts to yardage").
		{"four strips", 42 * in, many(4, Cut{H: half(5), Across: true}), 10 * in, 3},
	} {
		if inches, eighths := takes(t, c.width, c.cuts); inches != c.inches || eighths != c.eighths {
			t.Errorf("%s: %v, %d eighths; want %v, %d", c.source, inches, eighths, c.inches, c.eighths)
		}
	}
	// 42 fives take four fat quarters (quiltingboard.com t222332).
	quarters := slices.Repeat([]Panel{{W: 18 * in, H: 22 * in}}, 4)
	if l := Lay(quarters, many(42, Cut{W: 5 * in, H: 5 * in})); len(l.Left) > 0 || l.Reach[3] == 0 {
		t.Errorf("%d fives left over, %v", len(l.Left), l.Reach)
	}
}

// Binding: strips until they are long enough together; how long, from fabric
// how wide, the strips, and eighths of a yard.
func TestBinding(t *testing.T) {
	for _, c := range []struct {
		source          string
		long, width     int
		strip           length.Len
		strips, eighths int
	}{
		// 50 x 60 by 40 - 2: 220/38 = 5.79.
		{"castillejacotton.blogspot.com/2013/06", 220, 38, half(5), 6, 4},
		// 96 x 110 with 12 in to spare: 11 strips. The page says 26 1/2 in and 3/4 yd, and by area
		// (1080/1512 = 0.714) it would be 3/4 as well: half an inch short of 27 1/2.
		{"quiltingboard.com t189575", 424, 40, half(5), 11, 7},
		// 46 x 46: "1/2 yd, more than enough".
		{"sylviasquiltdepot.com measuring-fabric-for-continuous-strips", 184, 40, half(5), 5, 3},
		// 40 x 50 by 42, 3 1/2 wide: the page cuts 4.29 strips, 15 in; five are 17 1/2. 1/2 yd either way.
		{"cottonpatchfabrics.com measuring for binding", 180, 42, half(7), 5, 4},
		// 60 x 72 with 10 in to spare.
		{"kungfurosario copy; stockingisthenewplanking.com", 274, 40, half(5), 7, 4},
		// 84 x 92: the page buys 3/4 yd.
		{"puntadasdemoda.com", 352, 40, half(5), 9, 5},
		// A border round 56 x 61, strips of 5 in: 254 in, 7 strips.
		{"generations-quilt-patterns.com/how-to-calculate-quilt-borders.html", 254, 42, 5 * in, 7, 8},
		// A border round 70 x 86 cut 6 1/2: 338 in, 8 strips, 52 in, 1 1/2 yd.
		{"slideserve Can you figure the amount of yardage to buy", 338, 44, half(13), 8, 12},
	} {
		l := Lay([]Panel{{W: length.Len(c.width) * in, H: 1000 * length.Metre, Endless: true}},
			[]Cut{{W: length.Len(c.long) * in, H: c.strip, Across: true}})
		eighths := int((l.Reach[0] + length.Yard/8 - 1) / (length.Yard / 8))
		if len(l.Spots) != c.strips || l.Reach[0] != length.Len(c.strips)*c.strip || eighths != c.eighths {
			t.Errorf("%s: %d strips, %v, %d eighths; want %d, %d", c.source, len(l.Spots), l.Reach[0], eighths, c.strips, c.eighths)
		}
	}
}

// Borders in one piece along the grain, and backings of two widths: how far
// down at most, and eighths of a yard. Ours may take less than published.
func TestLongPieces(t *testing.T) {
	for _, c := range []struct {
		source  string
		width   length.Len
		cuts    []Cut
		most    length.Len
		eighths int
	}{
		// 51 + 61 = 112 in, 3 1/8 yd (the page buys 3 1/4): two beside each other, twice. All four beside
		// each other take 61 in.
		{"blog.missouriquiltco.com borders", 42 * in, append(many(2, Cut{W: 5 * in, H: 51 * in}), many(2, Cut{W: 5 * in, H: 61 * in})...), 61 * in, 14},
		// Four of up to 10 in wide go beside each other in 42 in: 80 in (90 with 10 to spare, 2 1/2 yd).
		{"quiltingboard.com 511807-post6", 42 * in, many(4, Cut{W: 10 * in, H: 80 * in}), 80 * in, 18},
		{"quiltingboard.com 511807-post6, with 10 to spare", 42 * in, many(4, Cut{W: 10 * in, H: 90 * in}), 90 * in, 20},
		{"quiltingboard.com t290638, backing 80 x 56", 40 * in, many(2, Cut{W: 40 * in, H: 56 * in}), 112 * in, 25},
		{"quiltingboard.com t169966, backing for 59 x 75", 40 * in, many(2, Cut{W: 40 * in, H: 85 * in}), 170 * in, 38},
		{"quiltingboard.com 7400852-post21, 65", 40 * in, many(2, Cut{W: 40 * in, H: 65 * in}), 130 * in, 29},
		{"quiltingboard.com 7400852-post21, 78", 40 * in, many(2, Cut{W: 40 * in, H: 78 * in}), 156 * in, 35},
		{"katieskitchenblog.com", 40 * in, many(2, Cut{W: 40 * in, H: 74 * in}), 148 * in, 33},
		// The page allows 4 in all where its text says 4 all round: 55 x 65, two of 65.
		{"blog.missouriquiltco.com backing", 42 * in, many(2, Cut{W: 42 * in, H: 65 * in}), 130 * in, 29},
	} {
		if reach, eighths := takes(t, c.width, c.cuts); reach > c.most || eighths > c.eighths {
			t.Errorf("%s: %v, %d eighths; want %v, %d at most", c.source, reach, eighths, c.most, c.eighths)
		}
	}
}

package matpic

import (
	"maps"
	"strconv"
	"strings"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/canvas"
)

const in = length.Inch

func rectangle(x, y, w, h length.Len) outline.Outline {
	return outline.Outline{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}

// sample is a mat with squares, rectangles and triangles of two fabrics.
func sample() Picture {
	list := &cutlist.List{
		Mat:     cutlist.Mat{Width: 12 * in, Height: 12 * in, UsableWidth: 11 * in, UsableHeight: 11 * in},
		Fabrics: []cutlist.Fabric{{Name: "Plum"}, {Name: "Oat"}},
		Lines: []cutlist.Line{
			{Fabric: 0, Shape: "square", Size: "2 1/2", Label: "A"},
			{Fabric: 1, Shape: "half-square triangle", Size: "2 7/8", Label: "C"},
			{Fabric: 0, Shape: "rectangle", Size: "2 1/2 x 5", Label: "long"},
		},
	}
	load := &queue.Load{Number: 1, RoughCuts: []queue.RoughCut{
		{Fabric: 0, X: in / 4, Y: in / 4, Width: 21 * in / 2, Height: 21 * in / 4},
		{Fabric: 1, X: in / 4, Y: 23 * in / 4, Width: 25 * in / 4, Height: 27 * in / 8},
	}}
	add := func(line int, rough int, o outline.Outline) {
		load.Pieces = append(load.Pieces, queue.Placement{Line: line, RoughCut: rough, Outline: o})
	}
	for i := range length.Len(4) {
		add(0, 0, rectangle(in/2+i*5*in/2, in/2, 5*in/2, 5*in/2))
	}
	for i := range length.Len(2) {
		add(2, 0, rectangle(in/2+i*5*in, 3*in, 5*in, 5*in/2))
	}
	s := 23 * in / 8
	for i := range length.Len(2) {
		x, y := in/2+i*s, 6*in
		add(1, 1, outline.Outline{{X: x, Y: y}, {X: x + s, Y: y}, {X: x, Y: y + s}})
		add(1, 1, outline.Outline{{X: x + s, Y: y}, {X: x + s, Y: y + s}, {X: x, Y: y + s}})
	}
	return Picture{List: list, Load: load, Letters: Letters(list), Cursor: -1}
}

// The picture of a mat as it was looked at and found right.
const small = `
╭───────────────────────────╮
│┌─────┬─────┬─────┬─────┐  │
││  A  │  A  │  A  │  A  │  │
││     │     │     │     │  │
│├─────┴─────┼─────┴─────┤  │
││     B     │     B     │  │
│└───────────┴───────────┘  │
│┌──────┬──────┐            │
││ C ⢀⠔⠁│ C ⢀⠔⠁│            │
││·⢀⠔⠁C │ ⡠⠒⠁C │            │
│└──────┴──────┘            │
│└╌╌╌╌╌╌╌╌╌╌╌╌╌┘            │
│                           │
│                           │
╰───────────────────────────╯`

func TestPicture(t *testing.T) {
	cols, rows := Size(sample().List.Mat, 30, 15)
	got := "\n" + strings.Join(sample().Draw(cols, rows).Lines(), "\n")
	if got != small {
		t.Errorf("got %s\nwant %s", got, small)
	}
}

// In a picture that is large enough every piece has its letter, and spoiled
// ones, and no others, are crossed.
func TestEveryPieceHasItsLetter(t *testing.T) {
	for w := 26; w < 200; w += 7 {
		p := sample()
		p.Spoiled, p.Zone = map[int]bool{0: true, 7: true}, strconv.Itoa
		cols, rows := Size(p.List.Mat, w, w)
		c := p.Draw(cols, rows)
		got := strings.Join(c.Lines(), "\n")
		for letter, want := range map[string]int{"A": 4, "B": 2, "C": 4} {
			if n := strings.Count(got, letter); n != want {
				t.Errorf("%d columns: %d of %s, want %d\n%s", cols, n, letter, want, got)
			}
		}
		crossed := map[int]bool{}
		for y := range rows {
			for x := range cols {
				if c.At(x, y) == "╳" {
					i, err := strconv.Atoi(c.Hit(x, y))
					crossed[i] = err == nil
				}
			}
		}
		if !maps.Equal(crossed, p.Spoiled) {
			t.Errorf("%d columns: pieces %v are crossed\n%s", cols, crossed, got)
		}
	}
}

func TestLargeLetters(t *testing.T) {
	p := sample()
	p.Large = true
	cols, rows := Size(p.List.Mat, 120, 60)
	got := strings.Join(p.Draw(cols, rows).Lines(), "\n")
	if strings.ContainsAny(got, "AB") || !strings.Contains(got, "█") {
		t.Errorf("the letters of large pieces are small\n%s", got)
	}
}

func TestGrid(t *testing.T) {
	p := sample()
	p.Grid = true
	cols, rows := Size(p.List.Mat, 60, 60)
	lines := p.Draw(cols, rows).Lines()
	if want := "╭────1────2────3────4────5────6───7────8────9────10───11───╮"; lines[0] != want {
		t.Errorf("the upper edge is %s", lines[0])
	}
	p.Unit = length.Cm
	if got := p.Draw(cols, rows).Lines()[0]; !strings.Contains(got, "─5─") || !strings.Contains(got, "─25─") {
		t.Errorf("in centimetres it is %s", got)
	}
}

func TestMove(t *testing.T) {
	load := sample().Load // rows 0 1 2 3, 4 5, 6 7 8 9
	for _, c := range []struct{ at, dx, dy, want int }{
		{-1, 1, 0, 0}, {0, 1, 0, 1}, {0, -1, 0, 0}, {3, 1, 0, 4}, {9, 1, 0, 9},
		{0, 0, 1, 4}, {3, 0, 1, 5}, {5, 0, -1, 2}, {0, 0, -1, 0}, {6, 0, 1, 6},
	} {
		if got := Move(load, c.at, c.dx, c.dy); got != c.want {
			t.Errorf("from %d by %d, %d: %d, want %d", c.at, c.dx, c.dy, got, c.want)
		}
	}
	if got := Move(&queue.Load{}, -1, 1, 0); got != -1 {
		t.Errorf("an empty mat has piece %d", got)
	}
}

func TestSizeKeepsTheMatsSides(t *testing.T) {
	square := cutlist.Mat{Width: 12 * in, Height: 12 * in}
	long := cutlist.Mat{Width: 12 * in, Height: 24 * in}
	for _, c := range []struct {
		mat              cutlist.Mat
		w, h, cols, rows int
	}{{square, 30, 15, 29, 15}, {square, 61, 100, 61, 31}, {long, 100, 25, 25, 25}, {square, 0, 0, 0, 0}} {
		if cols, rows := Size(c.mat, c.w, c.h); cols != c.cols || rows != c.rows {
			t.Errorf("Size(%v, %d, %d) = %d, %d; want %d, %d", c.mat, c.w, c.h, cols, rows, c.cols, c.rows)
		}
	}
}

func TestAnySizeIsDrawn(t *testing.T) {
	for cols := range 40 {
		for rows := range 20 {
			if c := sample().Draw(cols, rows); c.W != cols || c.H != rows {
				t.Fatalf("%d x %d became %d x %d", cols, rows, c.W, c.H)
			}
		}
	}
}

func TestLetters(t *testing.T) {
	line := func(label string) cutlist.Line { return cutlist.Line{Label: label} }
	list := &cutlist.List{Lines: []cutlist.Line{line("border"), line("B"), line("B"), line(""), line("A"), line("1")}}
	if got, want := string(Letters(list)), "CBDEAF"; got != want {
		t.Errorf("letters %s, want %s", got, want)
	}
	for range 100 {
		list.Lines = append(list.Lines, line(""))
	}
	if got := Letters(list); len(got) != 106 {
		t.Errorf("%d letters", len(got))
	}
}

// However small the picture, what is crossed out and what is chosen shows.
func TestASmallPieceIsMarkedToo(t *testing.T) {
	paint := func(s canvas.Style) string {
		if s.Reverse {
			return "<"
		}
		return ">"
	}
	for _, size := range [][2]int{{12, 7}, {16, 8}, {20, 11}, {40, 20}} {
		for i := range sample().Load.Pieces {
			p := sample()
			p.Cursor, p.Spoiled = -1, map[int]bool{i: true}
			if n := strings.Count(strings.Join(p.Draw(size[0], size[1]).Lines(), ""), "╳"); n == 0 {
				t.Errorf("%v: piece %d is not crossed out", size, i)
			}
			p.Cursor, p.Spoiled = i, nil
			if !strings.Contains(p.Draw(size[0], size[1]).Render(paint), "<") {
				t.Errorf("%v: piece %d is not seen to be chosen", size, i)
			}
		}
	}
}

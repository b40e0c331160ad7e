package tui

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/matside/plan/length"
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
)

func (s walk) title(v view) string   { return "" }
func (s walk) caution(v view) string { return guide.Write(v.words, v.facts()).Caution }

// picture is what is drawn beside the words.
type picture struct {
	size   func(w, h int) (cols, rows int)
	draw   func(cols, rows int) *canvas.Canvas
	legend string
}

// fit is the picture's size inside w by h with its legend under it, which
// takes a third of the height at most.
func (p picture) fit(w, h int) (cols, rows int) {
	for under := 1; ; under++ {
		cols, rows = p.size(w, h-under)
		if under >= max(h/3, 1) || len(canvas.Wrap(p.legend, cols)) <= under {
			return cols, rows
		}
	}
}

// length writes a length in the unit she has.
func (v view) length(l length.Len) string { return v.words.Length(l, v.unit()) }

// cut is the rough cut looked at.
func (s walk) cut(f guide.Facts) int { return min(s.rough, len(f.Load.RoughCuts)-1) }

// captions says the legend under the picture.
func (p picture) captions(c *canvas.Canvas, cols, rows int) {
	lines := canvas.Wrap(p.legend, cols)
	room := c.H - rows
	for i, l := range lines[:min(len(lines), room)] {
		if i == room-1 && len(lines) > room {
			l = canvas.Fit(l+" "+lines[i+1], cols)
		}
		c.Text(0, rows+i, l, quiet)
	}
}

// body gives the picture as much width as the words can spare. Where the
// words need all there is, they stand alone; and where even that is too
// little, in pages. A click anywhere goes on, but on a piece of the picture.
func (s walk) body(v view, c *canvas.Canvas) {
	c.Zone(0, 0, c.W, c.H, "on")
	facts := v.facts()
	paragraphs, big := s.paragraphs(v, facts, guide.Write(v.words, facts))
	pic := s.picture(v, facts)
	const gap = 3
	for _, share := range []int{50, 45, 38, 30} {
		cols, rows := pic.fit(c.W*share/100, c.H)
		lines := wrapped(paragraphs, c.W-cols-gap)
		const headline = 4
		if len(lines) > c.H || share > 38 && len(lines)+headline > c.H {
			continue
		}
		c.Draw(0, 0, pic.draw(cols, rows))
		pic.captions(c, cols, rows)
		right := canvas.New(c.W-cols-gap, c.H, text)
		s.column(v, right, paragraphs, big)
		c.Draw(cols+gap, 0, right)
		return
	}
	s.column(v, c, onePage(v, wrapped(paragraphs, c.W), s.page, c.H), big)
}

// picture is the panel at the fabric step, the rough cuts at the press, and
// the whole mat from there on.
func (s walk) picture(v view, f guide.Facts) picture {
	if f.Step == session.Fabric {
		if p, ok := guide.Panel(v.quilt, f, s.cut(f), v.length); ok {
			return picture{p.Size, p.Draw, guide.PanelLegend(v.words, v.quilt, f, s.cut(f))}
		}
	}
	m := v.matPicture(f)
	m.Bare, m.Grid = f.Step <= session.Press, true
	m.Spoiled, m.Cursor = pieceSet(s.picked), s.at-1
	if !m.Bare {
		m.Zone = func(i int) string { return pieceZone + strconv.Itoa(i) }
	}
	size := func(w, h int) (int, int) { return matpic.Size(f.List.Mat, w, h) }
	draw := func(cols, rows int) *canvas.Canvas {
		key := fmt.Sprint(v.state.Seq, v.quilt.ID, f.Load.Number, f.Step, cols, rows, s.at, s.picked, v.settings)
		return v.last.get(key, func() *canvas.Canvas { return m.Draw(cols, rows) })
	}
	return picture{size, draw, legend(v, f)}
}

// drawn keeps the last picture of the mat: it changes with the record, the
// window, the cursor and the settings, and most frames with none of them.
type drawn struct {
	key    string
	canvas *canvas.Canvas
}

// get is the picture of that key, drawn if it is not the last one.
func (l *drawn) get(key string, draw func() *canvas.Canvas) *canvas.Canvas {
	if l.key != key {
		l.key, l.canvas = key, draw()
	}
	return l.canvas
}

// matPicture is the picture of a load, as her settings have it.
func (v view) matPicture(f guide.Facts) matpic.Picture {
	return matpic.Picture{List: f.List, Load: f.Load, Letters: matpic.Letters(f.List), Cursor: -1,
		Unit: v.unit(), Say: v.length, Large: v.settings.Letters != "small"}
}

// pieceSet is the set of some pieces.
func pieceSet(pieces []int) map[int]bool {
	in := make(map[int]bool, len(pieces))
	for _, p := range pieces {
		in[p] = true
	}
	return in
}

// pieceAt names a piece as the picture shows it.
func (v view) pieceAt(f guide.Facts, piece int) string {
	row, place := matpic.PlaceOf(matpic.Rows(f.Load), piece)
	if row < 0 {
		return ""
	}
	line := f.Load.Pieces[piece].Line
	l := f.List.Lines[line]
	return v.words.PieceAt(row+1, place+1, v.words.Pieces(l, 1), f.List.Fabrics[l.Fabric].Name, matpic.Letters(f.List)[line], l.Label)
}

// paragraphs are the words of a step, and what to write large over them.
func (s walk) paragraphs(v view, f guide.Facts, page guide.Page) ([]line, [][]string) {
	if s.asked != nil {
		return s.askWhich(v, f)
	}
	lines := []line{{page.Do, strong}}
	if s.at > 0 { // she looks at the picture: what it shows comes instead
		return s.pressing(v, append(lines, line{v.pieceAt(f, s.at-1), accent}, line{v.words.CursorHow(f.Step == session.Peel), text}), page.Large)
	}
	for _, item := range page.Items {
		lines = append(lines, line{item, accent})
	}
	if f.Step == session.Fabric {
		if p, ok := guide.Panel(v.quilt, f, s.cut(f), v.length); ok {
			for _, says := range guide.StraightCuts(v.words, p) {
				lines = append(lines, line{says, text})
			}
		}
	}
	for _, more := range page.More {
		lines = append(lines, line{more, text})
	}
	if f.Step == session.Peel {
		lines = append(lines, line{v.words.AnySpoiled(), text}, line{v.words.OrPick(), text})
	}
	if s.lifted {
		lines = append(lines, line{v.words.Lifted(), warn})
	}
	if s.ragged {
		lines = append(lines, line{v.words.Ragged(), warn})
	}
	return s.pressing(v, lines, page.Large)
}

// pressing puts first what she is in the middle of, or what ought to be over.
func (s walk) pressing(v view, lines []line, big [][]string) ([]line, [][]string) {
	switch alarm := v.alarm(); {
	case len(s.picked) > 0:
		n := len(s.picked)
		return append([]line{{v.words.Picked(n), strong}}, lines[1:]...), [][]string{{v.words.LargeSpoiled(strconv.Itoa(n))}, {strconv.Itoa(n)}}
	case s.number() > 0:
		return append([]line{{v.words.Spoiled(s.number()), strong}}, lines[1:]...), [][]string{{v.words.LargeSpoiled(s.entry)}, {s.entry}}
	case alarm == guide.PauseDue:
		rest := v.words.LargeRest()
		return append([]line{{v.words.RestHands(), warn}, {v.words.RestHow(), text}}, lines...), [][]string{rest, rest[:1]}
	case alarm == guide.CutOver:
		return append([]line{{v.words.CutOver(), warn}}, lines...), append([][]string{{v.words.LargeCutOver()}}, big...)
	}
	return lines, big
}

// askWhich asks how many of the spoiled pieces are of one line.
func (s walk) askWhich(v view, f guide.Facts) ([]line, [][]string) {
	stack := s.asked.Stacks[0]
	l, letter := f.List.Lines[stack.Line], matpic.Letters(f.List)[stack.Line]
	least, most := s.asked.Bounds()
	which := v.words.Stack(letter, v.words.Pieces(l, len(stack.Pieces)), f.List.Fabrics[l.Fabric].Name, l.Label)
	return []line{{v.words.SpoiledOf(s.asked.Left), strong}, {which, accent}, {v.words.FromTo(least, most), text}},
		[][]string{{string(letter) + ": " + or(s.entry, "?")}}
}

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// column draws large words, the paragraphs, and the large counters at the
// foot. Numbers to cut by may take more than half of it, words a third: the
// counters come before larger words. Where there is room left, paragraphs
// stand apart.
func (s walk) column(v view, c *canvas.Canvas, paragraphs []line, big [][]string) {
	lines := wrapped(paragraphs, c.W)
	y, free := 0, c.H-len(lines)
	for _, tries := range sayingTheSame(v.big(big)) {
		most := c.H / 3
		if strings.ContainsAny(tries[0][0], "0123456789") {
			most = c.H * 3 / 5
		}
		if l, ok := glyph.Largest(c.W, min(free-1, max(most, 3)), tries...); ok {
			large(c, 0, 0, l, strong)
			y = l.H + 1
			break
		}
	}
	left := free - y - foot(v, c, min(free-y-1, max(c.H/4, 4)))
	apart := 0
	if left > len(paragraphs) {
		apart = 1
	}
	for _, p := range paragraphs {
		for _, l := range canvas.Wrap(p.text, c.W) {
			c.Text(0, y, l, p.style)
			y++
		}
		y += apart
	}
}

// sayingTheSame puts neighbors together that say the same in other lines: of
// those the largest is written.
func sayingTheSame(tries [][]string) [][][]string {
	var groups [][][]string
	said := ""
	for _, try := range tries {
		if says := strings.Join(try, " "); len(groups) == 0 || says != said {
			groups, said = append(groups, nil), says
		}
		last := &groups[len(groups)-1]
		*last = append(*last, try)
	}
	return groups
}

// foot draws the large counters at the foot of c, no higher than h, and
// returns the rows they take.
func foot(v view, c *canvas.Canvas, h int) int {
	counts := counters(v, c.W, h)
	high := 0
	for _, n := range counts {
		high = max(high, n.lines.H)
	}
	x, y := 0, c.H-high
	for _, n := range counts {
		large(c, x, y, n.lines, accent)
		c.Text(x, y-1, n.caption, quiet)
		x += max(n.lines.W, canvas.Width(n.caption)) + countGap(c.W)
	}
	if high == 0 {
		return 0
	}
	return high + 2
}

// countGap parts the large counters, in w columns: more than letters are.
func countGap(w int) int { return max(w/10, 3) }

// count is a number to be read from afar.
type count struct {
	caption string
	lines   glyph.Lines
}

// counters are the load, the pieces to go and the time left, all of one
// size, or nil where there is no room.
func counters(v view, w, h int) []count {
	q := v.quilt
	if v.settings.Letters == "small" {
		return nil
	}
	texts := []string{fmt.Sprintf("%d∕%d", q.Place(), len(q.Loads)), fmt.Sprint(q.Pieces.Asked - q.Pieces.Done)}
	captions := []string{v.words.LoadCaption(), v.words.ToGoCaption()}
	if v.advice.Left != nil {
		d, guess := v.advice.Left(v.state, q)
		texts, captions = append(texts, v.words.LargeTime(d)), append(captions, v.words.TimeCaption(guess))
	}
	lines, ok := glyph.Beside(w, h-1, countGap(w), texts...)
	if !ok {
		return nil
	}
	var counts []count
	for i, l := range lines {
		counts = append(counts, count{captions[i], l})
	}
	return counts
}

// legend names the fabrics of the letters: "A B Plum, C Oat".
func legend(v view, f guide.Facts) string {
	letters := matpic.Letters(f.List)
	var parts []string
	seen := make(map[int]string)
	var order []int
	for _, s := range guide.Stacks(f.Load) {
		fabric := f.List.Lines[s.Line].Fabric
		if seen[fabric] == "" {
			order = append(order, fabric)
		}
		seen[fabric] += string(letters[s.Line]) + " "
	}
	for _, fabric := range order {
		parts = append(parts, seen[fabric]+f.List.Fabrics[fabric].Name)
	}
	return v.words.Legend(parts)
}

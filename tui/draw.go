package tui

import (
	"fmt"
	"slices"
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
)

// line is one paragraph of text.
type line struct {
	text  string
	style canvas.Style
}

// wrapped breaks paragraphs to w columns; what hangs over is indented under
// its first line by hang.
func wrapped(lines []line, w int) []line {
	var out []line
	for _, l := range lines {
		for _, part := range canvas.Wrap(l.text, w) {
			out = append(out, line{part, l.style})
		}
	}
	return out
}

// large draws large text with its top left corner at x, y.
func large(c *canvas.Canvas, x, y int, l glyph.Lines, s canvas.Style) {
	for i, row := range l.Rows {
		c.Text(x, y+i, row, s)
	}
}

// middle draws a page without a picture: large text on top, lines under it.
func middle(c *canvas.Canvas, big []string, lines []line) {
	rows := wrapped(lines, c.W-2)
	y := 0
	if l, ok := glyph.Fit(c.W-2, min(c.H-len(rows)-1, c.H/2), big...); ok && big != nil {
		large(c, 1, 0, l, strong)
		y = l.H + 1
	}
	for i, r := range rows {
		c.Text(1, y+i, r.text, r.style)
	}
}

func (s walk) title(v view) string   { return "" }
func (s walk) caution(v view) string { return guide.Write(v.words, v.facts()).Caution }

// picture is what is drawn beside the words.
type picture struct {
	size   func(w, h int) (cols, rows int)
	draw   func(cols, rows int) *canvas.Canvas
	legend string
}

// body gives the picture as much width as the words can spare. Where the
// words need all there is, they stand alone; and where even that is too
// little, in pages.
func (s walk) body(v view, c *canvas.Canvas) {
	facts := v.facts()
	paragraphs, big := s.paragraphs(v, guide.Write(v.words, facts))
	pic := s.picture(v, facts)
	const gap = 3
	for _, share := range []int{50, 45, 38, 30} {
		cols, rows := pic.size(c.W*share/100, c.H-1)
		if under := len(canvas.Wrap(pic.legend, cols)); under > 1 {
			cols, rows = pic.size(c.W*share/100, c.H-min(under, 2))
		}
		lines := wrapped(paragraphs, c.W-cols-gap)
		const headline = 4
		if len(lines) > c.H || share > 38 && len(lines)+headline > c.H {
			continue
		}
		c.Draw(0, 0, pic.draw(cols, rows))
		for i, l := range canvas.Wrap(pic.legend, cols) {
			c.Text(0, rows+i, l, quiet)
		}
		right := canvas.New(c.W-cols-gap, c.H, text)
		s.column(v, right, lines, big)
		c.Draw(cols+gap, 0, right)
		return
	}
	s.column(v, c, onePage(v, wrapped(paragraphs, c.W), s.page, c.H), big)
}

// onePage is as many of the lines as fit, of the page she has turned to;
// where they don't all fit, the last row says that there are more.
func onePage(v view, lines []line, page, rows int) []line {
	if len(lines) <= rows || rows < 2 {
		return lines[:min(len(lines), max(rows, 0))]
	}
	pages := (len(lines) + rows - 2) / (rows - 1)
	page %= pages
	from := page * (rows - 1)
	shown := slices.Clone(lines[from:min(from+rows-1, len(lines))])
	return append(shown, line{v.words.PageOf(page+1, pages), accent})
}

// picture is the panel at the fabric step, the rough cuts at the press, and
// the whole mat from there on.
func (s walk) picture(v view, f guide.Facts) picture {
	if f.Step == session.Fabric {
		if p, ok := s.panel(v, f); ok {
			return picture{p.Size, p.Draw, v.panelLegend(f, s.cut(f))}
		}
	}
	m := matpic.Picture{List: f.List, Load: f.Load, Letters: matpic.Letters(f.List), Cursor: -1, Bare: f.Step <= session.Press, Say: v.length}
	size := func(w, h int) (int, int) { return matpic.Size(f.List.Mat, w, h) }
	return picture{size, m.Draw, legend(v, f)}
}

// paragraphs are the words of a step, and what to write large over them.
func (s walk) paragraphs(v view, page guide.Page) ([]line, [][]string) {
	if s.asked != nil {
		stack := s.asked.Stacks[0]
		l := v.quilt.List().Lines[stack.Line]
		least, most := s.asked.Bounds()
		which := v.words.Stack(matpic.Letters(v.quilt.List())[stack.Line], v.words.Pieces(l, len(stack.Pieces)), v.quilt.List().Fabrics[l.Fabric].Name, l.Label)
		return []line{{v.words.SpoiledOf(s.asked.Left), strong}, {which, accent}, {v.words.FromTo(least, most), text}},
			[][]string{{string(matpic.Letters(v.quilt.List())[stack.Line]) + ": " + or(s.entry, "?")}}
	}
	lines := []line{{page.Do, strong}}
	for _, item := range page.Items {
		lines = append(lines, line{item, accent})
	}
	if f := v.facts(); f.Step == session.Fabric {
		lines = append(lines, s.straightCuts(v, f)...)
	}
	for _, more := range page.More {
		lines = append(lines, line{more, text})
	}
	if s.lifted {
		lines = append(lines, line{v.words.Lifted(), warn})
	}
	if s.ragged {
		lines = append(lines, line{v.words.Ragged(), warn})
	}
	if s.entry != "" && s.number() > 0 {
		return append([]line{{v.words.Spoiled(s.number()), strong}}, lines[1:]...), [][]string{{v.words.LargeSpoiled(s.entry)}, {s.entry}}
	}
	return lines, page.Large
}

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// column draws large words, the lines, and the large counters at the foot.
// Numbers to cut by may take more than half of it, a mere word a third: the
// counters come before a larger word.
func (s walk) column(v view, c *canvas.Canvas, lines []line, big [][]string) {
	y, free := 0, c.H-len(lines)
	for _, try := range big {
		most := c.H / 3
		if strings.ContainsAny(try[0], "0123456789") {
			most = c.H * 3 / 5
		}
		if l, ok := glyph.Fit(c.W, min(free-1, max(most, 3)), try...); ok {
			large(c, 0, 0, l, strong)
			y = l.H + 1
			break
		}
	}
	for i, l := range lines {
		c.Text(0, y+i, l.text, l.style)
	}
	counts := counters(v, c.W, min(free-y-1, max(c.H/4, 4)))
	y = c.H
	for _, n := range counts {
		y = min(y, c.H-n.lines.H)
	}
	x := 0
	for _, n := range counts {
		large(c, x, y, n.lines, accent)
		c.Text(x, y-1, n.caption, quiet)
		x += max(n.lines.W, canvas.Width(n.caption)) + countGap
	}
}

// countGap parts the large counters.
const countGap = 3

// count is a number to be read from afar.
type count struct {
	caption string
	lines   glyph.Lines
}

// counters are the load, the pieces to go and the time left, all of one
// size, or nil where there is no room.
func counters(v view, w, h int) []count {
	q := v.quilt
	texts := []string{fmt.Sprintf("%d∕%d", q.Place(), len(q.Loads)), fmt.Sprint(q.Pieces.Asked - q.Pieces.Done)}
	captions := []string{v.words.LoadCaption(), v.words.ToGoCaption()}
	if v.advice.Left != nil {
		d, guess := v.advice.Left(v.state, q)
		texts, captions = append(texts, v.words.LargeTime(d)), append(captions, v.words.TimeCaption(guess))
	}
	lines, ok := glyph.Beside(w, h-1, countGap, texts...)
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

package tui

import (
	"slices"

	"example.org/matside/tui/canvas"
	"example.org/matside/tui/glyph"
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
func (v view) middle(c *canvas.Canvas, big []string, lines []line) {
	if v.settings.Letters == "small" {
		big = nil
	}
	middle(c, big, lines)
}

func middle(c *canvas.Canvas, big []string, lines []line) {
	rows := wrapped(lines, c.W-2)
	y := 0
	if l, ok := glyph.Fit(c.W-2, min(c.H-len(rows)-1, c.H/2), big...); ok {
		large(c, 1, 0, l, strong)
		y = l.H + 1
	}
	for i, r := range rows {
		c.Text(1, y+i, r.text, r.style)
	}
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

// big is what to write large, unless she wants small letters.
func (v view) big(tries [][]string) [][]string {
	if v.settings.Letters == "small" {
		return nil
	}
	return tries
}

// more shows at the right edge of a list, drawn from row top to row bottom,
// that it goes on above or below.
func more(c *canvas.Canvas, top, bottom int, above, below bool) {
	if above {
		c.Text(c.W-1, top, "↑", accent)
	}
	if below {
		c.Text(c.W-1, bottom, "↓", accent)
	}
}

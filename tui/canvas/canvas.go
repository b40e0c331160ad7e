package canvas

import "strings"

// Style is how a cell looks. Ink and Paper are indexes into a look's colours;
// the rest stands in every look, without colour too.
type Style struct {
	Ink, Paper    uint8
	Bold, Reverse bool
}

// cell is one column of one row. A character two columns wide fills the cell
// to its right with an empty text.
type cell struct {
	text  string
	style Style
}

// Canvas is a grid of W by H cells.
type Canvas struct {
	W, H  int
	cells []cell
	zones []zone
}

// New returns a canvas of blanks in one style.
func New(w, h int, s Style) *Canvas {
	c := &Canvas{W: max(w, 0), H: max(h, 0)}
	c.cells = make([]cell, c.W*c.H)
	for i := range c.cells {
		c.cells[i] = cell{" ", s}
	}
	return c
}

// in reports whether x, y is a cell of c.
func (c *Canvas) in(x, y int) bool { return x >= 0 && y >= 0 && x < c.W && y < c.H }

// set puts one character, width columns wide, at x, y. What it would cut in
// half is blanked.
func (c *Canvas) set(x, y int, text string, width int, s Style) {
	if !c.in(x, y) || x+width > c.W {
		return
	}
	row := c.cells[y*c.W : (y+1)*c.W]
	if row[x].text == "" && x > 0 {
		row[x-1].text = " "
	}
	if end := x + width; end < c.W && row[end].text == "" {
		row[end].text = " "
	}
	row[x] = cell{text, s}
	for i := 1; i < width; i++ {
		row[x+i] = cell{"", s}
	}
}

// Rune puts one character of one column at x, y.
func (c *Canvas) Rune(x, y int, r rune, s Style) { c.set(x, y, oneColumn(r), 1, s) }

// Over puts one character at x, y and keeps the paper that is there.
func (c *Canvas) Over(x, y int, r rune, s Style) {
	if c.in(x, y) {
		s.Paper = c.cells[y*c.W+x].style.Paper
		c.set(x, y, oneColumn(r), 1, s)
	}
}

// At returns the character at x, y, "" outside and on the right half of a
// wide one.
func (c *Canvas) At(x, y int) string {
	if !c.in(x, y) {
		return ""
	}
	return c.cells[y*c.W+x].text
}

// Text puts a line of text at x, y and returns the column after it. What
// does not fit is left out: callers wrap or shorten.
func (c *Canvas) Text(x, y int, text string, s Style) int {
	for text != "" {
		var one string
		var width int
		one, width, text = next(text)
		if width == 0 {
			continue
		}
		c.set(x, y, one, width, s)
		x += width
	}
	return x
}

// Right puts a line of text so that it ends before column x.
func (c *Canvas) Right(x, y int, text string, s Style) { c.Text(x-Width(text), y, text, s) }

// Fill fills a rectangle with one character.
func (c *Canvas) Fill(x, y, w, h int, r rune, s Style) {
	text := oneColumn(r)
	for j := max(y, 0); j < min(y+h, c.H); j++ {
		for i := max(x, 0); i < min(x+w, c.W); i++ {
			c.set(i, j, text, 1, s)
		}
	}
}

// Draw lays another canvas over this one, zones and all, with its top left
// corner at x, y.
func (c *Canvas) Draw(x, y int, o *Canvas) {
	for j := range o.H {
		for i := range o.W {
			from := o.cells[j*o.W+i]
			if from.text == "" || !c.in(x+i, y+j) {
				continue
			}
			width := 1
			if i+1 < o.W && o.cells[j*o.W+i+1].text == "" {
				width = 2
			}
			c.set(x+i, y+j, from.text, width, from.style)
		}
	}
	for _, z := range o.zones {
		c.Zone(x+z.x, y+z.y, z.w, z.h, z.name)
	}
}

// Lines returns the plain text of each row, trailing blanks dropped.
func (c *Canvas) Lines() []string {
	lines := make([]string, c.H)
	var b strings.Builder
	for y := range c.H {
		b.Reset()
		for _, cell := range c.cells[y*c.W : (y+1)*c.W] {
			b.WriteString(cell.text)
		}
		lines[y] = strings.TrimRight(b.String(), " ")
	}
	return lines
}

// Render returns the rows with their styles, joined by line feeds. paint
// turns a style into the escape sequence that switches to it from any other,
// or into "" where nothing needs switching; the sequence after a row's last
// styled cell is reset.
func (c *Canvas) Render(paint func(Style) string) string {
	const reset = "\x1b[0m"
	var b strings.Builder
	b.Grow(len(c.cells) * 2)
	for y := range c.H {
		if y > 0 {
			b.WriteByte('\n')
		}
		var now string
		var last Style
		for x, cell := range c.cells[y*c.W : (y+1)*c.W] {
			if x == 0 || cell.style != last {
				last = cell.style
				if seq := paint(last); seq != now {
					if seq == "" {
						b.WriteString(reset)
					}
					b.WriteString(seq)
					now = seq
				}
			}
			b.WriteString(cell.text)
		}
		if now != "" {
			b.WriteString(reset)
		}
	}
	return b.String()
}

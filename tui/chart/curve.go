package chart

import (
	"strconv"

	"example.org/matside/tui/canvas"
)

// Curve is a chance after 1, 2, … times, with two places along it.
type Curve struct {
	Chances []float64 // from 0 to 1
	Here    int       // times so far, 0 for none
	Due     int       // when something is due, 0 for never
}

// dot is the bit of each of a Braille character's dots, by row and column.
var dot = [4][2]rune{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// The least room in which a curve says anything.
const minCols, minRows = 16, 5

// Draw fills c: chances from 0 to 100 % upward, times to the right, a column
// of dots where she is and a broken one where it is due. It reports false,
// and draws nothing, where there is too little room.
func (k Curve) Draw(c *canvas.Canvas, s Style) bool {
	const left = 5 // the scale and the axis
	w, h := c.W-left-1, c.H-2
	if c.W < minCols || c.H < minRows || len(k.Chances) < 2 {
		return false
	}
	col := func(n int) int { return left + (2*n*(w-1)+len(k.Chances))/(2*len(k.Chances)) }
	k.axes(c, left, h, col, s)
	for y := range h {
		if k.Due > 0 && k.Due <= len(k.Chances) && y%2 == 0 {
			c.Rune(col(k.Due), y, '╎', s.Part)
		}
		if k.Here > 0 && k.Here <= len(k.Chances) {
			c.Rune(col(k.Here), y, '┃', s.Bar)
		}
	}
	k.line(c, left, w, h, s)
	return true
}

func (k Curve) axes(c *canvas.Canvas, left, h int, col func(int) int, s Style) {
	c.Right(left-1, 0, "100%", s.Text)
	c.Right(left-1, h/2, "50%", s.Text)
	c.Right(left-1, h-1, "0%", s.Text)
	for y := range h {
		c.Rune(left-1, y, '│', s.Text)
	}
	c.Rune(left-1, h, '└', s.Text)
	c.Fill(left, h, c.W-left, 1, '─', s.Text)
	next := 0
	for n := 1; n <= len(k.Chances); n++ {
		text := strconv.Itoa(n)
		if x := col(n); x >= next && x+len(text) <= c.W {
			c.Text(x, h+1, text, s.Text)
			next = x + len(text) + 2
		}
	}
}

// line dots the chances, joined by straight lines: 2 dots a column, 4 a row.
func (k Curve) line(c *canvas.Canvas, left, w, h int, s Style) {
	cells := make(map[[2]int]rune)
	put := func(x, y int) { cells[[2]int{x / 2, y / 4}] |= dot[y%4][x%2] }
	last := -1
	for x := range 2 * w {
		t := float64(x) * float64(len(k.Chances)) / float64(2*(w-1))
		y := int(float64(4*h-1)*(1-min(max(k.at(t), 0), 1)) + 0.5)
		for from := y; ; {
			put(x, from)
			if last < 0 || from == last || from+1 == last || from-1 == last {
				break
			}
			if from < last {
				from++
			} else {
				from--
			}
		}
		last = y
	}
	for at, bits := range cells {
		c.Over(left+at[0], at[1], 0x2800+bits, s.Bar)
	}
}

// at is the chance after t times, by straight lines from 0 at 0.
func (k Curve) at(t float64) float64 {
	n := int(t)
	from := 0.0
	if n > 0 {
		from = k.Chances[min(n, len(k.Chances))-1]
	}
	if n >= len(k.Chances) {
		return from
	}
	return from + (k.Chances[n]-from)*(t-float64(n))
}

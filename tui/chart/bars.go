package chart

import (
	"example.org/matside/tui/canvas"
)

// Bar is one row of a bar chart: its length is Value, the last Part of it
// drawn apart.
type Bar struct {
	Label string // before the bar
	Value int
	Part  int    // at most Value: what of it went wrong
	Says  string // after the bar: the number in words
}

// Style is how the parts of a chart look.
type Style struct{ Text, Bar, Part canvas.Style }

// Bars draws one bar a row from the top of c, all to one scale, as many as
// there are rows, the last ones where there are more. A value that is not
// zero has a bar of one cell at least. It returns the rows taken.
func Bars(c *canvas.Canvas, bars []Bar, s Style) int {
	bars = bars[max(len(bars)-c.H, 0):]
	labels, says, most := 0, 0, 1
	for _, b := range bars {
		labels, says, most = max(labels, canvas.Width(b.Label)), max(says, canvas.Width(b.Says)), max(most, b.Value)
	}
	labels = min(labels, c.W/2)
	room := c.W - labels - says - 2
	for y, b := range bars {
		c.Text(0, y, canvas.Fit(b.Label, labels), s.Text)
		x := labels + 1
		if room > 0 {
			n, part := cells(b.Value, most, room), cells(b.Part, most, room)
			part = min(part, n)
			c.Fill(x, y, n-part, 1, '█', s.Bar)
			c.Fill(x+n-part, y, part, 1, '╳', s.Part)
			x += n + 1
		}
		c.Text(x, y, canvas.Fit(b.Says, c.W-x), s.Text)
	}
	return len(bars)
}

// cells is how long a bar is: rounded, and one at least for what is there.
func cells(value, most, room int) int {
	if value <= 0 {
		return 0
	}
	return max((2*value*room+most)/(2*most), 1)
}

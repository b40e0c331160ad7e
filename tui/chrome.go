package tui

import (
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
	"example.org/matside/tui/words"
)

// The smallest window the screens are made for.
const minWidth, minHeight = 60, 20

// Styles of text on the page.
var (
	text   = canvas.Style{Ink: look.Text}
	quiet  = canvas.Style{Ink: look.Quiet}
	strong = canvas.Style{Ink: look.Strong, Bold: true}
	accent = canvas.Style{Ink: look.Accent, Bold: true}
	good   = canvas.Style{Ink: look.Good}
	warn   = canvas.Style{Ink: look.Warn, Bold: true}
	mark   = canvas.Style{Ink: look.Mark}
	alarm  = canvas.Style{Ink: look.Warn, Bold: true, Reverse: true}

	band       = canvas.Style{Ink: look.Text, Paper: look.Band}
	bandStrong = canvas.Style{Ink: look.Strong, Paper: look.Band, Bold: true}
	bandKey    = canvas.Style{Ink: look.Accent, Paper: look.Band, Bold: true}
)

// draw draws the whole window: the heading and the trail on top, the screen's
// body, then caution, mat, notice and keys, each always in the same place.
func (f *frame) draw() *canvas.Canvas {
	c := canvas.New(f.w, f.h, text)
	if f.small() {
		f.drawSmall(c)
		return c
	}
	v := f.view()
	f.heading(v, c)
	var above []line // the mat's line
	if text := f.screen.caution(v); text != "" {
		above = wrapped([]line{{v.words.Caution(text), warn}}, c.W-2)
	}
	notice := wrapped([]line{f.said(v)}, c.W-2)
	if len(notice) > 1 { // too long for its place: a hint cut off is none
		above, notice = append(above, notice...), nil
	}
	const under = 4 // rule, mat, rule, notice
	bottom := c.H - under - keyRows(c.H)
	top := bottom - len(above)
	for i, l := range above {
		c.Text(1, top+i, l.text, l.style)
	}
	body := canvas.New(c.W-2, top-headRows, text)
	f.screen.body(v, body)
	c.Draw(1, headRows, body)
	f.rule(v, c, bottom)
	f.matLine(v, c, bottom+1)
	c.Fill(1, bottom+2, c.W-2, 1, '─', mark)
	for _, l := range notice {
		c.Text(1, bottom+3, l.text, l.style)
	}
	f.keyLine(c, bottom+4)
	return c
}

// headRows are the heading, the trail and a blank.
const headRows = 3

func (f *frame) drawSmall(c *canvas.Canvas) {
	lines := canvas.Wrap(f.words.TooSmall(minWidth, minHeight, f.w, f.h), max(f.w, 1))
	for i, l := range lines {
		c.Text(0, i, l, strong)
	}
}

// heading is the quilt and where she is, and below it the trail of steps.
func (f *frame) heading(v view, c *canvas.Canvas) {
	c.Fill(0, 0, c.W, 1, ' ', band)
	right := ""
	if q := v.quilt; q != nil {
		right = v.words.LoadOf(q.Place(), len(q.Loads)) + "   " + v.words.PiecesOf(q.Pieces.Done, q.Pieces.Asked)
		if l := q.InHand(); l != nil && l.Recut {
			right = v.words.Recut() + "   " + right
		}
	}
	name := v.words.Name()
	if v.quilt != nil {
		name = v.quilt.Name
	}
	c.Text(1, 0, canvas.Fit(name, c.W-4-canvas.Width(right)), bandStrong)
	c.Right(c.W-1, 0, right, bandStrong)
	var left int
	if title := f.screen.title(v); title != "" || v.quilt == nil || v.quilt.InHand() == nil {
		left = c.Text(1, 1, words.Capital(title), strong)
	} else {
		left = f.trail(v, c, int(v.quilt.Step))
	}
	if v.quilt != nil && v.quilt.InHand() != nil && v.advice.Left != nil {
		time := v.words.TimeLeft(v.advice.Left(v.state, v.quilt))
		if canvas.Width(time) > c.W-left-3 {
			time = v.words.TimeLeftShort(v.advice.Left(v.state, v.quilt))
		}
		c.Right(c.W-1, 1, time, text)
	}
}

// trail draws the five steps: done ones with their mark, the one in hand in
// capitals, reversed.
func (f *frame) trail(v view, c *canvas.Canvas, step int) int {
	gap := "  "
	if c.W < 80 {
		gap = " "
	}
	x := 1
	for i := range session.Steps {
		switch word := v.words.Step(i); {
		case i < step:
			x = c.Text(x, 1, "✓ "+word, good)
		case i == step:
			x = c.Text(x, 1, " "+strings.ToUpper(word)+" ", canvas.Style{Ink: look.Strong, Bold: true, Reverse: true})
		default:
			x = c.Text(x, 1, word, quiet)
		}
		x = c.Text(x, 1, gap, text)
	}
	return x
}

// rule parts body and mat; in the demo it says so.
func (f *frame) rule(v view, c *canvas.Canvas, y int) {
	c.Fill(1, y, c.W-2, 1, '─', mark)
	if f.demo {
		c.Text(4, y, " "+v.words.DemoNotice()+" ", warn)
	}
}

// matLine says how the mat in use stands, in words and with a gauge.
func (f *frame) matLine(v view, c *canvas.Canvas, y int) {
	m := v.mat()
	if m == nil {
		return
	}
	due := v.state.Due(m.Name)
	parts := []line{{v.words.SinceWash(m.Since) + ", ", text}, {v.words.BeforeWash(due.Left), text}}
	switch {
	case v.now.Before(m.DryAt):
		parts = []line{{v.words.Drying(v.words.Clock(m.DryAt)), warn}}
	case due.Left <= 0:
		parts[1] = line{v.words.WashDue(), alarm}
	case c.W < 80:
		parts = []line{{v.words.SinceAndDue(m.Since, due.Left), text}}
	}
	room := c.W - 2 - 4 // gaps and the brackets of the gauge
	for _, p := range parts {
		room -= canvas.Width(p.text)
	}
	const mostCells, leastCells = 16, 3
	name := canvas.Fit(v.words.Mat(m.Name), room-leastCells)
	cells := max(min(due.After, mostCells, room-canvas.Width(name)), leastCells)
	x := c.Text(1, y, name, strong) + 1
	x = gauge(c, x, y, cells, m.Since, due.After) + 1
	for _, p := range parts {
		x = c.Text(x, y, p.text, p.style)
	}
}

// gauge draws n of the most as filled cells between brackets.
func gauge(c *canvas.Canvas, x, y, cells, n, most int) int {
	full := min((n*cells+most-1)/most, cells)
	x = c.Text(x, y, "[", mark)
	for i := range cells {
		r := '·'
		if i < full {
			r = '■'
		}
		c.Rune(x+i, y, r, strong)
	}
	return c.Text(x+cells, y, "]", mark)
}

// said is the notice: what is being saved, what failed, or why a key was
// refused.
func (f *frame) said(v view) line {
	switch {
	case f.saver.err != nil:
		return line{guide.NotSaved(v.words, f.saver.err), alarm}
	case f.leaving != nil:
		return line{v.words.LeavingSoon(), strong}
	case f.saver.out && f.notice == "":
		return line{strings.TrimSpace(v.words.Saving() + " " + f.saver.step), quiet}
	case f.notice == "" && f.watch.news != "" && f.form == nil:
		return line{v.words.NewsNotice(), accent}
	}
	return line{f.notice, strong}
}

// keyRows is how high the band of keys is: a large target where there is
// room for one.
func keyRows(h int) int {
	if h >= 30 {
		return 3
	}
	return 1
}

// keyLine shows the keys that matter now, as many as there is room for; the
// way to all the others and the way out always. Each is a target for the
// pointer; in a low window the row above belongs to it.
func (f *frame) keyLine(c *canvas.Canvas, y int) {
	rows := keyRows(c.H)
	c.Fill(0, y, c.W, rows, ' ', band)
	shown, last := f.keysToShow()
	width := func(b binding) int { return canvas.Width(b.key) + 1 + canvas.Width(b.says) + 2 }
	room := c.W - 2
	for _, b := range last {
		room -= width(b)
	}
	x := 1
	put := func(b binding) {
		if rows == 1 {
			c.Zone(x-1, y-1, width(b), 2, b.name)
		} else {
			c.Zone(x-1, y, width(b), rows, b.name)
		}
		x = c.Text(x, y+rows/2, b.key, bandKey)
		x = c.Text(x+1, y+rows/2, b.says, band) + 2
	}
	for _, b := range shown {
		if width(b) <= room {
			room -= width(b)
			put(b)
		}
	}
	for _, b := range last {
		put(b)
	}
}

// keysToShow are the keys of the band, and those that close it.
func (f *frame) keysToShow() (shown, last []binding) {
	for _, b := range f.bindings() {
		b.key = f.words.Key(b.key)
		switch {
		case b.name == "help" || b.name == "leave":
			last = append(last, b)
		case b.refused != "" && b.name != "on" && b.name != "back": // in the help, with its reason
		case b.key != "" && b.kind == meant && b.name != "sleep" && b.name != "look":
			shown = append(shown, b)
		}
	}
	return shown, last
}

// plainError is an error as one line.
func plainError(w words.Words, err error) string {
	return strings.Join(strings.Fields(w.Error(err)), " ")
}

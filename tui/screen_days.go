package tui

import (
	"cmp"
	"slices"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/chart"
)

// days looks back: pieces an evening, minutes a step, what got spoiled where.
type days struct{ page int }

func (s days) bindings(v view) []binding {
	turn := func(by int) func() action {
		return func() action { return show{days{max(s.page+by, 0)}} }
	}
	return append([]binding{
		v.homeKey(),
		v.backTo(v.home()),
		{name: "down", keys: []string{"n", "down", "right", "pgdown"}, key: "n", says: v.words.KeyNextPart(), kind: moving, do: turn(1)},
		{name: "up", keys: []string{"up", "left", "pgup"}, kind: moving, do: turn(-1)},
	}, v.everywhere(s)...)
}

func (days) title(v view) string { return v.words.DaysBehind() }
func (days) caution(view) string { return "" }

// charts are how charts look here.
var charts = chart.Style{Text: text, Bar: accent, Part: warn}

// part is one part of a screen that is shown in columns, under each other, or
// one at a time, as the window has room.
type part struct {
	title string
	rows  int // that it would like
	draw  func(c *canvas.Canvas)
}

func (s days) body(v view, c *canvas.Canvas) {
	if len(v.state.Days) == 0 {
		v.middle(c, nil, []line{{v.words.NoDaysYet(), strong}, {}, {v.words.DaysWillShow(), text}})
		return
	}
	showParts(v, c, s.page, []part{v.evenings(), v.minutes(), v.spoiledIn(), v.spoiledAt()})
}

// showParts lays parts out for the window.
func showParts(v view, c *canvas.Canvas, page int, parts []part) {
	high := 0
	for _, p := range parts {
		high += p.rows + 2
	}
	const wide, gap = 100, 4
	switch {
	case c.W >= wide:
		half := (len(parts) + 1) / 2
		w := (c.W - gap) / 2
		stack(c, 0, w, parts[:half])
		stack(c, w+gap, w, parts[half:])
	case high <= c.H:
		stack(c, 0, c.W, parts)
	default:
		i := page % len(parts)
		stack(c, 0, c.W, parts[i:i+1])
		c.Text(0, c.H-1, v.words.PageOf(i+1, len(parts)), accent)
	}
}

// stack puts parts under each other, the room shared out by what they like.
func stack(c *canvas.Canvas, x, w int, parts []part) {
	want := 0
	for _, p := range parts {
		want += p.rows
	}
	room := c.H - 2*len(parts)
	y := 0
	for _, p := range parts {
		h := p.rows
		if want > room {
			h = p.rows * room / want
		}
		c.Text(x, y, canvas.Fit(p.title, w), strong)
		at := canvas.New(w, max(h, 0), text)
		p.draw(at)
		c.Draw(x, y+1, at)
		y += h + 2
	}
}

// evenings are the pieces of each evening.
func (v view) evenings() part {
	var bars []chart.Bar
	for _, d := range v.state.Days {
		bars = append(bars, chart.Bar{Label: v.words.Day(d.Date), Value: d.Pieces + d.Spoiled, Part: d.Spoiled, Says: v.words.GoodAndSpoiled(d.Pieces, d.Spoiled)})
	}
	return part{v.words.PiecesAnEvening(), min(max(len(bars), 3), 14), func(c *canvas.Canvas) { chart.Bars(c, bars, charts) }}
}

// minutes are her usual minutes for each step.
func (v view) minutes() part {
	p := v.state.Pace()
	var bars []chart.Bar
	for i, s := range p.Step {
		bars = append(bars, chart.Bar{Label: v.words.Step(i), Value: int(s.Mid / time.Second), Says: v.words.UsualTime(s.Low, s.Mid, s.High, s.Guess)})
	}
	return part{v.words.MinutesAStep(), len(bars), func(c *canvas.Canvas) { chart.Bars(c, bars, charts) }}
}

// spoiled walks over all spoiled pieces that are known one by one.
func (v view) spoiled(f func(list *cutlist.List, l *session.Load, piece int)) {
	for _, q := range v.state.Quilts {
		for i := range q.Loads {
			l := &q.Loads[i]
			for _, p := range l.Spoiled {
				if p < len(l.Pieces) {
					f(q.ListOf(l), l, p)
				}
			}
		}
	}
}

// spoiledIn is how many pieces were spoiled of each fabric.
func (v view) spoiledIn() part {
	count := make(map[string]int)
	v.spoiled(func(list *cutlist.List, l *session.Load, piece int) {
		count[list.Fabrics[list.Lines[l.Pieces[piece].Line].Fabric].Name]++
	})
	var bars []chart.Bar
	for name, n := range count {
		bars = append(bars, chart.Bar{Label: name, Value: n, Part: n, Says: v.words.Plain(n)})
	}
	slices.SortFunc(bars, func(a, b chart.Bar) int {
		return cmp.Or(cmp.Compare(a.Value, b.Value), cmp.Compare(b.Label, a.Label))
	})
	return part{v.words.SpoiledByFabric(), max(len(bars), 1), func(c *canvas.Canvas) {
		if len(bars) == 0 {
			c.Text(0, 0, v.words.TotalSpoiled(0), text)
		}
		slices.Reverse(bars[max(len(bars)-c.H, 0):])
		chart.Bars(c, bars, charts)
	}}
}

// spoiledAt is how many were spoiled in each ninth of the mat.
func (v view) spoiledAt() part {
	var ninths [3][3]int
	v.spoiled(func(list *cutlist.List, l *session.Load, piece int) {
		var x, y, n int64
		for _, p := range l.Pieces[piece].Outline {
			x, y, n = x+int64(p.X/1000), y+int64(p.Y/1000), n+1
		}
		if n > 0 {
			ninth := func(sum int64, side int64) int { return int(min(max(3*sum/n/max(side/1000, 1), 0), 2)) }
			ninths[ninth(y, int64(list.Mat.Height))][ninth(x, int64(list.Mat.Width))]++
		}
	})
	return part{v.words.SpoiledByPlace(), 7, func(c *canvas.Canvas) {
		for y, row := range ninths {
			for x, n := range row {
				c.Text(x*7, 2*y, "├──────┤", mark)
				style := quiet
				if n > 0 {
					style = warn
				}
				c.Text(x*7+3, 2*y+1, v.words.Plain(n), style)
				c.Rune(x*7, 2*y+1, '│', mark)
				c.Rune(x*7+7, 2*y+1, '│', mark)
			}
		}
		c.Text(0, 6, "└──────┴──────┴──────┘", mark)
		c.Text(0, 0, "┌──────┬──────┬──────┐", mark)
		for y := 2; y < 6; y += 2 {
			c.Text(0, y, "├──────┼──────┼──────┤", mark)
		}
	}}
}

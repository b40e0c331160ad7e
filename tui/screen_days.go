package tui

import (
	"time"

	"example.org/matside/tui/canvas"
	"example.org/matside/tui/chart"
	"example.org/matside/tui/guide"
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

// showParts lays parts out for the window: in two columns, or under each other
// in as many pages as they need.
func showParts(v view, c *canvas.Canvas, page int, parts []part) {
	const wide, gap = 100, 4
	if c.W >= wide {
		half := (len(parts) + 1) / 2
		w := (c.W - gap) / 2
		stack(c, 0, w, parts[:half])
		stack(c, w+gap, w, parts[half:])
		return
	}
	pages := paged(parts, c.H)
	if len(pages) == 1 {
		stack(c, 0, c.W, parts)
		return
	}
	i := page % len(pages)
	above := canvas.New(c.W, c.H-1, text)
	stack(above, 0, c.W, pages[i])
	c.Draw(0, 0, above)
	c.Text(0, c.H-1, v.words.PageOf(i+1, len(pages)), accent)
}

// paged deals parts out to pages of h rows, in their order. What leaves room
// for the row that tells of pages is one page.
func paged(parts []part, h int) [][]part {
	var pages [][]part
	room := 0
	for _, p := range parts {
		if high := p.rows + 2; len(pages) == 0 || high > room {
			pages, room = append(pages, nil), h-1
		}
		pages[len(pages)-1] = append(pages[len(pages)-1], p)
		room -= p.rows + 2
	}
	return pages
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

// spoiledIn is how many pieces were spoiled of each fabric.
func (v view) spoiledIn() part {
	var bars []chart.Bar
	for _, c := range guide.SpoiledIn(v.state) {
		bars = append(bars, chart.Bar{Label: c.Name, Value: c.N, Part: c.N, Says: v.words.Plain(c.N)})
	}
	return part{v.words.SpoiledByFabric(), max(len(bars), 1), func(c *canvas.Canvas) {
		if len(bars) == 0 {
			c.Text(0, 0, v.words.TotalSpoiled(0), text)
		}
		chart.Bars(c, bars[:min(len(bars), max(c.H, 0))], charts)
	}}
}

// spoiledAt is how many were spoiled in each ninth of the mat.
func (v view) spoiledAt() part {
	ninths := guide.SpoiledAt(v.state)
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

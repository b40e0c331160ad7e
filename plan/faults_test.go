package plan

import (
	"fmt"
	"math"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// faults looks for what plan-json.md forbids, in its own simple way: convex
// outlines only, distances in floats with a tolerance of a nanometre.
func faults(q *queue.Queue, wanted [][]int) (out []string) {
	say := func(format string, a ...any) { out = append(out, fmt.Sprintf(format, a...)) }
	l := q.List
	seen := map[piece]bool{}
	missing := make([]int, len(l.Lines))
	for _, s := range q.Short {
		for i, n := range s.Missing {
			missing[i] += n
		}
	}
	rx, ry := (l.Mat.Width-l.Mat.UsableWidth)/2, (l.Mat.Height-l.Mat.UsableHeight)/2
	for _, load := range q.Loads {
		for i, r := range load.RoughCuts {
			if r.X < 0 || r.Y < 0 || r.X+r.Width > l.Mat.Width || r.Y+r.Height > l.Mat.Height {
				say("load %d: rough cut %d off the mat", load.Number, i)
			}
			for k, o := range load.RoughCuts[:i] {
				if r.X < o.X+o.Width && o.X < r.X+r.Width && r.Y < o.Y+o.Height && o.Y < r.Y+r.Height {
					say("load %d: rough cuts %d and %d overlap", load.Number, i, k)
				}
			}
		}
		for i, p := range load.Pieces {
			id := piece{p.Line, p.Copy}
			if seen[id] {
				say("line %d copy %d twice", p.Line, p.Copy)
			}
			seen[id] = true
			r := load.RoughCuts[p.RoughCut]
			if r.Fabric != l.Lines[p.Line].Fabric {
				say("load %d: piece %d in another fabric", load.Number, i)
			}
			x0, y0, x1, y1 := box(p.Outline)
			if x0 < rx || y0 < ry || x1 > rx+l.Mat.UsableWidth || y1 > ry+l.Mat.UsableHeight {
				say("load %d: piece %d out of reach", load.Number, i)
			}
			m := l.Margin
			if x0 < r.X+m || y0 < r.Y+m || x1 > r.X+r.Width-m || y1 > r.Y+r.Height-m {
				say("load %d: piece %d too near the edge of its rough cut", load.Number, i)
			}
			for k, o := range load.Pieces[:i] {
				if d := apart(p.Outline, o.Outline); d < float64(l.Gap)-1 {
					say("load %d: pieces %d and %d are %.0f nm apart", load.Number, i, k, d)
				}
			}
		}
	}
	for i := range l.Lines {
		if l.Lines[i].Kind != cutlist.OnMat {
			continue
		}
		n := 0
		for id := range seen {
			if id.line == i {
				n++
			}
		}
		if n+missing[i] != len(wanted[i]) {
			say("line %d: %d planned, %d missing, %d wanted", i, n, missing[i], len(wanted[i]))
		}
	}
	for _, s := range q.Stock {
		out = append(out, panelFaults(q, s)...)
	}
	if q.Fewest.Loads > len(q.Loads) || q.Fewest.Proved != (q.Fewest.Loads == len(q.Loads)) {
		say("%d loads, at least %d, proved %v", len(q.Loads), q.Fewest.Loads, q.Fewest.Proved)
	}
	return out
}

type pane struct{ x0, y0, x1, y1 length.Len }

func panelFaults(q *queue.Queue, s queue.PanelUse) (out []string) {
	var all []pane
	for _, r := range s.RoughCuts {
		c := q.Loads[r.Load-1].RoughCuts[r.RoughCut]
		if c.Panel != s.Panel || c.Fabric != s.Fabric {
			out = append(out, "rough cut from another panel")
		}
		all = append(all, pane{r.X, r.Y, r.X + c.Width, r.Y + c.Height})
	}
	for _, h := range s.ByHand {
		all = append(all, pane{h.X, h.Y, h.X + h.Width, h.Y + h.Height})
	}
	for i, a := range all {
		if a.x0 < 0 || a.y0 < 0 || a.x1 > s.Width || a.y1 > s.Height {
			out = append(out, fmt.Sprintf("fabric %d panel %d: %v is off the panel", s.Fabric, s.Panel, a))
		}
		for _, b := range all[:i] {
			if a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 {
				out = append(out, fmt.Sprintf("fabric %d panel %d: %v and %v overlap", s.Fabric, s.Panel, a, b))
			}
		}
	}
	if !freed(all) {
		out = append(out, fmt.Sprintf("fabric %d panel %d: straight cuts don't free it", s.Fabric, s.Panel))
	}
	return out
}

// freed says whether straight cuts separate all of them.
func freed(all []pane) bool {
	if len(all) < 2 {
		return true
	}
	for _, cut := range all {
		for _, at := range []func(p pane) (length.Len, length.Len, length.Len){
			func(p pane) (length.Len, length.Len, length.Len) { return p.x0, p.x1, cut.x1 },
			func(p pane) (length.Len, length.Len, length.Len) { return p.y0, p.y1, cut.y1 },
		} {
			var before, after []pane
			for _, p := range all {
				switch a, b, c := at(p); {
				case b <= c:
					before = append(before, p)
				case a >= c:
					after = append(after, p)
				}
			}
			if len(before)+len(after) == len(all) && len(after) > 0 {
				return freed(before) && freed(after)
			}
		}
	}
	return false
}

func box(o outline.Outline) (x0, y0, x1, y1 length.Len) {
	x0, y0, x1, y1 = o[0].X, o[0].Y, o[0].X, o[0].Y
	for _, p := range o {
		x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X), max(y1, p.Y)
	}
	return
}

// apart is how far two convex outlines are apart, less than 0 if they overlap.
func apart(a, b outline.Outline) float64 {
	if d := separation(a, b); d <= 0.5 {
		return d
	}
	least := math.Inf(1)
	for _, s := range [2][2]outline.Outline{{a, b}, {b, a}} {
		for _, p := range s[0] {
			for i, u := range s[1] {
				least = min(least, toSegment(p, u, s[1][(i+1)%len(s[1])]))
			}
		}
	}
	return least
}

// separation is the widest gap along a side's normal.
func separation(a, b outline.Outline) float64 {
	most := math.Inf(-1)
	for _, s := range [2][2]outline.Outline{{a, b}, {b, a}} {
		for i, u := range s[0] {
			v := s[0][(i+1)%len(s[0])]
			nx, ny := float64(v.Y-u.Y), -float64(v.X-u.X)
			n := math.Hypot(nx, ny)
			least := math.Inf(1)
			for _, p := range s[1] {
				least = min(least, (float64(p.X-u.X)*nx+float64(p.Y-u.Y)*ny)/n)
			}
			most = max(most, least)
		}
	}
	return most
}

func toSegment(p, a, b outline.Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	px, py := float64(p.X-a.X), float64(p.Y-a.Y)
	t := min(1, max(0, (px*dx+py*dy)/(dx*dx+dy*dy)))
	return math.Hypot(px-t*dx, py-t*dy)
}

package svgpath

import "example.org/matside/plan/internal/real"

// subpath is one stroke of the pen, in the units of its element.
type subpath struct {
	segments []segment
	closed   bool
}

// mostSegments caps the segments of a file: an outline to be cut has far fewer.
const mostSegments = 2000

// pen follows path data.
type pen struct {
	scanner
	paths    []subpath
	first    vector // where the subpath began
	here     vector
	control  vector // the last control point, for curves that go on smoothly
	smooth   byte   // 'c' or 'q' if the last command left one
	drawing  bool   // the subpath goes on
	segments int
}

// pathData reads the d attribute of a path: SVG 2, chapter 9.
func pathData(d string) ([]subpath, error) {
	p := &pen{scanner: scanner{text: d}}
	command := byte(0)
	for !p.done() {
		if c := p.letter(); c != 0 {
			command = c
		} else if command|0x20 == 'z' {
			return nil, ErrPath // a number after the path was closed
		}
		if command == 0 || len(p.paths) == 0 && command|0x20 != 'm' {
			return nil, ErrPath
		}
		if !p.draw(command) || p.bad {
			return nil, ErrPath
		}
		if p.segments > mostSegments {
			return nil, ErrTooLarge
		}
		switch command { // more numbers draw lines
		case 'm':
			command = 'l'
		case 'M':
			command = 'L'
		}
	}
	return p.paths, nil
}

// draw carries out one command, small letters from where the pen is; false
// says that there is no such command.
func (p *pen) draw(command byte) bool {
	origin := vector{}
	if command >= 'a' {
		origin = p.here
	}
	smooth := p.smooth
	p.smooth = 0
	switch command | 0x20 {
	case 'm':
		p.here = p.point(origin)
		p.first, p.drawing = p.here, false
		p.paths = append(p.paths, subpath{})
	case 'z':
		p.close()
	case 'l':
		p.add(newLine(p.here, p.point(origin)))
	case 'h':
		p.add(newLine(p.here, vector{origin.x.Add(p.number()), p.here.y}))
	case 'v':
		p.add(newLine(p.here, vector{p.here.x, origin.y.Add(p.number())}))
	case 'c':
		p.cubic(p.point(origin), origin)
	case 's':
		p.cubic(p.reflected(smooth, 'c'), origin)
	case 'q':
		p.quadratic(p.point(origin), origin)
	case 't':
		p.quadratic(p.reflected(smooth, 'q'), origin)
	case 'a':
		rx, ry, degrees := p.number(), p.number(), p.number()
		large, sweep := p.flag(), p.flag()
		if to := p.point(origin); !p.bad {
			p.add(newArc(p.here, rx, ry, degrees, large, sweep, to))
		}
	default:
		return false
	}
	return true
}

func (p *pen) point(origin vector) vector {
	x, y := p.number(), p.number()
	return origin.add(vector{x, y})
}

// reflected is the control point that makes a curve go on smoothly after
// another of its kind.
func (p *pen) reflected(smooth, kind byte) vector {
	if smooth != kind {
		return p.here
	}
	return p.here.times(two).sub(p.control)
}

func (p *pen) cubic(first, origin vector) {
	second := p.point(origin)
	p.add(newCubic(p.here, first, second, p.point(origin)))
	p.control, p.smooth = second, 'c'
}

func (p *pen) quadratic(control, origin vector) {
	p.add(newQuadratic(p.here, control, p.point(origin)))
	p.control, p.smooth = control, 'q'
}

// add draws a segment; one that goes nowhere is left out.
func (p *pen) add(s segment) {
	if !p.drawing && len(p.paths[len(p.paths)-1].segments) > 0 {
		p.paths = append(p.paths, subpath{}) // after a z without an m
	}
	p.drawing = true
	p.here = s.end()
	p.segments++
	if s.kind == line && s.end().sub(s.start()).isZero() {
		return
	}
	last := &p.paths[len(p.paths)-1]
	last.segments = append(last.segments, s)
}

// close draws back to where the subpath began.
func (p *pen) close() {
	if !p.drawing {
		return
	}
	p.add(newLine(p.here, p.first))
	p.paths[len(p.paths)-1].closed = true
	p.drawing = false
}

// polygon is a closed path through points.
func polygon(text string) ([]subpath, error) {
	p := &pen{scanner: scanner{text: text}, paths: []subpath{{}}}
	for first := true; !p.done(); first = false {
		to := p.point(vector{})
		if p.bad || p.segments > mostSegments {
			return nil, ErrPath
		}
		if first {
			p.first, p.here = to, to
			continue
		}
		p.add(newLine(p.here, to))
	}
	p.close()
	return p.paths, nil
}

// rect is a rectangle with its corners rounded by rx and ry.
func rect(x, y, w, h, rx, ry real.Real) []subpath {
	rx, ry = rx.Min(w.Half()), ry.Min(h.Half())
	r, b := x.Add(w), y.Add(h)
	p := &pen{paths: []subpath{{}}}
	p.first = vector{x.Add(rx), y}
	p.here = p.first
	round := func(to vector) { p.add(newArc(p.here, rx, ry, zero, false, true, to)) }
	p.add(newLine(p.here, vector{r.Sub(rx), y}))
	round(vector{r, y.Add(ry)})
	p.add(newLine(p.here, vector{r, b.Sub(ry)}))
	round(vector{r.Sub(rx), b})
	p.add(newLine(p.here, vector{x.Add(rx), b}))
	round(vector{x, b.Sub(ry)})
	p.add(newLine(p.here, vector{x, y.Add(ry)}))
	round(p.first)
	p.close()
	return p.paths
}

// ellipse starts at its top, so that it is level and upright where it should be.
func ellipse(cx, cy, rx, ry real.Real) []subpath {
	p := &pen{paths: []subpath{{}}}
	p.first = vector{cx, cy.Sub(ry)}
	p.here = p.first
	for _, to := range []vector{{cx.Add(rx), cy}, {cx, cy.Add(ry)}, {cx.Sub(rx), cy}, p.first} {
		p.add(newArc(p.here, rx, ry, zero, false, true, to))
	}
	p.close()
	return p.paths
}

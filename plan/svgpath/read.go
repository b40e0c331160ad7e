package svgpath

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"

	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// Read is the outline of the one closed path of an SVG file, as it lies in the
// drawing, with its bounding box at 0,0. Errors are those of this package and
// of outline.Tidy, plain sentences for the quilter.
func Read(svg []byte) (outline.Outline, error) {
	paths, err := subpaths(svg)
	if err != nil {
		return nil, err
	}
	path, err := theClosedOne(paths)
	if err != nil {
		return nil, err
	}
	corners, err := flatten(path, 0)
	if err != nil {
		return nil, err
	}
	way := 1
	if runsRound(corners).Sign() < 0 {
		way = -1
	}
	if corners, err = flatten(path, way); err != nil {
		return nil, err
	}
	return rounded(smoothed(corners, way))
}

// subpaths collects the subpaths of a file, in nanometres.
func subpaths(svg []byte) (all []subpath, err error) {
	d := xml.NewDecoder(bytes.NewReader(svg))
	d.Strict = false // programs leave their own entities about
	var stack []matrix
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) && len(all) > 0 {
			return all, nil
		} else if err != nil {
			return nil, noneRead(err, stack)
		}
		switch t := token.(type) {
		case xml.StartElement:
			m, paths, err := element(t, stack)
			if errors.Is(err, errUnseen) {
				if err := d.Skip(); err != nil {
					return nil, ErrNotSVG
				}
				continue
			}
			if err != nil {
				return nil, err
			}
			stack = append(stack, m)
			if all = append(all, paths...); segments(all) > mostSegments {
				return nil, ErrTooLarge
			}
		case xml.EndElement:
			if len(stack) > 1 {
				stack = stack[:len(stack)-1]
			}
		}
	}
}

// noneRead is what is wrong with a file that ends without a path.
func noneRead(err error, stack []matrix) error {
	if errors.Is(err, io.EOF) && len(stack) > 0 {
		return ErrNoPath
	}
	return ErrNotSVG
}

func segments(paths []subpath) (n int) {
	for i := range paths {
		n += len(paths[i].segments)
	}
	return n
}

// deepestNest caps how deep elements lie in each other.
const deepestNest = 200

// errUnseen is what element says of elements that draw nothing.
var errUnseen = errors.New("unseen")

// element is what one element does: how what is in it is moved, and what it
// draws.
func element(e xml.StartElement, stack []matrix) (matrix, []subpath, error) {
	name := e.Name.Local
	attributes := map[string]string{}
	for _, a := range e.Attr {
		if a.Name.Space == "" {
			attributes[a.Name.Local] = strings.TrimSpace(a.Value)
		}
	}
	if len(stack) == 0 {
		if name != "svg" {
			return matrix{}, nil, ErrNotSVG
		}
		m, err := scale(attributes)
		return m, nil, err
	}
	if unseen(name, attributes) || len(stack) > deepestNest {
		return matrix{}, nil, errUnseen
	}
	own, err := transform(attributes["transform"])
	if err != nil {
		return matrix{}, nil, err
	}
	m := stack[len(stack)-1].after(own)
	paths, err := drawn(name, attributes)
	for i := range paths {
		for k, s := range paths[i].segments {
			paths[i].segments[k] = s.moved(m)
		}
	}
	return m, paths, err
}

// unseen says whether an element draws nothing, whatever is in it.
func unseen(name string, attributes map[string]string) bool {
	switch name {
	case "defs", "clipPath", "mask", "marker", "pattern", "symbol", "metadata", "text", "svg", "foreignObject":
		return true
	}
	style := strings.ReplaceAll(attributes["style"], " ", "")
	return attributes["display"] == "none" || strings.Contains(style, "display:none")
}

// drawn is what an element draws, in its own units.
func drawn(name string, attributes map[string]string) ([]subpath, error) {
	switch name {
	case "path":
		return pathData(attributes["d"])
	case "polygon":
		return polygon(attributes["points"])
	}
	bad := false
	number := func(key string) real.Real {
		text, given := attributes[key]
		if !given || text == "auto" {
			return zero
		}
		s := scanner{text: strings.TrimSuffix(text, "px")}
		n := s.number()
		bad = bad || s.bad || !s.done()
		return n
	}
	var paths []subpath
	switch name {
	case "rect":
		w, h, rx, ry := number("width"), number("height"), number("rx"), number("ry")
		if rx.Sign() == 0 {
			rx = ry
		} else if ry.Sign() == 0 {
			ry = rx
		}
		if w.Sign() > 0 && h.Sign() > 0 && rx.Sign() >= 0 && ry.Sign() >= 0 {
			paths = rect(number("x"), number("y"), w, h, rx, ry)
		}
	case "circle":
		if r := number("r"); r.Sign() > 0 {
			paths = ellipse(number("cx"), number("cy"), r, r)
		}
	case "ellipse":
		if rx, ry := number("rx"), number("ry"); rx.Sign() > 0 && ry.Sign() > 0 {
			paths = ellipse(number("cx"), number("cy"), rx, ry)
		}
	}
	if bad {
		return nil, ErrPath
	}
	return paths, nil
}

// theClosedOne is the one closed path among many strokes. A path that ends
// within curveError of where it began is taken to be closed.
func theClosedOne(paths []subpath) ([]segment, error) {
	var closed [][]segment
	open := false
	for _, p := range paths {
		if len(p.segments) == 0 {
			continue
		}
		last := &p.segments[len(p.segments)-1]
		first := p.segments[0].start()
		if gap := last.end().sub(first); !p.closed && !curveError.Less(gap.length()) {
			p.closed = true
			last.p[3] = first
		}
		if p.closed {
			closed = append(closed, p.segments)
		}
		open = open || !p.closed
	}
	switch {
	case len(closed) > 1:
		return nil, ErrMany
	case len(closed) == 1:
		return closed[0], within(closed[0])
	case open:
		return nil, ErrOpen
	}
	return nil, ErrNoPath
}

// within says whether all of a path lies within reach of whole nanometres.
func within(path []segment) error {
	limit := real.Len(2 * length.MaxLen)
	for i := range path {
		s := &path[i]
		for _, p := range []vector{s.p[0], s.p[1], s.p[2], s.p[3], s.centre, s.u, s.v} {
			if limit.Less(p.x.Max(p.x.Neg())) || limit.Less(p.y.Max(p.y.Neg())) {
				return ErrTooLarge
			}
		}
	}
	return nil
}

// runsRound is twice the area a path runs round, positive if clockwise to the
// eye.
func runsRound(corners []corner) (sum real.Real) {
	for i, c := range corners {
		sum = sum.Add(c.at.cross(corners[(i+1)%len(corners)].at))
	}
	return sum
}

// dent is how deep a corner may be that is filled up: joints of curves that
// were written down with a few decimals.
var dent = real.Len(length.Micrometre)

// smoothed is corners without the joints that are dents in a smooth bulge or
// lie on a straight line.
func smoothed(corners []corner, way int) (kept []corner) {
	nanometre := real.Len(length.Nanometre)
	before := corners[len(corners)-1].at
	for i, c := range corners {
		after := corners[(i+1)%len(corners)].at
		if c.joint {
			bulges := c.at.sub(before).cross(after.sub(c.at)).Sign()*way > 0
			off := distance(c.at, before, after)
			if off.Less(nanometre) || !bulges && off.Less(dent) {
				continue
			}
		}
		kept = append(kept, c)
		before = c.at
	}
	return kept
}

// rounded is the outline through corners, each to the nearest nanometre.
func rounded(corners []corner) (outline.Outline, error) {
	limit := real.Len(4 * length.MaxLen)
	points := make([]outline.Point, len(corners))
	for i, c := range corners {
		if limit.Less(c.at.x.Max(c.at.x.Neg())) || limit.Less(c.at.y.Max(c.at.y.Neg())) {
			return nil, ErrTooLarge
		}
		points[i] = outline.Point{X: c.at.x.Nearest(), Y: c.at.y.Nearest()}
	}
	o, err := outline.Tidy(points)
	if err != nil {
		return nil, err
	}
	return o.Normalise(), nil
}

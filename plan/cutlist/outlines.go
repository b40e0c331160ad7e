package cutlist

import (
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/say"
	"example.org/matside/plan/svgpath"
)

// maxCorners caps an outline of her own.
const maxCorners = 500

// outline reads `outline NAME: X,Y X,Y X,Y …` and `outline NAME from "FILE.svg"`.
func (r *reader) outline(c *cursor) {
	c.skip()
	from := c.at
	name, ok := c.nameTo(mistake.OutlineName, c.outlineNameEnds)
	if before, again := r.outlines[name]; ok && again {
		c.wrong(from, mistake.OutlineTwice.Say(before.line), mistake.OwnOutlineName.Say())
		ok = false
	}
	mine := own{line: c.line}
	switch {
	case c.take(':'):
		mine.points = c.corners()
	case c.is("from"):
		mine.points = r.svg(c)
	case ok:
		c.missing(mistake.CornersMissing.Say(), mistake.WriteCorners.Say())
	}
	if ok {
		r.outlines[name] = mine
		r.outlineNames = append(r.outlineNames, name)
	}
}

// outlineNameEnds is where an unquoted name of an outline ends: at the colon,
// or before `from` and a quotation mark.
func (c *cursor) outlineNameEnds() int {
	stop := c.stop()
	said := c.text[c.at:stop]
	if n := strings.IndexByte(said, ':'); n >= 0 {
		return c.at + n
	}
	if quote := strings.IndexByte(said, '"'); quote >= 0 {
		before := strings.TrimRight(said[:quote], " \t")
		if n := len(before) - len("from"); n > 0 && strings.EqualFold(before[n:], "from") {
			return c.at + n
		}
	}
	return stop
}

// corners reads X,Y X,Y … with y up, and turns them into an outline.
func (c *cursor) corners() outline.Outline {
	c.skip()
	from := c.at
	end := len(c.text)
	if n := strings.IndexByte(c.rest(), '#'); n >= 0 {
		end = c.at + n
	}
	var points outline.Outline
	parts := strings.Split(c.text[from:end], ",")
	c.at = end
	numbers, ok := c.coordinates(from, parts)
	if !ok {
		return nil
	}
	for i := 0; i+1 < len(numbers); i += 2 {
		points = append(points, outline.Point{X: numbers[i], Y: -numbers[i+1]})
	}
	return c.tidy(from, points)
}

// coordinates reads the numbers between the commas. Behind the first comma and
// before the last, each part is the y of one corner and the x of the next; both
// may hold spaces (2 1/2), so the part is cut where both halves are lengths.
// There is never more than one such place: the second half would have to be a
// length with and without a number in front.
func (c *cursor) coordinates(from int, parts []string) (numbers []length.Len, ok bool) {
	if len(parts) < 2 {
		c.wrong(from, mistake.OutlineCorners.Say(), mistake.CornersSo.Say())
		return nil, false
	}
	ok = true
	for i, part := range parts {
		at := from
		from += len(part) + 1
		want := 2
		if i == 0 || i == len(parts)-1 {
			want = 1
		}
		two, good := c.oneOrTwo(part, want)
		if !good {
			ok = false
			lead := len(part) - len(strings.TrimLeft(part, " \t"))
			what := mistake.NoYAndX
			if want == 1 {
				what = mistake.NoLength
			}
			c.add(c.line, at+lead, at+len(strings.TrimRight(part, " \t")), what.Say(ticked(strings.TrimSpace(part))), mistake.CornersSo.Say())
		}
		numbers = append(numbers, two...)
	}
	return numbers, ok
}

// oneOrTwo reads a part that holds so many coordinates.
func (c *cursor) oneOrTwo(part string, want int) ([]length.Len, bool) {
	if want == 1 {
		l, err := c.coordinate(part)
		return []length.Len{l}, err == nil
	}
	const longest = 100 // every space of it is tried
	for i, r := range part[:min(longest, len(part))] {
		if r != ' ' && r != '\t' {
			continue
		}
		y, err := c.coordinate(part[:i])
		if err != nil {
			continue
		}
		if x, err := c.coordinate(part[i:]); err == nil {
			return []length.Len{y, x}, true
		}
	}
	return nil, false
}

// coordinate reads a length with perhaps a sign.
func (c *cursor) coordinate(s string) (length.Len, error) {
	s = strings.TrimSpace(s)
	digits, below := strings.CutPrefix(s, "-")
	if !below {
		digits, below = strings.CutPrefix(s, "−")
	}
	l, err := length.Parse(digits, c.unit)
	if below {
		l = -l
	}
	return l, err
}

// tidy makes an outline of corners as drawn.
func (c *cursor) tidy(from int, corners []outline.Point) outline.Outline {
	if len(corners) > maxCorners {
		c.tooManyCorners(from, len(corners))
		return nil
	}
	o, err := outline.Tidy(corners)
	if err != nil {
		c.wrong(from, mistake.Of(err), say.Nothing)
		return nil
	}
	return o.Normalise()
}

func (c *cursor) tooManyCorners(from, n int) {
	c.wrong(from, mistake.TooManyCorners.Say(maxCorners, n), say.Nothing)
}

// svg reads `"FILE.svg"` and the path in that file.
func (r *reader) svg(c *cursor) outline.Outline {
	c.skip()
	from := c.at
	name, ok := c.name(mistake.FileName)
	c.done(say.Nothing)
	if !ok {
		return nil
	}
	if r.open == nil {
		c.wrong(from, mistake.NoFilesFromHere.Say(), mistake.CornersInstead.Say())
		return nil
	}
	svg, err := r.open(name)
	if err != nil {
		c.wrong(from, mistake.CantRead.Say(ticked(name), safely(err)), say.Nothing)
		return nil
	}
	o, err := svgpath.Read(svg)
	switch {
	case err != nil:
		c.wrong(from, mistake.Of(safely(err)), say.Nothing)
	case len(o) > maxCorners:
		c.tooManyCorners(from, len(o))
	default:
		return o
	}
	return nil
}

package glyph

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Lines is large text: Rows of equal width, of half blocks and blanks.
type Lines struct {
	Rows []string
	W, H int
}

// Fit writes each of texts as one line, in the largest size in which all of
// them fit w columns and h rows together, half a row or more apart. It reports
// false where even the smallest is too large or a character has no picture.
// Small letters are written as capitals, x between numbers as a times sign.
func Fit(w, h int, texts ...string) (Lines, bool) { return Largest(w, h, texts) }

// Largest writes one of several texts, each of one or more lines, in the
// largest size that w columns and h rows have room for; of those that would
// be as large, the first.
func Largest(w, h int, texts ...[]string) (Lines, bool) {
	for _, s := range sizes {
		for _, lines := range texts {
			if tw, th, ok := s.measure(lines); ok && tw <= w && th <= h {
				return s.write(lines), true
			}
		}
	}
	return Lines{}, false
}

// Beside writes each of texts on its own, in the largest size in which all of
// them fit h rows, and w columns side by side with gap columns between.
func Beside(w, h, gap int, texts ...string) ([]Lines, bool) {
next:
	for _, s := range sizes {
		used := -gap
		for i := range texts {
			tw, th, ok := s.measure(texts[i : i+1])
			if used += tw + gap; !ok || th > h || used > w {
				continue next
			}
		}
		all := make([]Lines, len(texts))
		for i := range texts {
			all[i] = s.write(texts[i : i+1])
		}
		return all, true
	}
	return nil, false
}

// size is a face and the columns a dot of it takes.
type size struct {
	face  face
	scale int
}

// sizes are all there are, the highest first.
var sizes = func() (all []size) {
	for scale := 1; scale <= 8; scale++ {
		all = append(all, size{tall, scale}, size{small, scale})
	}
	slices.SortStableFunc(all, func(a, b size) int { return b.face.height*b.scale - a.face.height*a.scale })
	return all
}()

// measure is the columns and rows that texts take, and whether all of their
// characters have pictures. It draws nothing: most sizes tried do not fit.
func (s size) measure(texts []string) (w, h int, ok bool) {
	for i, text := range texts {
		dots := 0
		for j, p := range s.face.pictures(text) {
			if p == nil {
				return 0, 0, false
			}
			if j > 0 {
				dots++
			}
			dots += len(p[0])
		}
		if dots == 0 {
			return 0, 0, false
		}
		w = max(w, dots*s.scale)
		h += (s.face.height*s.scale + 1) / 2
		if i > 0 && s.apart() {
			h++
		}
	}
	return w, h, len(texts) > 0
}

// apart says that a blank row must part lines: letters fill their last row.
func (s size) apart() bool { return s.face.height*s.scale%2 == 0 }

// write sets texts, all of which have pictures, each dot scale columns wide.
func (s size) write(texts []string) Lines {
	var out Lines
	for i, text := range texts {
		if i > 0 && s.apart() {
			out.Rows = append(out.Rows, "")
		}
		out.Rows = append(out.Rows, blocks(s.face.set(text), s.scale)...)
	}
	for _, row := range out.Rows {
		out.W = max(out.W, utf8.RuneCountInString(row))
	}
	for i, row := range out.Rows {
		out.Rows[i] = row + strings.Repeat(" ", out.W-utf8.RuneCountInString(row))
	}
	out.H = len(out.Rows)
	return out
}

// set puts the pictures of a text beside each other, one dot apart.
func (f face) set(text string) []string {
	rows := make([]string, f.height)
	for i, p := range f.pictures(text) {
		for y := range rows {
			if i > 0 {
				rows[y] += "."
			}
			rows[y] += p[y]
		}
	}
	return rows
}

// pictures are the dot pictures of a text, nil for what has none. Between
// digits a slash makes a fraction: the number before it is raised and the
// one after it lowered, both in the small face.
func (f face) pictures(text string) [][]string {
	text = strings.ReplaceAll(text, " x ", " × ")
	if along, ok := strings.CutPrefix(text, "x "); ok {
		text = "× " + along
	}
	runes := []rune(text)
	var out [][]string
	for i, r := range runes {
		switch {
		case f.height > small.height && fractionPart(runes, i) < 0:
			out = append(out, shifted(small.dots[r], 0, f.height))
		case f.height > small.height && fractionPart(runes, i) > 0:
			out = append(out, shifted(small.dots[r], f.height-small.height, f.height))
		default:
			out = append(out, f.dots[unicode.ToUpper(r)])
		}
	}
	return out
}

// fractionPart says whether the digit at i belongs to a numerator (-1), to a
// denominator (1) or to neither.
func fractionPart(runes []rune, i int) int {
	digit := func(j int) bool { return j >= 0 && j < len(runes) && runes[j] >= '0' && runes[j] <= '9' }
	if !digit(i) {
		return 0
	}
	end, start := i, i
	for digit(end) {
		end++
	}
	for digit(start) {
		start--
	}
	switch {
	case end < len(runes) && runes[end] == '/' && digit(end+1):
		return -1
	case start >= 0 && runes[start] == '/' && digit(start-1):
		return 1
	}
	return 0
}

// shifted is a picture moved down by top dots inside height.
func shifted(p []string, top, height int) []string {
	if p == nil {
		return nil
	}
	blank := strings.Repeat(".", len(p[0]))
	out := make([]string, height)
	for y := range out {
		out[y] = blank
		if y >= top && y < top+len(p) {
			out[y] = p[y-top]
		}
	}
	return out
}

// blocks draws dots scale columns wide and as high, a column being half as
// wide as a row is high.
func blocks(dots []string, scale int) []string {
	on := func(x, y int) bool { return y/scale < len(dots) && dots[y/scale][x/scale] == '#' }
	width, height := len(dots[0])*scale, len(dots)*scale
	rows := make([]string, (height+1)/2)
	for y := range rows {
		row := make([]rune, width)
		for x := range row {
			row[x] = half(on(x, 2*y), on(x, 2*y+1))
		}
		rows[y] = string(row)
	}
	return rows
}

func half(upper, lower bool) rune {
	switch {
	case upper && lower:
		return '█'
	case upper:
		return '▀'
	case lower:
		return '▄'
	}
	return ' '
}

package paper

import (
	"fmt"
	"strings"
	"unicode"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/norm"
)

// All measures of this package's drawings are millimetres from the top left
// corner of the paper, except sizes of type, which are points.
const (
	margin = 15.0
	pt     = 25.4 / 72
)

// page is the paper being written on: y is where the next line goes.
type page struct {
	Size
	pdf   *fpdf.Fpdf
	body  float64
	y     float64
	of    int // pages altogether
	title string
}

func (p *page) width() float64  { return p.Width - 2*margin }
func (p *page) bottom() float64 { return p.Height - margin - p.lead(p.body) } // above the foot

// lead is the height of a line of type.
func (p *page) lead(size float64) float64 { return 1.3 * size * pt }

// turn begins a new page, with its foot.
func (p *page) turn() {
	p.pdf.AddPage()
	p.pdf.SetLineJoinStyle("round")
	p.font("", p.body)
	foot := fmt.Sprintf("page %d of %d", p.pdf.PageNo(), p.of)
	w := p.pdf.GetStringWidth(foot)
	p.put(p.Width-margin-w, p.Height-margin, foot)
	p.put(margin, p.Height-margin, p.cut(p.title, p.width()-w-5))
	p.y = margin
}

// need begins a new page unless there is still room for h.
func (p *page) need(h float64) {
	if p.pdf.PageNo() == 0 || p.y+h > p.bottom() {
		p.turn()
	}
}

func (p *page) font(style string, size float64) { p.pdf.SetFont("go", style, size) }

// put writes one line with its baseline at y.
func (p *page) put(x, y float64, s string) { p.pdf.Text(x, y, s) }

// heading writes a heading, on a page that has room for after below it too.
func (p *page) heading(s string, more, after float64) {
	size := p.body + more
	lines := p.wrapped("B", size, shown(s), p.width())
	p.need(float64(len(lines))*p.lead(size) + after)
	p.lines("B", size, margin, lines)
	p.y += p.lead(size) / 4
}

// text writes running text across the page.
func (p *page) text(s string) { p.textIn("", margin, p.width(), s) }

// textIn writes text between x and x+width; it goes on over the page.
func (p *page) textIn(style string, x, width float64, s string) {
	for _, line := range p.wrapped(style, p.body, shown(s), width) {
		p.need(p.lead(p.body))
		p.lines(style, p.body, x, []string{line})
	}
}

// lines writes lines at y and moves it down.
func (p *page) lines(style string, size, x float64, lines []string) {
	p.font(style, size)
	for _, line := range lines {
		p.put(x, p.y+size*pt, line)
		p.y += p.lead(size)
	}
}

// gap leaves a part of a line free.
func (p *page) gap(part float64) { p.y += part * p.lead(p.body) }

// wrapped breaks s into lines no wider than width: between words, and inside a
// word only if it is wider than a line.
func (p *page) wrapped(style string, size float64, s string, width float64) []string {
	p.font(style, size)
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := strings.TrimLeft(line+" "+word, " ")
		if p.pdf.GetStringWidth(longer) <= width {
			line = longer
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for p.pdf.GetStringWidth(word) > width {
			head := p.head(word, width)
			lines, word = append(lines, head), word[len(head):]
		}
		line = word
	}
	return append(lines, line)
}

// head is as much of a word as fits, a character at least.
func (p *page) head(word string, width float64) string {
	end := 0
	for i, r := range word {
		next := i + len(string(r))
		if end > 0 && p.pdf.GetStringWidth(word[:next]) > width {
			break
		}
		end = next
	}
	return word[:end]
}

// cut is s with an ellipsis if it is wider than width.
func (p *page) cut(s string, width float64) string {
	if p.pdf.GetStringWidth(s) <= width {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 && p.pdf.GetStringWidth(string(runes)+"…") > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// Text in a box shrinks down to whole to keep its words whole, and down to
// least before it is cut.
const (
	whole = 9.0
	least = 6.0
)

// box writes s in a box, centred or from its left edge, as large as fits in
// steps of a point from size down; what doesn't fit in the least is cut.
func (p *page) box(style string, size, x, y, w, h float64, s string, centred bool) {
	s = shown(s)
	lines := p.wrapped(style, size, s, w)
	for ; size > least && (float64(len(lines))*p.lead(size) > h || size > whole && broken(s, lines)); size-- {
		lines = p.wrapped(style, size-1, s, w)
	}
	p.font(style, size)
	if most := max(1, int(h/p.lead(size))); len(lines) > most {
		lines[most-1] = p.cut(lines[most-1]+"…", w)
		lines = lines[:most]
	}
	y += (h - float64(len(lines))*p.lead(size)) / 2
	for _, line := range lines {
		left := x
		if centred {
			left += (w - p.pdf.GetStringWidth(line)) / 2
		}
		y += p.lead(size)
		p.put(left, y-0.25*p.lead(size), line)
	}
}

// broken says whether lines break a word of s.
func broken(s string, lines []string) bool {
	return len(strings.Fields(s)) != len(strings.Fields(strings.Join(lines, " ")))
}

// shown is s in characters that the font has.
func shown(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r > 0xffff || !drawn(r):
			return '?'
		}
		return r
	}, norm.NFC.String(s))
}

// face is the regular font, asked only which characters it has; the bold one
// has the same.
var face = func() *sfnt.Font {
	f, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic(err) // it is compiled in
	}
	return f
}()

func drawn(r rune) bool {
	i, err := face.GlyphIndex(nil, r)
	return err == nil && i != 0
}

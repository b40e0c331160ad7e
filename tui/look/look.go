package look

import (
	"strings"

	"github.com/muesli/termenv"

	"example.org/matside/tui/canvas"
)

// Inks. On a fabric's paper only Strong and Mark are used.
const (
	Text   uint8 = iota
	Quiet        // what can be overlooked
	Strong       // the one thing to do
	Accent       // keys and numbers that change
	Good         // done
	Warn         // cautions, failures
	Mark         // lines of the picture, gauges
	inks
)

// Papers.
const (
	Page   uint8 = iota
	Band         // title and keys
	Sheet        // the sticky mat
	Waste        // fabric beside the pieces
	Cloth0       // the first of the fabrics' papers
	papers = Cloth0 + Cloths
)

// Cloths is how many fabrics have a paper of their own; more go round again,
// and are told apart by letter and pattern anyway.
const Cloths = 6

// Look is a set of colours.
type Look struct {
	Name   string
	Colour bool
	ink    [inks]string
	paper  [papers]string
}

// All are the looks, in the order the key steps through them.
var All = []*Look{&Dark, &Light, &High, &Plain}

// The looks. Inks in the order Text, Quiet, Strong, Accent, Good, Warn, Mark;
// papers Page, Band, Sheet, Waste, then the cloths.
var (
	Dark = Look{
		Name: "dark", Colour: true,
		ink:   [inks]string{"#eeeeee", "#d0d0d0", "#ffffff", "#ffd787", "#afffaf", "#ffd7af", "#bcbcbc"},
		paper: [papers]string{"#121212", "#303030", "#1c1c1c", "#303030", "#00005f", "#5f0000", "#005f00", "#5f00af", "#005f5f", "#5f005f"},
	}
	Light = Look{
		Name: "light", Colour: true,
		ink:   [inks]string{"#121212", "#303030", "#000000", "#00005f", "#000000", "#5f0000", "#4e4e4e"},
		paper: [papers]string{"#ffffff", "#e4e4e4", "#eeeeee", "#e4e4e4", "#d7d7ff", "#ffd7d7", "#d7ffd7", "#ffffd7", "#ffd7ff", "#d7ffff"},
	}
	High = Look{
		Name: "high contrast", Colour: true,
		ink:   [inks]string{"#ffffff", "#ffffff", "#ffffff", "#ffff00", "#ffffff", "#ffff00", "#ffffff"},
		paper: [papers]string{"#000000", "#000000", "#000000", "#000000", "#000000", "#000000", "#000000", "#000000", "#000000", "#000000"},
	}
	Plain = Look{Name: "no color"}
)

// Painter returns what canvas.Render needs: the escape sequence of a style in
// this look on a terminal of this kind. Sequences are worked out once.
func (l *Look) Painter(p termenv.Profile) func(canvas.Style) string {
	made := make(map[canvas.Style]string)
	return func(s canvas.Style) string {
		seq, ok := made[s]
		if !ok {
			seq = l.sequence(p, s)
			made[s] = seq
		}
		return seq
	}
}

// sequence switches everything off first, so that it may follow any other.
func (l *Look) sequence(p termenv.Profile, s canvas.Style) string {
	var parts []string
	if s.Bold {
		parts = append(parts, "1")
	}
	if s.Reverse {
		parts = append(parts, "7")
	}
	if l.Colour && p != termenv.Ascii {
		parts = append(parts, l.colours(p, s)...)
	}
	if parts == nil {
		return ""
	}
	return "\x1b[0;" + strings.Join(parts, ";") + "m"
}

// colours are the parameters for ink and paper. Sixteen colours are too few
// for the papers, so there a look is one ink on one paper.
func (l *Look) colours(p termenv.Profile, s canvas.Style) []string {
	if p == termenv.ANSI {
		if l == &Light {
			return []string{"30", "47"}
		}
		return []string{"97", "40"}
	}
	return []string{
		p.Color(l.ink[s.Ink%inks]).Sequence(false),
		p.Color(l.paper[s.Paper%papers]).Sequence(true),
	}
}

// Cloth is the paper of fabric number n.
func Cloth(n int) uint8 { return Cloth0 + uint8(n%Cloths) }

package look

import (
	"fmt"
	"slices"
	"strconv"
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
		paper: [papers]string{"#121212", "#303030", "#1c1c1c", "#303030", "#5f00af", "#005f00", "#0000d7", "#87005f", "#000000", "#00005f"},
	}
	Light = Look{
		Name: "light", Colour: true,
		ink:   [inks]string{"#121212", "#303030", "#000000", "#00005f", "#000000", "#5f0000", "#303030"},
		paper: [papers]string{"#ffffff", "#e4e4e4", "#eeeeee", "#e4e4e4", "#d7d7ff", "#ffd787", "#afffd7", "#d787ff", "#afaf87", "#87afaf"},
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
	return []string{colour(p, "38", l.ink[s.Ink%inks]), colour(p, "48", l.paper[s.Paper%papers])}
}

// colour is the parameters for a colour of a look.
func colour(p termenv.Profile, layer, hex string) string {
	if p == termenv.ANSI256 {
		return fmt.Sprintf("%s;5;%d", layer, index(hex))
	}
	r, g, b := rgb(hex)
	return fmt.Sprintf("%s;2;%d;%d;%d", layer, r, g, b)
}

func rgb(hex string) (r, g, b int) {
	n, _ := strconv.ParseInt(hex[1:], 16, 32)
	return int(n >> 16), int(n >> 8 & 0xff), int(n & 0xff)
}

// index is a colour's number in xterm's palette of 256: a cube of 6 levels a
// side, and a ramp of greys. All colours of the looks are in it, so that they
// are the same on either kind of terminal; -1 for one that is not.
func index(hex string) int {
	r, g, b := rgb(hex)
	level := func(v int) int { return slices.Index([]int{0, 95, 135, 175, 215, 255}, v) }
	if x, y, z := level(r), level(g), level(b); x >= 0 && y >= 0 && z >= 0 {
		return 16 + 36*x + 6*y + z
	}
	if r == g && g == b && r >= 8 && r <= 238 && r%10 == 8 {
		return 232 + (r-8)/10
	}
	return -1
}

// Cloth is the paper of fabric number n.
func Cloth(n int) uint8 { return Cloth0 + uint8(n%Cloths) }

package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"unicode"

	"example.org/matside/plan/length"
)

// inks are the colours of the groups' lines, one after another: those of the
// Okabe-Ito set (Okabe and Ito 2008, made to be told apart by colour-blind
// eyes) that show on white, and black first.
var inks = []string{"#000000", "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#e69f00", "#56b4e9"}

// frameInk is the mat's: grey, so that it is not taken for a fabric.
const frameInk = "#999999"

// SVG writes the drawing as an SVG 1.1 document of the mat's size. One unit is
// one millimetre.
func (d Drawing) SVG(w io.Writer) error {
	var b bytes.Buffer
	b.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"%[1]smm\" height=\"%[2]smm\" viewBox=\"0 0 %[1]s %[2]s\">\n",
		d.Width.MM(), d.Height.MM())
	fmt.Fprintf(&b, "<title>%s</title>\n", escape(d.Title))
	b.WriteString("<desc>True size, in millimeters.</desc>\n")
	names := namer{"mat": true}
	for i, g := range d.Groups {
		group(&b, names.name(svgName(g.Name)), g.says(), inks[i%len(inks)], g.Paths)
	}
	if d.Frame != nil {
		group(&b, "mat", "the mat and the part of it the blade reaches: not to be cut", frameInk, d.Frame)
	}
	b.WriteString("</svg>\n")
	_, err := w.Write(b.Bytes())
	return err
}

func (g Group) says() string {
	if g.Note == "" {
		return g.Name
	}
	return g.Name + ", " + g.Note
}

func group(b *bytes.Buffer, id, title, ink string, paths []Path) {
	fmt.Fprintf(b, "<g id=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"0.1\">\n<title>%s</title>\n", escape(id), ink, escape(title))
	for _, p := range paths {
		b.WriteString("<path d=\"")
		b.Write(p.data(nil))
		b.WriteString("\"/>\n")
	}
	b.WriteString("</g>\n")
}

// data is the path in SVG's words: M 0 0 L 25.4 0 L 25.4 25.4 Z.
func (p Path) data(b []byte) []byte {
	word := "M "
	for _, at := range p.Points {
		b = append(b, word...)
		b = pair(b, at.X, at.Y)
		word = " L "
	}
	if p.Closed {
		b = append(b, " Z"...)
	}
	return b
}

func pair(b []byte, x, y length.Len) []byte {
	return y.AppendMM(append(x.AppendMM(b), ' '))
}

// escape makes text of a name that may hold any printable character.
func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a strings.Builder takes everything
	return b.String()
}

// namer gives out names, each one once.
type namer map[string]bool

func (n namer) name(s string) string {
	unique := s
	for i := 2; n[unique]; i++ {
		unique = fmt.Sprintf("%s-%d", s, i)
	}
	n[unique] = true
	return unique
}

// svgName is a name as XML's names go: letters, digits and hyphens, a letter
// first.
func svgName(s string) string {
	s = dashed(s, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
	if s == "" || !unicode.IsLetter([]rune(s)[0]) {
		return strings.TrimSuffix("fabric-"+s, "-")
	}
	return s
}

// dashed keeps the characters that may stay, with one hyphen for what stood
// between them.
func dashed(s string, stays func(rune) bool) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return !stays(r) }), "-")
}

package drawing_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"io"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/drawing"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// read is an SVG as a reader finds it that knows nothing of this package.
type read struct {
	width, height, viewBox string
	groups                 []readGroup
}

type readGroup struct {
	id, title string
	paths     [][]segment
}

func readSVG(t fataler, text []byte) (r read) {
	d := xml.NewDecoder(bytes.NewReader(text))
	var inside []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return r
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, text)
		}
		switch e := token.(type) {
		case xml.StartElement:
			a := map[string]string{}
			for _, x := range e.Attr {
				a[x.Name.Local] = x.Value
			}
			inside = append(inside, e.Name.Local)
			switch e.Name.Local {
			case "svg":
				r.width, r.height, r.viewBox = a["width"], a["height"], a["viewBox"]
			case "g":
				r.groups = append(r.groups, readGroup{id: a["id"]})
			case "path":
				g := &r.groups[len(r.groups)-1]
				g.paths = append(g.paths, readPath(t, a["d"]))
			}
		case xml.CharData:
			if n := len(inside); n > 1 && inside[n-1] == "title" && inside[n-2] == "g" {
				r.groups[len(r.groups)-1].title += string(e)
			}
		case xml.EndElement:
			inside = inside[:len(inside)-1]
		}
	}
}

// fataler is what testing and rapid have in common here.
type fataler interface{ Fatalf(string, ...any) }

func readPath(t fataler, d string) (all []segment) {
	var x, y, x0, y0 float64
	words := strings.Fields(d)
	number := func() float64 {
		n, err := strconv.ParseFloat(words[0], 64)
		if err != nil {
			t.Fatalf("%v in %q", err, d)
		}
		words = words[1:]
		return n
	}
	for len(words) > 0 {
		word := words[0]
		words = words[1:]
		nx, ny := x0, y0
		if word != "Z" {
			nx, ny = number(), number()
		}
		switch word {
		case "M":
			x0, y0 = nx, ny
		case "L", "Z":
			all = append(all, segment{x, y, nx, ny})
		default:
			t.Fatalf("%q in %q", word, d)
		}
		x, y = nx, ny
	}
	return all
}

func svgOf(t *testing.T, q *queue.Queue, l *queue.Load, opt drawing.Options) []byte {
	var b bytes.Buffer
	if err := drawing.Of(q.List, l, opt).SVG(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestSVGLength: what an independent reader measures along the paths is what
// the plan says the blade travels, within a nanometre a cut; and the page is
// the mat.
func TestSVGLength(t *testing.T) {
	eachLoad(t, func(t *testing.T, q *queue.Queue, l *queue.Load) {
		r := readSVG(t, svgOf(t, q, l, drawing.Options{}))
		w, h := q.List.Mat.Width.MM(), q.List.Mat.Height.MM()
		if r.width != w+"mm" || r.height != h+"mm" || r.viewBox != "0 0 "+w+" "+h {
			t.Errorf("load %d: the page is %s by %s, %s", l.Number, r.width, r.height, r.viewBox)
		}
		var sum float64
		cuts := 0
		for _, g := range r.groups {
			for _, p := range g.paths {
				for _, s := range p {
					if g.id != "mat" {
						sum += s.length()
						cuts++
					}
				}
			}
		}
		if off := math.Abs(sum - float64(l.CutLength)/1e6); off > 1e-6*float64(cuts+1) {
			t.Errorf("load %d: %.6f mm of path, the plan says %s", l.Number, sum, l.CutLength.MM())
		}
	})
}

// TestNames: whatever a fabric is called, its name stands there whole, and the
// groups have names that are letters, digits and hyphens, each another.
func TestNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.OneOf(rapid.StringOfN(rapid.RuneFrom(nil, unicode.L, unicode.Nd, unicode.P, unicode.S), 1, 40, -1),
			rapid.SampledFrom([]string{"mat", "mat-2", "MAT", "Ink", "ink", "<&\"'>", "7", "-", "Ätna blue", "綿"}))
		list := &cutlist.List{Quilt: name.Draw(t, "quilt"), Mat: cutlist.Mat{Width: 100, Height: 100, UsableWidth: 50, UsableHeight: 50}}
		l := &queue.Load{Number: 1}
		for i := range rapid.IntRange(1, 6).Draw(t, "fabrics") {
			list.Fabrics = append(list.Fabrics, cutlist.Fabric{Name: name.Draw(t, "fabric")})
			list.Lines = append(list.Lines, cutlist.Line{Fabric: i})
			l.RoughCuts = append(l.RoughCuts, queue.RoughCut{Fabric: i})
			l.Pieces = append(l.Pieces, queue.Placement{Line: i, RoughCut: i, Outline: outline.Rect(1, 1, 10, 10)})
		}
		d := drawing.Of(list, l, drawing.Options{Outlines: true})
		var svg, dxf bytes.Buffer
		if err := d.SVG(&svg); err != nil {
			t.Fatal(err)
		}
		if err := d.DXF(&dxf); err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for i, g := range readSVG(t, svg.Bytes()).groups {
			for k, r := range g.id {
				if !unicode.IsLetter(r) && (k == 0 || !unicode.IsDigit(r) && r != '-') {
					t.Fatalf("the group's name is %q", g.id)
				}
			}
			if seen[g.id] {
				t.Fatalf("two groups are called %q", g.id)
			}
			seen[g.id] = true
			if i < len(list.Fabrics) && g.title != list.Fabrics[i].Name {
				t.Fatalf("%q is told as %q", list.Fabrics[i].Name, g.title)
			}
		}
		layers := layersOf(t, dxf.String())
		if len(layers) != len(list.Fabrics)+2 {
			t.Fatalf("layers %v for %d fabrics", layers, len(list.Fabrics))
		}
	})
}

// layersOf are the layers of a DXF, each named as R12 allows.
func layersOf(t fataler, dxf string) map[string]bool {
	lines := strings.Split(dxf, "\n")
	all := map[string]bool{}
	for i := 0; i+3 < len(lines); i += 2 {
		if strings.TrimSpace(lines[i]) == "0" && lines[i+1] == "LAYER" {
			name := lines[i+3]
			if name == "" || len(name) > 31 || strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$-_") != "" || all[name] {
				t.Fatalf("a layer is called %q", name)
			}
			all[name] = true
		}
	}
	return all
}

// TestSVGDrawn has librsvg draw each kind of load, five pixels a millimetre, and
// measures the picture: along each edge of each piece there is ink within a
// pixel, and there is no ink further than that from any edge.
func TestSVGDrawn(t *testing.T) {
	const perMM = 5
	convert, err := exec.LookPath("rsvg-convert")
	if err != nil {
		t.Skip("rsvg-convert is missing")
	}
	for _, q := range plans()[:3] {
		l := &q.Loads[0]
		for _, opt := range []drawing.Options{{NoFrame: true}, {NoFrame: true, Outlines: true}} {
			svg := svgOf(t, q, l, opt)
			run := exec.Command(convert, "-d", fmt.Sprint(perMM*25.4), "-p", fmt.Sprint(perMM*25.4), "--background-color", "white")
			run.Stdin = bytes.NewReader(svg)
			out, err := run.Output()
			if err != nil {
				t.Fatal(err)
			}
			picture, err := png.Decode(bytes.NewReader(out))
			if err != nil {
				t.Fatal(err)
			}
			measure(t, picture, edges(l), perMM)
		}
	}
}

func measure(t *testing.T, picture image.Image, edges []segment, perMM float64) {
	t.Helper()
	if w := picture.Bounds().Dx(); w != 1524 {
		t.Errorf("the picture of a 304.8 mm mat is %d pixels wide", w)
	}
	plain := image.NewGray(picture.Bounds())
	draw.Draw(plain, plain.Rect, picture, image.Point{}, draw.Src)
	ink := func(x, y int) bool {
		return image.Pt(x, y).In(plain.Rect) && plain.Pix[plain.PixOffset(x, y)] < 0xf0
	}
	mask := image.NewAlpha(picture.Bounds()) // 1 where an edge is within a pixel and a half of a pixel's middle
	for _, e := range edges {
		steps := int(e.length()*perMM*2) + 1
		for i := range steps {
			x, y := e.at((float64(i) + 0.5) / float64(steps))
			px, py := int(x*perMM), int(y*perMM)
			found := false
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					found = found || ink(px+dx, py+dy)
					if math.Hypot(float64(px+dx)+0.5-x*perMM, float64(py+dy)+0.5-y*perMM) <= 1.5 && image.Pt(px+dx, py+dy).In(mask.Rect) {
						mask.Pix[mask.PixOffset(px+dx, py+dy)] = 1
					}
				}
			}
			if !found {
				t.Fatalf("no ink at %.2f, %.2f mm", x, y)
			}
		}
	}
	for y := range picture.Bounds().Dy() {
		for x := range picture.Bounds().Dx() {
			if mask.Pix[mask.PixOffset(x, y)] == 0 && ink(x, y) {
				t.Fatalf("ink at %.2f, %.2f mm, where no edge is", float64(x)/perMM, float64(y)/perMM)
			}
		}
	}
}

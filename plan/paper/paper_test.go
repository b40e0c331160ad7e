package paper

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os/exec"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/testdata/cutlists"
)

// plans are those made already, by the text of their list.
var plans = map[string]*queue.Queue{}

func planned(t testing.TB, text string) *queue.Queue {
	t.Helper()
	if q := plans[text]; q != nil {
		return q
	}
	list, err := cutlist.Read("test", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	plans[text] = plan.Make(list, plan.Options{Effort: rect.Quick})
	return plans[text]
}

// long has names that are too long for any place on the page, in a list that
// has everything a page can show.
const long = `quilt "Ein sehr langer Name für eine Decke, die am Ende eines langen Winters für zwei ungeduldige Kinder genäht wird 綿"
units cm
fabric Nachtblauer Baumwollstoff mit winzigen weißen Punkten und einem sehr langen Namen, 110 x 150, face down, cutter setting fein und langsam
fabric Sand, 10 x 20
fabric UnserGanzBesondererStoffAusDemLadenAnDerEckeMitDerGroßenBlauenTürUndDerKatze
cut from Nachtblauer Baumwollstoff mit winzigen weißen Punkten und einem sehr langen Namen
24 hexagons 3 for Blütenblätter-der-kleinen-Sommerwiese-hinter-dem-Haus
3 circles 12
60 squares 1.5
cut from Sand
10 trapezoids 6 x 4 x 5 for T
cut from UnserGanzBesondererStoffAusDemLadenAnDerEckeMitDerGroßenBlauenTürUndDerKatze
3 squares 24
2 strips 5 for Kante
binding 6 around 100 x 120
`

func pdf(t testing.TB, q *queue.Queue, opt Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, q, opt); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// poppler runs one of the poppler tools over a PDF; the tool reads standard
// input where it is told -.
func poppler(t *testing.T, doc []byte, tool string, args ...string) []byte {
	t.Helper()
	path, err := exec.LookPath(tool)
	if err != nil {
		t.Skipf("%s is missing", tool)
	}
	run := exec.Command(path, args...)
	run.Stdin = bytes.NewReader(doc)
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%s: %v", tool, err)
	}
	return out
}

// TestSameBytes: the same plan gives the same bytes, and another another.
func TestSameBytes(t *testing.T) {
	q := planned(t, string(cutlists.Read(cutlists.Demo)))
	opt := Options{Templates: []int{0, 1, 2}}
	if !bytes.Equal(pdf(t, q, opt), pdf(t, q, opt)) {
		t.Error("two runs differ")
	}
	if bytes.Equal(pdf(t, q, opt), pdf(t, q, Options{Small: true})) {
		t.Error("small print is the same")
	}
}

// TestPages asks poppler for what stands there: size, pages, text.
func TestPages(t *testing.T) {
	q := planned(t, string(cutlists.Read(cutlists.Demo)))
	for _, c := range []struct {
		size Size
		says string
	}{{Size{}, "612 x 792 pts (letter)"}, {A4, "595.28 x 841.89 pts (A4)"}} {
		doc := pdf(t, q, Options{Size: c.size, Templates: []int{4}})
		info := string(poppler(t, doc, "pdfinfo", "-"))
		if !strings.Contains(info, c.says) || !strings.Contains(info, "Gatepost Evening") {
			t.Errorf("pdfinfo says\n%s", info)
		}
		text := strings.Join(strings.Fields(string(poppler(t, doc, "pdftotext", "-layout", "-", "-"))), " ")
		for _, want := range []string{
			"From what you have", "The makers' instructions", "Cut the fabric: Rust, panel 1", "along at 3 1/2: 3 1/2 x 46, I, by hand: rectangle for border",
			"across at 2 1/2: 42 x 2 1/2, K, by hand: binding", "24 rectangles 2 1/2", "set the cutter to woven cotton",
			"Labels for the stacks", "20 squares 4 1/2, Fern", "Template E: 20 squares 4 1/2, Fern", "measure both squares", "1 inch", "5 cm",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%q is not in the text", want)
			}
		}
		var pages int
		if _, err := fmt.Sscanf(info[strings.Index(info, "Pages:"):], "Pages: %d", &pages); err != nil || !strings.Contains(text, fmt.Sprintf("page %d of %d", pages, pages)) {
			t.Errorf("%d pages, %v", pages, err)
		}
	}
}

// TestEveryLoadHasAPage: each load's number stands in one heading, and each
// piece of the plan has its letter on a mat.
func TestEveryLoadHasAPage(t *testing.T) {
	q := planned(t, string(cutlists.Read(cutlists.Demo)))
	alike := map[string]bool{}
	pieces := 0
	for i := range q.Loads {
		if key := look(&q.Loads[i]); !alike[key] {
			alike[key] = true
			pieces += len(q.Loads[i].Pieces)
		}
	}
	text := string(poppler(t, pdf(t, q, Options{}), "pdftotext", "-raw", "-", "-"))
	headings, letters := 0, 0
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, "Load") && strings.Contains(line, fmt.Sprintf(" of %d", len(q.Loads))) {
			headings++
		}
	}
	if headings != len(alike) {
		t.Errorf("%d headings for %d kinds of load", headings, len(alike))
	}
	for _, w := range words(t, pdf(t, q, Options{})) {
		if len(w.Text) == 1 && w.Text >= "A" && w.Text <= "K" {
			letters++
		}
	}
	if letters < pieces {
		t.Errorf("%d letters for %d pieces", letters, pieces)
	}
}

// word is a word where poppler finds it, in points.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

func words(t *testing.T, doc []byte) (all []word) {
	d := xml.NewDecoder(bytes.NewReader(poppler(t, doc, "pdftotext", "-bbox", "-", "-")))
	d.Strict = false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := token.(xml.StartElement); ok && e.Name.Local == "word" {
			var w word
			if err := d.DecodeElement(&w, &e); err != nil {
				t.Fatal(err)
			}
			all = append(all, w)
		}
	}
}

// TestNothingLeavesThePage: however long the names, every word stands inside
// the page's margins.
func TestNothingLeavesThePage(t *testing.T) {
	q := planned(t, long)
	for _, opt := range []Options{{Size: A4}, {Size: Letter, Small: true}} {
		opt.Templates = []int{0, 1, 2, 3, 4}
		all := words(t, pdf(t, q, opt))
		if len(all) < 300 {
			t.Fatalf("only %d words", len(all))
		}
		for _, w := range all {
			if w.XMin < margin/pt-1 || w.XMax > (opt.Size.Width-margin)/pt+1 || w.YMin < margin/pt-1 || w.YMax > (opt.Size.Height-margin/2)/pt {
				t.Errorf("%q stands at %.0f to %.0f, %.0f to %.0f points", w.Text, w.XMin, w.XMax, w.YMin, w.YMax)
			}
		}
	}
}

// TestLargePrint: the feet and the running text are 14 point: 1.4 times as
// large as 10 point.
func TestLargePrint(t *testing.T) {
	q := planned(t, "quilt Q\nfabric Ink\ncut from Ink\n3 squares 4")
	height := func(small bool) float64 {
		for _, w := range words(t, pdf(t, q, Options{Small: small})) {
			if w.Text == "page" {
				return w.YMax - w.YMin
			}
		}
		t.Fatal("no foot")
		return 0
	}
	large, small := height(false), height(true)
	if math.Abs(large/small-1.4) > 0.01 || large < 14 {
		t.Errorf("large print is %.1f points high, small %.1f", large, small)
	}
}

// picture is a page as pdftoppm draws it, ten pixels a millimetre.
type picture struct {
	w, h int
	pix  []byte
}

func drawnPage(t *testing.T, doc []byte, page int) picture {
	t.Helper()
	out := poppler(t, doc, "pdftoppm", "-gray", "-r", "254", "-f", fmt.Sprint(page), "-l", fmt.Sprint(page))
	var p picture
	var most int
	r := bytes.NewReader(out)
	if _, err := fmt.Fscanf(r, "P5\n%d %d\n%d\n", &p.w, &p.h, &most); err != nil {
		t.Fatal(err)
	}
	p.pix = out[len(out)-p.w*p.h:]
	return p
}

// row is where ink begins along a row, from x on; column the same down a column.
func (p picture) row(y, x int) (at []int)    { return p.along(y*p.w+x, 1, p.w-x) }
func (p picture) column(x, y int) (at []int) { return p.along(y*p.w+x, p.w, p.h-y) }

func (p picture) along(from, step, n int) (at []int) {
	for i, before := 0, false; i < n; i++ {
		ink := p.pix[from+i*step] < 160
		if ink && !before {
			at = append(at, i)
		}
		before = ink
	}
	return at
}

// TestTrueSize measures pictures of template pages: the squares are an inch and
// five centimetres, and the pieces as large as the cut list says, within a
// pixel of a tenth of a millimetre.
func TestTrueSize(t *testing.T) {
	q := planned(t, "quilt Q\nfabric Ink\ncut from Ink\n3 squares 4 for A\n2 circles 5 for B\n2 rectangles 3 x 6 for C, by hand")
	const headed = 447 // just above where the piece may begin
	near := func(got, want int) bool { return got >= want-1 && got <= want+1 }
	for i, c := range []struct{ w, h float64 }{{4, 4}, {5, 5}, {3, 6}} {
		doc := pdf(t, q, Options{Templates: []int{i}})
		var pages int
		info := string(poppler(t, doc, "pdfinfo", "-"))
		if _, err := fmt.Sscanf(info[strings.Index(info, "Pages:"):], "Pages: %d", &pages); err != nil {
			t.Fatal(err)
		}
		p := drawnPage(t, doc, pages)
		foot := int(10 * (Letter.Height - margin - 1.3*14*pt - 2))
		across := p.row(foot-30, 0) // three millimetres above the squares' feet, below their words
		if len(across) != 4 || !near(across[1]-across[0], 254) || !near(across[3]-across[2], 500) {
			t.Errorf("the squares' sides are at %v", across)
		}
		left := int(10 * margin)
		if down := p.column(left+20, foot-600); len(down) < 2 || !near(down[1]-down[0], 254) {
			t.Errorf("the inch's edges are at %v", down)
		}
		if down := p.column(across[2]+20, foot-600); len(down) < 2 || !near(down[1]-down[0], 500) {
			t.Errorf("the five centimetres' edges are at %v", down)
		}
		// The piece stands in the middle of the page: its top and bottom are the
		// first and last ink below the heading, a fifth of it left of the arrow.
		at := p.w/2 - 12
		if i != 1 {
			at = p.w/2 - int(c.w*254/5)
		}
		down := p.column(at, headed)
		if len(down) < 2 || !near(down[1]-down[0], int(math.Round(c.h*254))) && i != 1 {
			t.Errorf("piece %d: the edges down are at %v", i, down)
			continue
		}
		middle := headed + down[0] + int(c.h*254/2)
		sides := p.row(middle, 0)
		if n := len(sides); n < 2 || !near(sides[n-1]-sides[0], int(math.Round(c.w*254))) {
			t.Errorf("piece %d: the edges across are at %v", i, sides)
		}
	}
}

// TestTilesAreWhole: a template that is larger than the page stands on several,
// and these together show all of it.
func TestTilesAreWhole(t *testing.T) {
	q := planned(t, "quilt Q\nfabric Ink\ncut from Ink\n3 squares 10 for A")
	doc := pdf(t, q, Options{Templates: []int{0}})
	text := strings.Join(strings.Fields(string(poppler(t, doc, "pdftotext", "-", "-"))), " ")
	for _, want := range []string{"Page 1 of 4: row 1, column 1", "Page 4 of 4: row 2, column 2"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
}

// Whatever things are called, a document comes out.
func TestAnyNames(t *testing.T) {
	name := rapid.StringOfN(rapid.Rune(), 1, 60, -1)
	q := planned(t, "quilt Q\nfabric Ink\nfabric Sand\ncut from Ink\n3 squares 4 for A\ncut from Sand\n2 strips 3\n2 hexagons 1")
	rapid.Check(t, func(t *rapid.T) {
		list := *q.List
		list.Quilt = name.Draw(t, "quilt")
		list.Fabrics = append([]cutlist.Fabric{}, list.Fabrics...)
		list.Fabrics[0].Name, list.Fabrics[1].Setting = name.Draw(t, "fabric"), name.Draw(t, "setting")
		list.Lines = append([]cutlist.Line{}, list.Lines...)
		list.Lines[0].Label = name.Draw(t, "label")
		again := *q
		again.List = &list
		var b bytes.Buffer
		if err := Write(&b, &again, Options{Small: rapid.Bool().Draw(t, "small"), Templates: []int{0, 2}}); err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(b.Bytes(), []byte("%PDF-")) {
			t.Fatalf("it begins with %q", b.Bytes()[:8])
		}
	})
}

// TestAnd joins numbers.
func TestAnd(t *testing.T) {
	for _, c := range []struct {
		in   []int
		want string
	}{{[]int{4}, "4"}, {[]int{1, 2}, "1 and 2"}, {[]int{1, 2, 3}, "1 to 3"}, {[]int{1, 3, 4, 5, 9}, "1, 3 to 5 and 9"}} {
		if got := and(c.in); got != c.want {
			t.Errorf("%v is %q, want %q", c.in, got, c.want)
		}
	}
}

func BenchmarkPDF(b *testing.B) {
	q := planned(b, string(cutlists.Read(cutlists.Demo)))
	for b.Loop() {
		pdf(b, q, Options{})
	}
}

package paper

import (
	"bytes"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
)

// Size is a size of paper in millimetres.
type Size struct{ Width, Height float64 }

// US letter is 8 1/2 x 11 in (ANSI/ASME Y14.1); A4 is 210 x 297 mm (ISO 216).
var (
	Letter = Size{215.9, 279.4}
	A4     = Size{210, 297}
)

// Options of Write. The zero value is large print on letter paper, without
// templates.
type Options struct {
	Size      Size
	Small     bool  // 10 point instead of 14
	Templates []int // the lines whose templates are wanted, as indexes into List.Lines
}

// written is the date that every document bears, so that the same plan gives
// the same bytes; a PDF without one would bear the clock's.
var written = time.Date(2026, time.January, 1, 0, 0, 0, 0, time.UTC)

// Write prints a plan. A template that has no outline (strips, a binding) is
// left out.
func Write(w io.Writer, q *queue.Queue, opt Options) error {
	// How many pages there are is known once they are set.
	first := set(q, opt, 0)
	p := set(q, opt, first.pdf.PageCount())
	var b bytes.Buffer
	if err := p.pdf.Output(&b); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// set lays out all pages; of them says each one's foot.
func set(q *queue.Queue, opt Options, of int) *page {
	if opt.Size == (Size{}) {
		opt.Size = Letter
	}
	p := &page{Size: opt.Size, body: 14, of: of, title: shown(q.List.Quilt)}
	if opt.Small {
		p.body = 10
	}
	p.pdf = fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: opt.Size.Width, Ht: opt.Size.Height}})
	p.pdf.SetCatalogSort(true)
	p.pdf.SetCreationDate(written)
	p.pdf.SetModificationDate(written)
	p.pdf.SetTitle(p.title, true)
	p.pdf.SetCreator("matside", true)
	p.pdf.SetLang("en-US")
	p.pdf.SetAutoPageBreak(false, 0)
	p.pdf.AddUTF8FontFromBytes("go", "", goregular.TTF)
	p.pdf.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	s := &sheets{page: p, q: q, list: q.List, letters: q.List.Letters()}
	s.front()
	s.panels()
	s.loads()
	s.labels()
	for _, line := range opt.Templates {
		if q.List.Lines[line].Outline != nil {
			s.template(line)
		}
	}
	return p
}

// sheets are the pages of one plan.
type sheets struct {
	*page
	q       *queue.Queue
	list    *cutlist.List
	letters []rune
}

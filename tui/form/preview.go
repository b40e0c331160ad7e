package form

import (
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
	"example.org/matside/plan/length"
)

// Preview is a piece as it would be cut.
type Preview struct {
	Line     cutlist.Line // its outline and its cut size, exact
	Unit     length.Unit
	Seam     length.Len // that is in the outline; 0 for a piece asked for by its cut size
	Finished string     // the size she asked for, where it is a finished one
	Book     string     // the cut size as books print it, up to the next 1/8 in
	Ruler    bool       // the list cuts by the book
}

// Preview is the piece of the question shown; ok is false while it has no
// shape and size yet.
func (f *Form) Preview() (p Preview, ok bool) {
	if f.Ask == nil {
		r := f.Row()
		if r.Kind != Statement || !r.Deep {
			return p, false
		}
		return f.preview(f.Doc.Parts(r.Line), r.Line)
	}
	a := *f.Ask
	parts := a.with().Parts
	if kin(parts.Says) != cutlist.SaysPiece || a.Question().Name == "line" {
		return p, false
	}
	if parts.Says == cutlist.SaysPiece && (parts.Size != "" || parts.Shape == "outline") {
		parts = a.filled(parts)
	}
	line := a.Line
	if line == Fresh {
		line = f.Doc.Len()
	}
	return f.preview(parts, line)
}

// preview reads the one piece under the settings and outlines that hold where
// it stands.
func (f *Form) preview(parts cutlist.Parts, at int) (p Preview, ok bool) {
	if parts.Says != cutlist.SaysPiece {
		return p, false
	}
	parts.Count, parts.Label = "1", ""
	head, ruler := f.head(at)
	says := "fabric F\ncut from F\n" + edit.Write(parts) + "\n"
	exact, _ := f.read(head + says)
	if exact == nil {
		return p, false
	}
	p = Preview{Line: exact.Lines[0], Unit: exact.Unit, Ruler: ruler}
	if parts.Finished {
		p.Seam, p.Finished = exact.Seam, bare(parts)
		if book, _ := f.read(head + "allowance ruler\n" + says); book != nil {
			p.Book = book.Lines[0].Size
			if ruler {
				p.Line = book.Lines[0]
			}
		}
	}
	return p, true
}

// bare is a size as it stands in a sentence.
func bare(p cutlist.Parts) string {
	if p.Shape == "outline" {
		return p.Name
	}
	return p.Size
}

// head is what a piece needs of the list above it: units, seam and outlines,
// on a mat that any piece fits. ruler says whether the list cuts by the book.
func (f *Form) head(at int) (text string, ruler bool) {
	var b strings.Builder
	b.WriteString("quilt Q\nmat 40 m x 40 m usable 39 m x 39 m\n")
	for n := range f.Doc.Len() {
		p := f.Doc.Parts(n)
		switch {
		case p.Says == cutlist.SaysUnits && n < at, p.Says == cutlist.SaysOutline, p.Says == cutlist.SaysSetting && p.Name == "seam":
			b.WriteString(f.Doc.Line(n) + "\n")
		case p.Says == cutlist.SaysSetting && p.Name == "allowance":
			ruler = strings.HasPrefix(strings.ToLower(p.Rest), "ruler")
		}
	}
	return b.String(), ruler
}

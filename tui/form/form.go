package form

import (
	"errors"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
)

// Form is a cut list being written. It is a value: each change makes another.
type Form struct {
	Path string // of the file, "" for a new one
	// Was is what the file held when it was read, nil for a new one.
	Was  *string
	Doc  edit.Doc
	At   int     // the row of the sheet at the cursor
	Ask  *Asking // the question shown; nil: the sheet
	Park []Asking
	Back []string // texts before each change, the latest last
	// Open gives files beside the list, for outlines from drawings.
	Open func(name string) ([]byte, error)

	seen *seen
}

// seen is what was found out of a text.
type seen struct {
	text     string
	rows     []Row
	list     *cutlist.List
	mistakes cutlist.Mistakes
}

// New is an empty form, at its first question.
func New() Form { return Form{}.Enter() }

// Of is the form of a cut list that is there.
func Of(path, text string, open func(string) ([]byte, error)) Form {
	f := Form{Path: path, Was: &text, Doc: edit.Of(text), Open: open}
	f.At = max(0, slices.IndexFunc(f.Rows(), func(r Row) bool { return r.Kind == AddPiece }))
	return f
}

// look reads the text, once for each.
func (f *Form) look() *seen {
	if text := f.Doc.String(); f.seen == nil || f.seen.text != text {
		f.seen = &seen{text: text, rows: rows(f.Doc)}
		f.seen.list, f.seen.mistakes = f.read(text)
	}
	return f.seen
}

// read reads a text as the program will.
func (f *Form) read(text string) (*cutlist.List, cutlist.Mistakes) {
	list, err := cutlist.Read("", []byte(text), f.Open)
	var mistakes cutlist.Mistakes
	errors.As(err, &mistakes)
	return list, mistakes
}

// List is the list as it stands, nil while there are mistakes in it.
func (f *Form) List() *cutlist.List { return f.look().list }

// Mistakes are what is wrong with it.
func (f *Form) Mistakes() cutlist.Mistakes { return f.look().mistakes }

// MistakeAt is what is wrong with line n of the Doc.
func (f *Form) MistakeAt(n int) (cutlist.Mistake, bool) {
	for _, m := range f.Mistakes() {
		if m.Line == n+1 && !m.Whole {
			return m, true
		}
	}
	return cutlist.Mistake{}, false
}

// Text is the cut list.
func (f *Form) Text() string { return f.Doc.String() }

// Saved reports that the file holds what the form does, and nothing is half
// answered.
func (f *Form) Saved() bool {
	same := f.Was != nil && *f.Was == f.Text() || f.Was == nil && f.Text() == ""
	return same && f.Ask == nil && len(f.Park) == 0
}

// Quilt is the name of the quilt, "" while there is none.
func (f *Form) Quilt() string {
	if n, ok := f.Doc.Find(cutlist.SaysQuilt, ""); ok {
		return f.Doc.Parts(n).Name
	}
	return ""
}

// Row is a row of the sheet.
type Row struct {
	Kind   RowKind
	Line   int    // of the Doc, where Kind is Statement
	Says   string // the statement, or nothing
	Fabric string // that it is cut from, or that pieces can be added to
	Deep   bool   // stands under a fabric
}

// RowKind is what a row is for.
type RowKind uint8

// The rows: what is on the list, what can be added to it, and the end.
const (
	Statement RowKind = iota
	AddQuilt
	AddFabric
	AddPiece
	AddSetting
	Finish
)

// Rows are the rows of the sheet: the quilt and its settings, each fabric
// with its pieces under it, what is not understood, and the ways on.
func (f *Form) Rows() []Row { return f.look().rows }

func rows(d edit.Doc) []Row {
	var top, odd []Row
	var fabrics []string
	under := map[string][]Row{}
	named := map[string]Row{}
	from := ""
	for n := range d.Len() {
		p := d.Parts(n)
		r := Row{Kind: Statement, Line: n, Says: d.Line(n)[p.From:p.To], Fabric: from}
		switch p.Says {
		case cutlist.SaysQuilt, cutlist.SaysUnits, cutlist.SaysSetting, cutlist.SaysOutline:
			top = append(top, r)
		case cutlist.SaysFabric:
			if _, twice := named[p.Name]; twice {
				odd = append(odd, r)
				continue
			}
			r.Fabric = p.Name
			fabrics, named[p.Name] = append(fabrics, p.Name), r
		case cutlist.SaysCutFrom:
			from = p.Name
		case cutlist.SaysPiece, cutlist.SaysStrips, cutlist.SaysBinding:
			r.Deep = true
			under[from] = append(under[from], r)
		case cutlist.Unclear:
			odd = append(odd, r)
		}
	}
	if _, ok := d.Find(cutlist.SaysQuilt, ""); !ok {
		top = append([]Row{{Kind: AddQuilt}}, top...)
	}
	all := top
	for _, name := range fabrics {
		all = append(append(all, named[name]), under[name]...)
		all = append(all, Row{Kind: AddPiece, Fabric: name, Deep: true})
		delete(under, name)
	}
	for _, name := range sortedKeys(under) { // of fabrics nobody declared
		odd = append(odd, under[name]...)
	}
	all = append(all, odd...)
	return append(all, Row{Kind: AddFabric}, Row{Kind: AddSetting}, Row{Kind: Finish})
}

func sortedKeys(m map[string][]Row) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// Row is the row at the cursor.
func (f *Form) Row() Row {
	all := f.Rows()
	return all[max(0, min(f.At, len(all)-1))]
}

// Move moves the cursor by n rows; it stays on the sheet.
func (f Form) Move(n int) Form {
	f.At = max(0, min(f.At+n, len(f.Rows())-1))
	return f
}

// changed is the form with another Doc, the old one kept to go back to.
func (f Form) changed(d edit.Doc) Form {
	if d.String() == f.Text() {
		return f
	}
	f.Back = append(slices.Clone(f.Back), f.Text())
	return f.over(d)
}

// over is the form over another Doc. What is half answered goes on with the
// statement it is about, wherever that stands now, or as a new one.
func (f Form) over(d edit.Doc) Form {
	f.Park = slices.Clone(f.Park)
	for i := range f.Park {
		a := &f.Park[i]
		if a.Line == Fresh {
			continue
		}
		text, best := f.Doc.Line(a.Line), Fresh
		for n := range d.Len() {
			if d.Line(n) == text && (best == Fresh || abs(n-a.Line) < abs(best-a.Line)) {
				best = n
			}
		}
		a.Line = best
	}
	f.Doc = d
	return f
}

func abs(n int) int { return max(n, -n) }

// Undo takes the last change back; ok is false when there is none, or while a
// question is shown.
func (f Form) Undo() (_ Form, ok bool) {
	n := len(f.Back)
	if n == 0 || f.Ask != nil {
		return f, false
	}
	text := f.Back[n-1]
	f.Back = slices.Clone(f.Back[:n-1])
	return f.over(edit.Of(text)).Move(0), true
}

// Used reports that pieces are cut from a fabric.
func (f *Form) Used(fabric string) bool {
	return slices.ContainsFunc(f.Rows(), func(r Row) bool {
		return r.Kind == Statement && r.Deep && r.Fabric == fabric
	})
}

// Remove takes the statement at the cursor off the list; while a question is
// shown it does nothing.
func (f Form) Remove() Form {
	r := f.Row()
	if r.Kind != Statement || f.Ask != nil {
		return f
	}
	return f.changed(f.Doc.Remove(r.Line)).Move(0)
}

// to puts the cursor on the first row that a test holds for.
func (f Form) to(test func(Row) bool) Form {
	if at := slices.IndexFunc(f.Rows(), test); at >= 0 {
		f.At = at
	}
	return f
}

// blank reports that nothing has been written yet.
func (f *Form) blank() bool { return strings.TrimSpace(f.Text()) == "" }

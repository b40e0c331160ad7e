package form

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
)

// Asking is a statement on its way through the questions.
type Asking struct {
	Line   int    // that is changed, or Fresh
	Fabric string // that a new piece is cut from
	Parts  cutlist.Parts
	Have   string   // what she has of a fabric: yardage, quarters, panels, nothing
	Marks  []string // the attributes marked
	Raw    string   // of statements written whole
	Was    string   // what a statement that is changed said
	Given  bool     // an answer was given
	Step   int
	Field  Field
	At     int  // the choice at the cursor
	Tried  bool // an answer was given to the question shown
}

// Fresh is the line of a statement that is not on the list yet.
const Fresh = -1

// Question is one of the questions. Its name is what package words knows it
// by.
type Question struct {
	Name    string
	Kind    Kind
	Options []string // for Choose and Mark
}

// Kind is how a question is answered.
type Kind uint8

// By typing, by one of several, or by any number of them.
const (
	Type Kind = iota
	Choose
	Mark
)

// haves are what she may have of a fabric.
var haves = []string{"yardage", "fat quarters", "other pieces", "nothing yet"}

// stocks are what each is written like.
var stocks = map[string]string{"yardage": "42 in x 1 yd", "fat quarters": "4 of 18 x 21", "other pieces": "1 of 20 x 30"}

// settings that can be added, and what each is written like.
var (
	settings = []string{"seam", "allowance", "units", "mat", "gap", "margin"}
	examples = map[string]string{"seam": "seam 1/4", "allowance": "allowance ruler", "units": "units cm",
		"mat": "mat 12 x 12 usable 11 x 11", "gap": "gap 1/8", "margin": "margin 1/4"}
)

// shapesAsked are the shapes in the order they are asked for: those that
// have two angles twice, and what is cut in strips last.
func shapesAsked() []string {
	var all []string
	for _, s := range cutlist.Shapes() {
		if _, _, angled, _, _ := cutlist.ShapeTakes(s); angled {
			all = append(all, s+" 45", s+" 60")
		} else {
			all = append(all, s)
		}
	}
	return append(all, "strip", "binding")
}

// shape is the shape as shapesAsked has it.
func (a Asking) shape() string {
	switch {
	case a.Parts.Says == cutlist.SaysBinding:
		return "binding"
	case a.Parts.Degrees == 45:
		return a.Parts.Shape + " 45"
	case a.Parts.Degrees == 60:
		return a.Parts.Shape + " 60"
	}
	return a.Parts.Shape
}

// Questions are those of the statement, as the answers so far have it.
func (a Asking) Questions() []Question {
	p := a.Parts
	switch p.Says {
	case cutlist.SaysQuilt:
		return []Question{{Name: "quilt"}}
	case cutlist.SaysFabric:
		all := []Question{{Name: "fabric"}}
		if a.Line == Fresh {
			all = append(all, Question{"have", Choose, haves})
		}
		if a.Have != "nothing yet" {
			all = append(all, Question{Name: "stock"})
		}
		all = append(all, Question{"about fabric", Mark, cutlist.FabricAttributes()})
		if slices.Contains(a.Marks, "shrinks") {
			all = append(all, Question{Name: "shrinks"})
		}
		if slices.Contains(a.Marks, "cutter setting") {
			all = append(all, Question{Name: "cutter setting"})
		}
		return all
	case cutlist.SaysPiece:
		all := []Question{{"shape", Choose, shapesAsked()}, {Name: "count"}, {Name: "size"}, {"finished", Choose, []string{"finished", "cut"}}}
		if p.Shape == "outline" {
			all[2].Name = "outline"
		}
		if _, _, _, handed, _ := cutlist.ShapeTakes(p.Shape); handed {
			all = append(all, Question{"hand", Choose, []string{"left", "right"}})
		}
		return append(all, Question{Name: "label"}, Question{"about piece", Mark, a.pieceMarks()})
	case cutlist.SaysStrips:
		return []Question{{"shape", Choose, shapesAsked()}, {Name: "count"}, {Name: "strip size"}, {Name: "label"}}
	case cutlist.SaysBinding:
		return []Question{{"shape", Choose, shapesAsked()}, {Name: "binding size"}, {Name: "label"}}
	case cutlist.SaysSetting:
		if a.Line == Fresh && a.Raw == "" {
			return []Question{{"setting", Choose, settings}, {Name: "line"}}
		}
	}
	return []Question{{Name: "line"}}
}

// pieceMarks are the attributes that the piece may have and that are no hand.
// One that is marked can be unmarked, whatever its shape has become.
func (a Asking) pieceMarks() []string {
	square := a.Parts.Shape == "square" || a.Parts.Shape == "rectangle"
	return slices.DeleteFunc(cutlist.PieceAttributes(), func(s string) bool {
		return s == "left" || s == "right" || s == "by hand" && !square && !slices.Contains(a.Marks, s)
	})
}

// Question is the one shown.
func (a Asking) Question() Question {
	all := a.Questions()
	return all[max(0, min(a.Step, len(all)-1))]
}

// About is what the question shown is about: a fabric, or a shape.
func (f *Form) About() string {
	switch f.Ask.Question().Name {
	case "shape":
		return f.Ask.Fabric
	case "size":
		return f.Ask.Parts.Shape
	}
	return f.Ask.Parts.Name
}

// Enter goes into the row at the cursor: a question about it, or where it was
// left half answered, that question.
func (f Form) Enter() Form {
	if f.Ask != nil {
		return f
	}
	r := f.Row()
	a := Asking{Line: Fresh, Fabric: r.Fabric}
	switch r.Kind {
	case Finish:
		return f
	case AddQuilt:
		a.Parts.Says = cutlist.SaysQuilt
	case AddFabric:
		a.Parts.Says = cutlist.SaysFabric
	case AddPiece:
		a.Parts.Says, a.Parts.Shape = cutlist.SaysPiece, "square"
	case AddSetting:
		a.Parts.Says = cutlist.SaysSetting
	case Statement:
		a = f.asking(r)
	}
	if at := slices.IndexFunc(f.Park, func(p Asking) bool { return p.same(a) }); at >= 0 {
		a = f.Park[at]
		f.Park = slices.Delete(slices.Clone(f.Park), at, at+1)
	} else {
		a = a.shown()
		a.Was = a.Says()
	}
	f.Ask = &a
	return f
}

// same reports that two are about the same statement.
func (a Asking) same(b Asking) bool {
	if a.Line != Fresh || b.Line != Fresh {
		return a.Line == b.Line
	}
	return kin(a.Parts.Says) == kin(b.Parts.Says) && (kin(a.Parts.Says) != cutlist.SaysPiece || a.Fabric == b.Fabric)
}

func kin(s cutlist.Says) cutlist.Says {
	if s == cutlist.SaysStrips || s == cutlist.SaysBinding {
		return cutlist.SaysPiece
	}
	return s
}

// Parked reports that a row's statement was left half answered.
func (f *Form) Parked(r Row) bool {
	return slices.ContainsFunc(f.Park, func(a Asking) bool {
		switch r.Kind {
		case Statement:
			return a.Line == r.Line
		case AddQuilt:
			return a.Line == Fresh && a.Parts.Says == cutlist.SaysQuilt
		case AddFabric:
			return a.Line == Fresh && a.Parts.Says == cutlist.SaysFabric
		case AddPiece:
			return a.Line == Fresh && kin(a.Parts.Says) == cutlist.SaysPiece && a.Fabric == r.Fabric
		case AddSetting:
			return a.Line == Fresh && a.Parts.Says == cutlist.SaysSetting
		}
		return false
	})
}

// asking is a statement of the list taken apart for the questions. What can't
// be taken apart whole is asked for as one line.
func (f *Form) asking(r Row) Asking {
	p := f.Doc.Parts(r.Line)
	a := Asking{Line: r.Line, Fabric: r.Fabric, Parts: p, Raw: r.Says}
	whole := edit.Write(p)
	again := cutlist.Apart(whole)
	switch {
	case p.Says == cutlist.SaysUnits, p.Says == cutlist.SaysSetting, p.Says == cutlist.SaysOutline, p.Says == cutlist.Unclear,
		p.Wrong, edit.Write(again) != whole:
		a.Parts = cutlist.Parts{Says: cutlist.Unclear}
	case p.Says == cutlist.SaysFabric:
		a.Have = "yardage"
		for _, attribute := range p.Attributes {
			for _, known := range cutlist.FabricAttributes() {
				if strings.HasPrefix(strings.ToLower(attribute), known) || known == "one-way" && strings.EqualFold(attribute, "one way") {
					a.Marks = append(a.Marks, known)
				}
			}
		}
	default:
		a.Marks = slices.DeleteFunc(slices.Clone(p.Attributes), func(s string) bool { return s == "left" || s == "right" })
	}
	return a
}

// shown fills the field or puts the cursor for the question shown.
func (a Asking) shown() Asking {
	a.Field, a.At, a.Tried = Field{}, 0, false
	p := a.Parts
	q := a.Question()
	pick := func(want string) { a.At = max(0, slices.Index(q.Options, want)) }
	switch q.Name {
	case "quilt", "fabric":
		a.Field = Filled(p.Name)
	case "have":
		pick(a.Have)
	case "stock":
		a.Field = Filled(strings.Join(p.Stock, ", "))
		if len(p.Stock) == 0 && a.Line == Fresh {
			a.Field = Filled(stocks[a.Have])
		}
	case "shrinks", "cutter setting":
		a.Field = Filled(a.valueOf(q.Name))
	case "shape":
		pick(a.shape())
	case "count":
		a.Field = Filled(p.Count)
	case "size", "strip size", "binding size":
		a.Field = Filled(p.Size)
	case "outline":
		a.Field = Filled(p.Name)
	case "finished":
		if a.At = 1; p.Finished {
			a.At = 0
		}
	case "hand":
		if slices.Contains(p.Attributes, "right") {
			a.At = 1
		}
	case "label":
		a.Field = Filled(p.Label)
	case "line":
		a.Field = Filled(a.Raw)
	}
	return a
}

// valueOf is what stands behind an attribute that takes a value.
func (a Asking) valueOf(attribute string) string {
	for _, s := range a.Parts.Attributes {
		if len(s) > len(attribute) && strings.EqualFold(s[:len(attribute)], attribute) {
			return strings.Trim(strings.TrimSpace(s[len(attribute):]), `"`)
		}
	}
	if attribute == "shrinks" {
		return "3% x 5%"
	}
	return ""
}

package form

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
)

// with is the statement with the answer shown taken into it.
func (a Asking) with() Asking {
	q := a.Question()
	value := a.Field.Value()
	choice := ""
	if q.Kind == Choose {
		choice = q.Options[max(0, min(a.At, len(q.Options)-1))]
	}
	p := &a.Parts
	switch q.Name {
	case "quilt", "fabric", "outline":
		p.Name = unquoted(value)
	case "have":
		a.Have = choice
		if choice == "nothing yet" {
			p.Stock = nil
		}
	case "stock":
		p.Stock = nil
		if value != "" {
			p.Stock = []string{value}
		}
	case "about fabric":
		a = a.marked()
	case "shrinks":
		a = a.valued(q.Name, value)
	case "cutter setting":
		a = a.valued(q.Name, edit.Name(value))
	case "shape":
		a = a.shaped(choice)
	case "count":
		p.Count = value
	case "size", "strip size", "binding size":
		p.Size = value
	case "finished":
		p.Finished = choice == "finished"
	case "hand":
		p.Attributes = append([]string{choice}, slices.DeleteFunc(slices.Clone(p.Attributes), isHand)...)
	case "label":
		p.Label = unquoted(value)
	case "about piece":
		hand := slices.DeleteFunc(slices.Clone(p.Attributes), func(s string) bool { return !isHand(s) })
		p.Attributes = append(hand, a.Marks...)
	case "setting":
		a.Raw = examples[choice]
		a.Step = -1 // the questions change: only the line is left to ask
	case "line":
		a.Raw = value
	}
	if len(p.Attributes) == 0 {
		p.Attributes = nil
	}
	return a
}

func isHand(s string) bool { return s == "left" || s == "right" }

// unquoted is a name without the quotes somebody who knows cut lists may have
// put round it: they are written where they are needed.
func unquoted(name string) string {
	if len(name) > 1 && name[0] == '"' && strings.Count(name, `"`) == 2 && strings.HasSuffix(name, `"`) {
		return name[1 : len(name)-1]
	}
	return name
}

// shaped takes a shape of shapesAsked.
func (a Asking) shaped(choice string) Asking {
	p := &a.Parts
	p.Degrees = 0
	switch {
	case choice == "binding":
		p.Says, p.Shape, p.Finished, p.Attributes = cutlist.SaysBinding, "", false, nil
	case choice == "strip":
		p.Says, p.Shape, p.Finished, p.Attributes = cutlist.SaysStrips, choice, false, nil
	default:
		p.Says = cutlist.SaysPiece
		for degrees, end := range map[int]string{45: " 45", 60: " 60"} {
			if shape, ok := strings.CutSuffix(choice, end); ok {
				choice, p.Degrees = shape, degrees
			}
		}
		p.Shape = choice
		if _, _, _, handed, _ := cutlist.ShapeTakes(choice); !handed {
			p.Attributes = slices.DeleteFunc(slices.Clone(p.Attributes), isHand)
		}
	}
	return a
}

// marked writes the marks of a fabric as its attributes, keeping the values
// of those that have one.
func (a Asking) marked() Asking {
	var all []string
	for _, known := range cutlist.FabricAttributes() {
		if !slices.Contains(a.Marks, known) {
			continue
		}
		if known == "shrinks" || known == "cutter setting" {
			value := a.valueOf(known)
			if known == "cutter setting" {
				if value == "" {
					continue // asked for next
				}
				value = edit.Name(value)
			}
			known += " " + value
		}
		all = append(all, known)
	}
	a.Parts.Attributes = all
	return a
}

// valued writes an attribute with its value.
func (a Asking) valued(attribute, value string) Asking {
	others := slices.DeleteFunc(slices.Clone(a.Parts.Attributes), func(s string) bool {
		return strings.HasPrefix(strings.ToLower(s), attribute)
	})
	a.Parts.Attributes = append(others, attribute+" "+value)
	return a
}

// Says is the statement as it would be written now.
func (a Asking) Says() string {
	a = a.with()
	if a.Question().Name == "line" || a.Parts.Says == cutlist.Unclear || a.Parts.Says == cutlist.SaysSetting {
		return a.Raw
	}
	return edit.Write(a.Parts)
}

// Answer takes the answer to the question shown. Where the reader of cut
// lists finds it wrong, the question stays, with its mistake; else the next
// one comes, and behind the last one the statement stands on the list.
func (f Form) Answer() Form {
	if f.Ask == nil {
		return f
	}
	a := *f.Ask
	a.Tried = true
	if _, wrong := f.wrong(a); wrong {
		if b, ok := f.byHand(a); ok {
			a = b
		} else {
			f.Ask = &a
			return f
		}
	}
	a = a.with()
	a.Given = true
	a.Step++
	if a.Step < len(a.Questions()) {
		a = a.shown()
		f.Ask = &a
		return f
	}
	return f.written(a)
}

// written puts the statement on the list and goes to what comes next.
func (f Form) written(a Asking) Form {
	says := edit.Write(a.Parts)
	if a.Parts.Says == cutlist.Unclear || a.Parts.Says == cutlist.SaysSetting {
		says = a.Raw
	}
	d, at := f.put(a, says)
	was := f.blank()
	f.Ask = nil
	f = f.changed(d)
	switch {
	case was, a.Parts.Says == cutlist.SaysQuilt && !f.has(AddPiece):
		f = f.to(func(r Row) bool { return r.Kind == AddFabric }).Enter()
	case a.Line != Fresh:
		f = f.to(func(r Row) bool { return r.Kind == Statement && r.Line == at })
	case a.Parts.Says == cutlist.SaysFabric:
		f = f.to(func(r Row) bool { return r.Kind == AddPiece && r.Fabric == a.Parts.Name })
	case kin(a.Parts.Says) == cutlist.SaysPiece:
		f = f.to(func(r Row) bool { return r.Kind == AddPiece && r.Fabric == a.Fabric })
	default:
		f = f.to(func(r Row) bool { return r.Kind == Statement && r.Line == at })
	}
	return f
}

func (f *Form) has(kind RowKind) bool {
	return slices.ContainsFunc(f.Rows(), func(r Row) bool { return r.Kind == kind })
}

// put writes a statement into a copy of the Doc.
func (f *Form) put(a Asking, says string) (edit.Doc, int) {
	switch {
	case a.Line != Fresh:
		d := f.Doc
		if old := d.Parts(a.Line); old.Says == cutlist.SaysFabric && a.Parts.Says == cutlist.SaysFabric && old.Name != a.Parts.Name {
			d = d.Rename(old.Name, a.Parts.Name)
		}
		return d.Set(a.Line, says), a.Line
	case a.Parts.Says == cutlist.SaysQuilt:
		return f.Doc.Insert(0, says), 0
	case a.Parts.Says == cutlist.SaysFabric:
		return f.Doc.AddFabric(says)
	case a.Parts.Says == cutlist.SaysSetting, a.Parts.Says == cutlist.Unclear:
		return f.Doc.AddSetting(says)
	}
	return f.Doc.AddPiece(a.Fabric, says)
}

// Wrong is what is wrong with the answer shown, as the reader tells it.
func (f *Form) Wrong() (cutlist.Mistake, bool) {
	if f.Ask == nil {
		return cutlist.Mistake{}, false
	}
	return f.wrong(*f.Ask)
}

// wrong reads the whole list with the statement in it, what has not been
// asked yet filled in with something that is right.
func (f *Form) wrong(a Asking) (cutlist.Mistake, bool) {
	says := a.Says()
	if p := a.with().Parts; a.Question().Name != "line" && p.Says != cutlist.Unclear && p.Says != cutlist.SaysSetting {
		says = edit.Write(a.filled(p))
	}
	if a.Question().Name == "setting" {
		return cutlist.Mistake{}, false
	}
	d, at := f.put(a, says)
	_, mistakes := f.read(d.String())
	for _, m := range mistakes {
		if m.Line == at+1 && !m.Whole {
			return m, true
		}
	}
	return cutlist.Mistake{}, false
}

// byHand is a square or rectangle that the mat has no room for, marked to be
// cut by hand; ok is false where that does not put it right.
func (f *Form) byHand(a Asking) (_ Asking, ok bool) {
	const word = "by hand"
	p := a.with().Parts
	if a.Question().Name == "about piece" || p.Shape != "square" && p.Shape != "rectangle" || slices.Contains(a.Marks, word) {
		return a, false
	}
	a.Marks = append(slices.Clone(a.Marks), word)
	a.Parts.Attributes = append(slices.Clone(a.Parts.Attributes), word)
	_, wrong := f.wrong(a)
	return a, !wrong
}

// filled is p with what comes behind the question shown filled in.
func (a Asking) filled(p cutlist.Parts) cutlist.Parts {
	before := func(name string) bool { // name is asked later than what is shown
		all := a.with().Questions()
		at := slices.IndexFunc(all, func(q Question) bool { return q.Name == name })
		return at > a.Step
	}
	_, _, _, handed, example := cutlist.ShapeTakes(p.Shape)
	if before("count") && p.Count == "" {
		p.Count = "1"
	}
	if before("size") && p.Size == "" {
		p.Size = cutlist.Apart("2 " + example).Size
	}
	if before("strip size") && p.Size == "" {
		p.Size = "1"
	}
	if before("binding size") && p.Size == "" {
		p.Size = "1 around 9 x 9"
	}
	if handed && before("hand") && !slices.ContainsFunc(p.Attributes, isHand) {
		p.Attributes = append([]string{"left"}, p.Attributes...)
	}
	return p
}

// Previous goes a question back, and from the first one to the sheet; what
// was answered is kept.
func (f Form) Previous() Form {
	if f.Ask == nil {
		return f
	}
	a := *f.Ask
	if a.Step == 0 {
		return f.Leave()
	}
	a.Step--
	a = a.shown()
	f.Ask = &a
	return f
}

// Leave goes to the sheet; a statement that was changed and not finished is
// kept for later.
func (f Form) Leave() Form {
	if f.Ask == nil {
		return f
	}
	a := *f.Ask
	f.Ask = nil
	if a.begun() {
		f.Park = append(slices.Clone(f.Park), a)
	}
	return f
}

// begun reports that there is something to lose.
func (a Asking) begun() bool {
	typed := a.Field.Text() != a.shown().Field.Text()
	if a.Line != Fresh {
		return typed || a.Says() != a.Was
	}
	return typed || a.Given
}

// Drop forgets what was left half answered at the row of the cursor.
func (f Form) Drop() Form {
	r := f.Row()
	f.Park = slices.DeleteFunc(slices.Clone(f.Park), func(a Asking) bool {
		one := Form{Park: []Asking{a}}
		return one.Parked(r)
	})
	return f
}

// Edit changes the field shown.
func (f Form) Edit(change func(Field) Field) Form {
	if f.Ask == nil {
		return f
	}
	a := *f.Ask
	a.Field, a.Tried = change(a.Field), false
	f.Ask = &a
	return f
}

// Choose moves the cursor among the choices by n, round and round.
func (f Form) Choose(n int) Form {
	if f.Ask == nil {
		return f
	}
	a := *f.Ask
	if of := len(a.Question().Options); of > 0 {
		a.At = ((a.At+n)%of + of) % of
	}
	a.Tried = false
	f.Ask = &a
	return f
}

// Toggle marks the choice at the cursor, or takes its mark away.
func (f Form) Toggle() Form {
	if f.Ask == nil || f.Ask.Question().Kind != Mark {
		return f
	}
	a := *f.Ask
	word := a.Question().Options[a.At]
	if i := slices.Index(a.Marks, word); i >= 0 {
		a.Marks = slices.Delete(slices.Clone(a.Marks), i, i+1)
	} else {
		a.Marks = append(slices.Clone(a.Marks), word)
	}
	a.Tried = false
	f.Ask = &a
	return f
}

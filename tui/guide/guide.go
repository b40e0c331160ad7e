package guide

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/words"
)

// Facts are what a page is made of.
type Facts struct {
	List   *cutlist.List
	Load   *queue.Load
	Step   session.Step
	Mat    string
	Panels func(fabric int) int // how many panels of a fabric there are
	Ready  func(rough int) bool // whether a rough cut was cut free with an earlier load's; nil: none was
	Unit   length.Unit          // to write lengths in
	Takes  time.Duration        // how long the cutter should take; 0: nothing is said
	Next   []string             // fabrics of the load after this one, to make ready meanwhile
}

// Page is what to say at a step.
type Page struct {
	Large   [][]string // what to write large, the best first: each is one or more lines. Neighbors may say the same in other lines
	Do      string     // the one thing to do now
	Items   []string   // its parts, where it has several
	More    []string   // how to do it well, the most needed first
	Caution string     // what can hurt, or ""
	Done    string     // what going on says
}

// Write writes the page of a step.
func Write(w words.Words, f Facts) Page {
	p := Page{Large: [][]string{{w.Large(int(f.Step))}}, Done: w.Done(int(f.Step))}
	write := []func(words.Words, Facts, *Page){fabric, press, lay, cut, peel}
	write[f.Step](w, f, &p)
	return p
}

func (f Facts) name(fabric int) string { return f.List.Fabrics[fabric].Name }

// numbered puts a rough cut's number before what is said of it, as the
// picture shows it.
func (f Facts) numbered(i int, text string) string { return strconv.Itoa(i+1) + "  " + text }

// fabrics are the fabrics on the mat that a test holds for, each once, in
// the order of the rough cuts.
func (f Facts) fabrics(test func(cutlist.Fabric) bool) []string {
	var names []string
	for _, r := range f.Load.RoughCuts {
		if fab := f.List.Fabrics[r.Fabric]; test(fab) && !slices.Contains(names, fab.Name) {
			names = append(names, fab.Name)
		}
	}
	return names
}

func fabric(w words.Words, f Facts, p *Page) {
	p.Caution = w.RotaryCare()
	var sizes []string
	ready := 0
	for i, r := range f.Load.RoughCuts {
		size := w.Size(r.Width, r.Height, f.Unit)
		sizes = append(sizes, size)
		item := f.numbered(i, w.Rough(f.name(r.Fabric), size))
		if f.Panels(r.Fabric) > 1 {
			item += ", " + w.Panel(r.Panel)
		}
		if f.Ready != nil && f.Ready(i) {
			ready++
			item += ", " + w.CutAlready()
		}
		p.Items = append(p.Items, item)
	}
	p.Large = append([][]string{sizes}, p.Large...)
	if len(p.Items) == 1 {
		across, along, _ := strings.Cut(sizes[0], " x ")
		p.Large = slices.Insert(p.Large, 1, []string{across, "x " + along})
		r := f.Load.RoughCuts[0]
		p.Do, p.Items = w.CutOne(f.name(r.Fabric), sizes[0]), nil
		if ready == 1 {
			p.Do = w.TakeOne(f.name(r.Fabric), sizes[0])
			p.More = append(p.More, w.ItIsCutAlready())
		}
		if of := f.Panels(r.Fabric); of > 1 {
			p.More = append(p.More, w.FromPanel(r.Panel, of))
		}
	} else if p.Do = w.CutMany(len(p.Items)); ready == len(p.Items) {
		p.Do = w.TakeMany(len(p.Items))
	}
	p.More = append(p.More, w.AcrossFirst())
	if ways := f.fabrics(func(c cutlist.Fabric) bool { return c.OneWay }); ways != nil {
		p.More = append(p.More, w.KeepWayUp(w.And(ways)))
	}
}

func press(w words.Words, f Facts, p *Page) {
	p.Caution = w.IronCare()
	names := f.fabrics(func(cutlist.Fabric) bool { return true })
	p.Large = slices.Insert(p.Large, 0, append([]string{w.Large(int(f.Step))}, names...))
	if p.Do = w.Press(w.And(names)); len(names) > 3 {
		p.Do = w.PressMany(len(f.Load.RoughCuts))
	}
	p.More = []string{w.DryAndCool()}
}

func lay(w words.Words, f Facts, p *Page) {
	p.Caution = w.RollerCare()
	u := f.Unit
	p.Large = slices.Insert(p.Large, 0, w.LargeLay(f.Mat))
	if n := len(f.Load.RoughCuts); n == 1 {
		r := f.Load.RoughCuts[0]
		p.Do = w.LayOne(f.name(r.Fabric), f.Mat)
		p.More = append(p.More, w.Place(w.Length(r.X, u), w.Length(r.Y, u)))
	} else {
		p.Do = w.LayMany(n, f.Mat)
		for i, r := range f.Load.RoughCuts {
			p.Items = append(p.Items, f.numbered(i, w.PlaceOne(f.name(r.Fabric), w.Length(r.X, u), w.Length(r.Y, u))))
		}
	}
	down := f.fabrics(func(c cutlist.Fabric) bool { return c.FaceDown })
	if up := f.fabrics(func(c cutlist.Fabric) bool { return !c.FaceDown }); up != nil && down == nil {
		p.More = append(p.More, w.RightSideUp())
	} else if up != nil {
		p.More = append(p.More, w.FaceUp(w.And(up)))
	}
	if down != nil {
		p.More = append(p.More, w.FaceDown(w.And(down)))
	}
	p.More = append(p.More, w.Smooth(), w.MayBeOff(f.List.Margin, u))
}

func cut(w words.Words, f Facts, p *Page) {
	p.Caution = w.BladeCare()
	p.Do = w.CutDrawing(f.Load.Layout)
	p.Large = slices.Insert(p.Large, 0, w.LargeDrawing(f.Load.Layout))
	p.More = append(f.settings(w), w.BladeSeated())
	if f.fabrics(func(c cutlist.Fabric) bool { return c.FaceDown }) != nil {
		p.More = append(p.More, w.Mirrored())
	}
	p.More = append(p.More, w.StartAndLeave())
	if f.Takes > 0 {
		p.More = append(p.More, w.CutTakes(f.Takes))
	}
	if len(f.Next) > 0 {
		p.More = append(p.More, w.Meanwhile(w.And(f.Next)))
	}
}

// settings says what to dial in: once where all fabrics agree, and what suits
// the fabric where the list names no setting for it.
func (f Facts) settings(w words.Words) []string {
	all := f.fabrics(func(cutlist.Fabric) bool { return true })
	var settings []string
	for _, fab := range f.List.Fabrics {
		if slices.Contains(all, fab.Name) && !slices.Contains(settings, fab.Setting) {
			settings = append(settings, fab.Setting)
		}
	}
	var said []string
	for _, s := range settings {
		names := f.fabrics(func(c cutlist.Fabric) bool { return c.Setting == s })
		switch {
		case s == "":
			said = append(said, w.SettingToSuit(w.And(names)))
		case len(names) == len(all):
			said = append(said, w.Setting(s))
		default:
			said = append(said, w.SettingOf(w.And(names), s))
		}
	}
	return said
}

func peel(w words.Words, f Facts, p *Page) {
	p.Do = w.Peel(len(f.Load.Pieces))
	p.Large = slices.Insert(p.Large, 0, []string{w.LargePeel(len(f.Load.Pieces))})
	letters := matpic.Letters(f.List)
	for _, s := range Stacks(f.Load) {
		line := f.List.Lines[s.Line]
		p.Items = append(p.Items, w.Stack(letters[s.Line], w.Pieces(line, len(s.Pieces)), f.name(line.Fabric), line.Label))
	}
	p.More = []string{w.WasteFirst()}
}

// Stack is what a load holds of one line.
type Stack struct {
	Line   int   // index into List.Lines
	Pieces []int // indexes into the load's Pieces
}

// Stacks are the lines on a load, in the order of the list.
func Stacks(load *queue.Load) []Stack {
	var stacks []Stack
	for i, p := range load.Pieces {
		at := slices.IndexFunc(stacks, func(s Stack) bool { return s.Line == p.Line })
		if at < 0 {
			at = len(stacks)
			stacks = append(stacks, Stack{Line: p.Line})
		}
		stacks[at].Pieces = append(stacks[at].Pieces, i)
	}
	slices.SortFunc(stacks, func(a, b Stack) int { return a.Line - b.Line })
	return stacks
}

package plan

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/report"
	"example.org/matside/plan/report/schema"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// scribe writes cut lists as a quilter might type them: every statement,
// shape and attribute there is, in any combination that is allowed.
type scribe struct {
	*rand.Rand
	b      strings.Builder
	metric bool
}

func (s *scribe) one(of ...string) string { return of[s.IntN(len(of))] }

// maybe is a text one time in n, else nothing.
func (s *scribe) maybe(n int, text string) string {
	if s.IntN(n) == 0 {
		return text
	}
	return ""
}

func (s *scribe) line(format string, a ...any) { fmt.Fprintf(&s.b, format+"\n", a...) }

// long is a length between some eighths of an inch, in one of the ways to
// write it, with its unit if it isn't the list's.
func (s *scribe) long(from, to int) string {
	n := from + s.IntN(to-from+1)
	whole, part := n/8, n%8
	inch := s.one("in", "\"", "inches")
	switch {
	case s.metric:
		return fmt.Sprintf("%d.%d cm", n*317/1000, n%10)
	case part == 0:
		return fmt.Sprintf("%d %s", whole, inch)
	case part == 4 && whole > 0:
		return s.one(fmt.Sprintf("%d½ ", whole), fmt.Sprintf("%d-1/2 ", whole), fmt.Sprintf("%d.5 ", whole)) + inch
	case whole == 0:
		return fmt.Sprintf("%d/8 %s", part, inch)
	}
	return fmt.Sprintf("%d %d/8 %s", whole, part, inch)
}

func (s *scribe) by() string { return s.one(" x ", " X ", "×", " by ") }

// list is a whole cut list.
func (s *scribe) list() string {
	s.metric = s.IntN(4) == 0
	s.line("quilt %s # made up", s.one("Harbour", "\"Tea, and Cups\"", "Nine"))
	s.line("units %s", map[bool]string{true: s.one("cm", "mm"), false: "in"}[s.metric])
	s.line("%s", s.maybe(3, "seam "+s.long(1, 4)))
	s.line("%s", s.maybe(3, "allowance "+s.one("exact", "ruler")))
	s.line("%s", s.maybe(2, "gap "+s.one("0", "1/16 in", "1 mm", "0.3 cm")))
	s.line("%s", s.maybe(2, "margin "+s.one("0", "1/8 in", "1/2 in", "7 mm")))
	s.line("%s", s.maybe(2, "mat "+s.one("12 in x 12 in usable 11 in x 11 in", "12 in x 24 in usable 11 1/2 in x 23 1/2 in", "30 cm x 30 cm", "8 in x 10 in")))
	s.line("outline Leaf: 0,0 30 mm,5 mm 60 mm,0 40 mm,50 mm 20 mm,50 mm\noutline Hook: 0,0 0,60 mm 20 mm,60 mm 20 mm,20 mm 60 mm,20 mm 60 mm,0")
	for _, f := range []string{"Plum", "Oat", "Fern", "Rust"}[:1+s.IntN(4)] {
		s.fabric(f)
		s.line("cut from %s", f)
		for range 1 + s.IntN(4) {
			s.piece()
		}
	}
	return s.b.String()
}

func (s *scribe) fabric(name string) {
	text := "fabric " + name
	for range s.IntN(4) {
		text += ", " + s.one("42 in x 1 yd", "3 of 18 in x 21 in", "110 cm x 50 cm", "7 in x 9 in", "2 of 5 in x 44 in", "42 in x 1/4 yd")
	}
	s.line("%s", text+s.maybe(4, ", one-way")+s.maybe(4, ", sheds")+s.maybe(4, ", face down")+s.maybe(4, ", shrinks 3% x 5.5%")+s.maybe(6, ", cutter setting woven"))
}

func (s *scribe) piece() {
	label := s.maybe(2, " for "+s.one("A", "B", "border"))
	switch s.IntN(9) {
	case 0:
		s.line("%d strips %s%s", 1+s.IntN(4), s.long(8, 24), label)
		return
	case 1:
		s.line("binding %s around %s%s%s%s", s.long(16, 20), s.long(80, 500), s.by(), s.long(80, 500), label)
		return
	case 2:
		s.line("%d rectangles %s%s%s%s, by hand%s", 1+s.IntN(4), s.long(16, 60), s.by(), s.long(60, 330), label, s.maybe(2, s.one(", lengthwise", ", crosswise", ", any grain")))
		return
	}
	side := func() string { return s.long(8, 50) }
	shape, hand, trims := s.shape(side)
	grain := s.maybe(2, s.one(", lengthwise", ", crosswise", ", any grain"))
	if trims {
		hand += s.maybe(3, ", trimmed")
	}
	s.line("%d %s%s%s%s%s%s", 1+s.IntN(30), shape, s.maybe(3, " finished"), label, hand, grain, s.maybe(6, ", fussy"))
}

// shape is one of the shapes with its size, its hand if it has one, and
// whether its tips may be trimmed.
func (s *scribe) shape(side func() string) (text, hand string, trims bool) {
	hand = s.one(", left", ", right")
	switch s.IntN(14) {
	case 0:
		return "squares " + side(), "", false
	case 1, 2:
		return "rectangles " + side() + s.by() + side(), "", false
	case 3:
		return "half-square triangles " + side(), "", true
	case 4:
		return "quarter-square triangles " + side(), "", true
	case 5:
		return "half-rectangle triangles " + side() + s.by() + side(), hand, true
	case 6:
		return "equilateral triangles " + s.one("", "side ", "height ") + side(), "", true
	case 7:
		return s.one("", "half ") + "hexagons " + s.one("side ", "height ") + s.long(8, 24), "", false
	case 8:
		return "octagons " + s.one("", "side ") + s.long(8, 24), "", false
	case 9:
		return "diamonds " + s.one("45 ", "60 ") + s.one("", "side ", "height ") + s.long(8, 30), "", true
	case 10:
		return "parallelograms " + s.one("45 ", "60 ") + s.long(8, 30) + s.by() + s.long(8, 30), hand, true
	case 11:
		return s.one("trapezoids ", "tumblers ", "wedges ") + s.long(24, 40) + s.by() + s.long(8, 20) + s.by() + s.long(8, 40), "", true
	case 12:
		return s.one("circles ", "quarter circles ") + s.long(8, 30), "", false
	}
	return "outlines " + s.one("Leaf", "Hook"), "", false
}

// misfits are the only mistakes there may be: what is too large for the mat, or
// too small for its tips to be trimmed.
var misfits = []*say.Kind{mistake.TooLarge, mistake.TooLargeInMargin, mistake.NoRoomForCurve, mistake.KindOf(shape.ErrTooSmallToTrim)}

// written is the list of a seed, without the lines that are misfits.
func written(t *testing.T, seed uint64) (string, *cutlist.List) {
	s := &scribe{Rand: rand.New(rand.NewPCG(seed, 7))}
	text := s.list()
	for {
		l, err := cutlist.Read("made up", []byte(text), nil)
		var all cutlist.Mistakes
		if !errors.As(err, &all) {
			return text, l
		}
		lines := strings.Split(text, "\n")
		for _, m := range all {
			if m.What.Kind == mistake.NothingToCut {
				lines = append(lines, "2 squares 3 in")
				continue
			}
			if !slices.Contains(misfits, m.What.Kind) {
				t.Fatalf("seed %d: %v in\n%s", seed, m, text)
			}
			lines[m.Line-1] = ""
		}
		text = strings.Join(lines, "\n")
	}
}

// Every list that can be written is planned without fault, each piece once or
// named as missing, and its JSON is as the schema says.
func TestAnyList(t *testing.T) {
	lists, plans := uint64(6), planSchema(t)
	if os.Getenv("MATSIDE_LONG") == "1" {
		lists = 300
	}
	for seed := range lists {
		text, l := written(t, seed)
		q := Make(l, Options{Effort: rect.Quick})
		var faults []string
		for _, f := range check.Check(q) {
			faults = append(faults, f.String())
		}
		faults = append(faults, miscounted(q)...)
		if q.Fewest.Loads > len(q.Loads) || q.Fewest.Proved != (q.Fewest.Loads == len(q.Loads)) {
			faults = append(faults, fmt.Sprintf("%d loads, said to be no fewer than %d, proved %v", len(q.Loads), q.Fewest.Loads, q.Fewest.Proved))
		}
		var b bytes.Buffer
		if err := report.JSON(&b, q); err != nil {
			faults = append(faults, err.Error())
		}
		doc, err := jsonschema.UnmarshalJSON(&b)
		if err == nil {
			err = plans.Validate(doc)
		}
		if err != nil {
			faults = append(faults, err.Error())
		}
		if len(faults) > 0 {
			t.Errorf("seed %d: %s\nin\n%s", seed, strings.Join(faults, "\n"), text)
		}
	}
}

func planSchema(t *testing.T) *jsonschema.Schema {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema.Plan))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", doc); err != nil {
		t.Fatal(err)
	}
	plans, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

// miscounted says which lines of a plan don't come to what the list asks for:
// on mats, in the stock and missing together, each copy once.
func miscounted(q *queue.Queue) (faults []string) {
	copies, missing := make([][]int, len(q.List.Lines)), make([]int, len(q.List.Lines))
	for i := range q.Loads {
		for _, p := range q.Loads[i].Pieces {
			copies[p.Line] = append(copies[p.Line], p.Copy)
		}
	}
	for i := range q.Stock {
		for _, h := range q.Stock[i].ByHand {
			copies[h.Line] = append(copies[h.Line], h.Copy)
		}
	}
	for _, s := range q.Short {
		for line, n := range s.Missing {
			if missing[line] += n; n > 0 && q.List.Lines[line].Fabric != s.Fabric {
				faults = append(faults, fmt.Sprintf("line %d is missing of another fabric", q.List.Lines[line].Number))
			}
		}
	}
	for i := range q.List.Lines {
		l := &q.List.Lines[i]
		slices.Sort(copies[i])
		once := len(slices.Compact(slices.Clone(copies[i]))) == len(copies[i])
		if !once || l.Kind != cutlist.Binding && len(copies[i])+missing[i] != l.Count {
			faults = append(faults, fmt.Sprintf("line %d: copies %v and %d missing, of %d", l.Number, copies[i], missing[i], l.Count))
		}
	}
	return faults
}

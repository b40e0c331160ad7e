package words

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
	"example.org/matside/session/reason"
)

// said is what every method of a language says: with names, and with one and
// several of everything.
func said(w Words) map[string][]string {
	all := make(map[string][]string)
	v := reflect.ValueOf(w)
	of := reflect.TypeFor[Words]()
	for i := range of.NumMethod() {
		name := of.Method(i).Name
		m := v.MethodByName(name)
		for _, n := range []int{1, 2} {
			for _, yes := range []bool{false, true} {
				out := m.Call(samples(name, m.Type(), n, yes))[0].Interface()
				if lines, ok := out.([]string); ok {
					out = strings.Join(lines, "\n")
				}
				all[name] = append(all[name], out.(string))
			}
		}
	}
	return all
}

// samples are arguments for a method.
func samples(name string, of reflect.Type, n int, yes bool) []reflect.Value {
	var args []reflect.Value
	for i := range of.NumIn() {
		var a any
		switch of.In(i) {
		case reflect.TypeFor[int]():
			a = n
		case reflect.TypeFor[float64]():
			a = 0.1 * float64(n+i)
		case reflect.TypeFor[bool]():
			a = yes
		case reflect.TypeFor[rune]():
			a = 'Ø'
		case reflect.TypeFor[string]():
			a = sampleText(name, i)
		case reflect.TypeFor[[]int]():
			a = []int{3, 4}[:n]
		case reflect.TypeFor[[]string]():
			a = []string{"Plum0", "Oat"}[:n]
		case reflect.TypeFor[length.Len]():
			a = length.Len(n) * 97_881_440 // 3.8536 in
		case reflect.TypeFor[length.Unit]():
			a = length.In
		case reflect.TypeFor[time.Duration]():
			a = time.Duration(n) * 95 * time.Second
		case reflect.TypeFor[time.Time]():
			a = time.Date(2026, 11, 25, 18, 5, 0, 0, time.UTC)
		case reflect.TypeFor[say.Sentence]():
			a = mistake.TooLarge.Say(say.Number("12.5"), say.Number("3"), length.In, say.Number("11"), say.Number("11"), length.In)
		case reflect.TypeFor[error]():
			a = reason.NoMat.Err("Plum0")
		case reflect.TypeFor[cutlist.Line]():
			a = cutlist.Line{Shape: "half-square triangle", Size: "3.8536"}
		default:
			panic("no sample for " + of.In(i).String() + " of " + name)
		}
		args = append(args, reflect.ValueOf(a))
	}
	return args
}

// sampleText is a text argument: a name, unless it is one of our own words.
func sampleText(name string, i int) string {
	switch name {
	case "FormAsk", "FormHint":
		return []string{"stock", "Plum"}[i]
	case "FormOption":
		return "one-way"
	case "Day":
		return "2026-11-25"
	case "UnitsName":
		return "cm"
	case "LettersName":
		return "large"
	case "LookName", "KeyLook":
		return "dark"
	case "LanguageName":
		return ""
	case "Key":
		return "Enter"
	case "SizeText":
		return "side 3.8536"
	case "NewsMore", "NewsFewer", "NewsOther":
		return []string{"6 squares 2", "8 squares 3", "Plum"}[i]
	}
	return fmt.Sprintf("Plum%d", i)
}

// questions are those of the form.
var questions = []string{"quilt", "fabric", "have", "stock", "about fabric", "shrinks", "cutter setting", "shape", "count", "size", "outline",
	"finished", "hand", "label", "about piece", "setting", "line", "strip size", "binding size"}

// alike say the same in every language.
var alike = []string{"Name", "Caution", "Legend", "Rough", "FolderName", "Plain", "LargeTime", "LargePause"}

// Every method of German says something of its own: nothing falls through to
// English.
func TestGermanIsWhole(t *testing.T) {
	english, german := said(English{}), said(German{})
	for name, says := range german {
		same := slices.Equal(says, english[name])
		if want := slices.Contains(alike, name); same != want {
			t.Errorf("%s says %q in both: %v, want %v", name, says[0], same, want)
		}
	}
	for _, question := range questions {
		if (German{}).FormAsk(question, "X") == (English{}).FormAsk(question, "X") {
			t.Errorf("the question %q is asked in English", question)
		}
		if hint := (English{}).FormHint(question, "square"); hint != "" && (German{}).FormHint(question, "square") == hint {
			t.Errorf("the hint to %q is in English", question)
		}
	}
	for _, shape := range cutlist.Shapes() {
		line := cutlist.Line{Shape: shape, Size: "3"}
		for n := 1; n < 3 && shape != "outline"; n++ {
			if got := (German{}).Pieces(line, n); got == (English{}).Pieces(line, n) || strings.Contains(got, shape) {
				t.Errorf("%d of a %s is %q", n, shape, got)
			}
		}
		if got := (German{}).FormOption(shape); got == (English{}).FormOption(shape) {
			t.Errorf("the choice %q is %q", shape, got)
		}
		if shape != "outline" && (German{}).FormHint("size", shape) == (English{}).FormHint("size", shape) {
			t.Errorf("how to size a %s is told in English", shape)
		}
	}
}

// What is put into a sentence stands in it, in every language as often.
func TestNothingIsLeftOutOfASentence(t *testing.T) {
	english, german := said(English{}), said(German{})
	for name := range german {
		for i := range german[name] {
			for _, part := range []string{"Plum0", "Plum1", "Plum2", "Oat", "Ø"} {
				if a, b := strings.Contains(english[name][i], part), strings.Contains(german[name][i], part); a != b {
					t.Errorf("%s: %q and %q", name, english[name][i], german[name][i])
				}
			}
		}
	}
}

var point = regexp.MustCompile(`[0-9]\.[0-9]`)

func TestGermanLengthsHaveAComma(t *testing.T) {
	g := German{}
	for _, c := range []struct{ got, want string }{
		{g.Length(97_881_440, length.In), "3,8536"},
		{g.Length(5*length.Inch/2, length.In), "2 1/2"},
		{g.Length(63_500_000, length.Cm), "6,35"},
		{g.Size(63_500_000, 97_881_440, length.Mm), "63,5 x 97,88"},
		{g.SizeUnit(97_881_440, length.In), "3,8536 Zoll"},
		{g.SizeText("side 3.8536, left"), "Seite 3,8536, links"},
		{g.Pieces(cutlist.Line{Shape: "square", Size: "3.8536"}, 1), "1 Quadrat 3,8536"},
		{g.Pieces(cutlist.Line{Shape: "half hexagon", Size: "height 2 1/2"}, 3), "3 halbe Sechsecke Höhe 2 1/2"},
		{g.MayBeOff(length.Inch/4, length.Mm), "Es darf bis zu 6,35 mm daneben liegen."},
		{g.MayBeOff(length.Inch/4, length.In), "Es darf bis zu 1/4 Zoll daneben liegen."},
		{g.Minutes(95 * time.Second), "1,6"},
		{g.Yards(length.Yard*3/2, length.In), "1 1/2 Yard"},
		{g.Day("2026-11-25"), "Mi, 25.11."},
		{g.Clock(time.Date(2026, 1, 2, 15, 4, 0, 0, time.UTC)), "15:04 Uhr"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	for name, says := range said(g) {
		for _, s := range says {
			if point.MatchString(s) && name != "Day" {
				t.Errorf("%s has a decimal point: %q", name, s)
			}
		}
	}
}

// German sentences are as short as English ones.
func TestNoGermanSentenceIsLong(t *testing.T) {
	each(t, German{}, func(method, text string) {
		for _, sentence := range ends.Split(text, -1) {
			if n := len(strings.Fields(sentence)); n > 12 {
				t.Errorf("%s: %d words: %s", method, n, sentence)
			}
		}
	})
}

func TestIn(t *testing.T) {
	for language, want := range map[string]Words{"": English{}, "en": English{}, "de": German{}, "xx": English{}} {
		if In(language) != want {
			t.Errorf("%q is %T", language, In(language))
		}
	}
}

package words

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/session/reason"
)

// argument is a value to say a sentence with.
func argument(t reflect.Type) (reflect.Value, bool) {
	for _, v := range []any{"Plum", 3, 'A', true, 0.25, []string{"Plum", "Oat"}, 5 * length.Inch / 2, length.In, 70 * time.Minute,
		time.Date(2026, 11, 25, 18, 30, 0, 0, time.UTC), cutlist.Line{Shape: "square", Size: "2 1/2", Count: 24}, reason.LastLoad.Say(), reason.LastLoad.Err()} {
		if reflect.TypeOf(v).AssignableTo(t) {
			return reflect.ValueOf(v), true
		}
	}
	return reflect.Zero(t), t.Kind() == reflect.Struct || t.Kind() == reflect.Slice || t.Kind() == reflect.Int || t.Kind() == reflect.Uint8
}

// each calls f with every text a language can say, by the method that says it.
func each(t *testing.T, language any, f func(method, text string)) {
	v := reflect.ValueOf(language)
	n := 0
	for i := range v.NumMethod() {
		name := v.Type().Method(i).Name
		for _, text := range call(t, name, v.Method(i)) {
			f(name, text)
			n++
		}
	}
	if n < 200 {
		t.Errorf("only %d texts are said", n)
	}
}

func call(t *testing.T, name string, m reflect.Value) (texts []string) {
	var in []reflect.Value
	for j := range m.Type().NumIn() {
		arg, ok := argument(m.Type().In(j))
		if !ok {
			t.Errorf("%s: nothing to say it with for a %v", name, m.Type().In(j))
			return nil
		}
		in = append(in, arg)
	}
	// Some take an index into few words.
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s panics: %v", name, r)
		}
	}()
	out := m.Call
	if m.Type().IsVariadic() {
		out = m.CallSlice
	}
	for _, v := range out(in) {
		switch text := v.Interface().(type) {
		case string:
			texts = append(texts, text)
		case []string:
			texts = append(texts, text...)
		}
	}
	return texts
}

// ends is where a sentence ends; a colon or a semicolon parts what is read in
// two breaths.
var ends = regexp.MustCompile(`[.!?:;]+(\s|$)|\n`)

// Sentences have twelve words at most, one breath each.
func TestNoSentenceIsLong(t *testing.T) {
	each(t, English{}, func(method, text string) {
		for _, sentence := range ends.Split(text, -1) {
			if n := len(strings.Fields(sentence)); n > 12 {
				t.Errorf("%s: %d words: %s", method, n, sentence)
			}
		}
	})
}

// Words that are ours and not hers: the program's parts, and computing's.
var ours = regexp.MustCompile(`(?i)\b(queue|event|seq|sequence number|placement|recut|outline|fold|index|ledger|journal|parse|nil|null|layout|json|byte|buffer|stdin|terminal|cursor|session|commit|default|shell|config|parameter|argument|invalid|abort|execute)s?\b`)

func TestNoWordIsOurs(t *testing.T) {
	for w, ours := range map[Words]*regexp.Regexp{English{}: ours, German{}: oursInGerman} {
		for _, s := range everything(w) {
			// An outline is hers in a cut list; the journal is a file beside the data.
			text := strings.NewReplacer("outline", "", "Outline", "", "journal", "", "Journal", "").Replace(ticks.ReplaceAllString(s.text, ""))
			if word := ours.FindString(text); word != "" {
				t.Errorf("%T %s says %q: %s", w, s.by, word, s.text)
			}
		}
	}
}

var oursInGerman = regexp.MustCompile(`(?i)\b(ereignis|warteschlange|sitzung|index|json|byte|puffer|terminal|cursor|parameter|argument|ungültig|konfiguration|standardwert|shell|sequenz|platzierung|parsen|layout|panel)(se|en|e|n|s)?\b`)

func TestLengthsAndTimes(t *testing.T) {
	var e English
	for got, want := range map[string]string{
		e.Length(5*length.Inch/2, length.In):         "2 1/2",
		e.Long(100*length.Inch, length.In):           "3 yards",
		e.Long(254*length.Centimetre, length.Cm):     "3 m",
		e.Time(70 * time.Minute):                     "1 h 10 min",
		e.Minutes(90 * time.Second):                  "1.5",
		e.Minutes(3 * time.Minute):                   "3",
		e.Day("2026-03-07"):                          "Sat, Mar 7",
		e.Day("some day"):                            "some day",
		e.GoodAndSpoiled(40, 0):                      "40",
		e.LargeTime(4*time.Hour + 50*time.Minute):    "4:50",
		fmt.Sprint(e.MinutesShort(89 * time.Second)): "1 min",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

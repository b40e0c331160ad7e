package words

import (
	"errors"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
	"example.org/matside/session/reason"
	"example.org/matside/session/store"
	"example.org/matside/tui/files"
	"example.org/matside/tui/settings"
)

// everyKind is what is said below the screens, as the packages list it.
func everyKind() []*say.Kind {
	return slices.Concat(plan.Steps(), mistake.Kinds(), reason.Kinds(), settings.Kinds(), files.Kinds(), Kinds())
}

// factsOnly are the kinds that are nothing but their facts.
var factsOnly = []*say.Kind{mistake.Other, reason.FileTrouble}

var verb = regexp.MustCompile(`%(\[\d\])?s`)

// Every kind of sentence has its German, with the same facts in it.
func TestEveryKindHasItsGerman(t *testing.T) {
	for _, k := range everyKind() {
		how, ok := saidInGerman[k]
		switch {
		case !ok:
			t.Errorf("no German for %q", k.English())
		case how == k.English() && !slices.Contains(factsOnly, k):
			t.Errorf("%q is English", how)
		case len(verb.FindAllString(how, -1)) != len(verb.FindAllString(k.English(), -1)):
			t.Errorf("%q and %q have not the same facts", k.English(), how)
		case strings.Count(strings.ReplaceAll(how, "%%", ""), "%") != len(verb.FindAllString(how, -1)):
			t.Errorf("%q has something else to fill in", how)
		}
		if english := ticks.FindAllString(k.English(), -1); ok && len(english) > 0 {
			german := strings.Join(ticks.FindAllString(how, -1), " ")
			for _, word := range english {
				if !strings.Contains(german, word) && k != mistake.Write {
					t.Errorf("%q: %s is not told as it is typed", how, word)
				}
			}
		}
	}
	if n := len(everyKind()); len(saidInGerman) != n {
		t.Errorf("%d kinds and %d sentences: some are said no more", n, len(saidInGerman))
	}
}

// ticks are what is typed just so.
var ticks = regexp.MustCompile("`[^`]+`")

// What is wrong with a cut list is told in German, numbers with a comma and
// the quilter's own words as she typed them.
func TestMistakesInGerman(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"quilt Q\nfabric Ink\ncut from Ink\n4 squaers 2", "Q.cutlist:4:3: eine Form `squaers` gibt es nicht\n    4 squaers 2\n      ^^^^^^^\n    war `squares` gemeint?\n"},
		{"quilt Q\nfabric Ink\ncut from Ink\n4 squares 11.5", "dieses Teil ist im Zuschnitt 11 1/2 x 11 1/2 Zoll groß, und auf der Matte ist Platz für 11 x 11 Zoll\n"},
		{"quilt Q\nunits cm\nmargin 0\nfabric Ink\ncut from Ink\n4 squares 30.5", "30,5 x 30,5 cm groß, und auf der Matte ist Platz für 27,94 x 27,94 cm\n"},
		{"quilt Q\nfabric Ink\ncut from Ink\n4 squares 2 x 3", "Quadrate haben 1 Zahl, nicht 2"},
		{"quilt Q\nfabric Ink\ncut from Ink\nsquares 2", "wie viele Quadrate?"},
		{"quilt Q\nfabric Ink\ncut from Ink\n4 squares", "die Größe fehlt"},
		{"quilt Q\nfabric Ink\ncut from Ink\n4 squares 2 5/4", "ein Bruch hinter einer ganzen Zahl ist kleiner als 1"},
		{"quilt Q\nfabric Ink\ncut from Ink\n4 trapezoids 2 x 4 x 3", "die lange Seite steht vorn"},
		{"quilt Q\nfabric Ink, shrinks 3 x 5%", "das % fehlt\n"},
		{"quilt Q\noutline Leaf from \"leaf.svg\"", "`leaf.svg` lässt sich nicht lesen: gibt es nicht\n"},
	} {
		_, err := cutlist.Read("Q.cutlist", []byte(c.text), func(string) ([]byte, error) { return nil, &fs.PathError{Op: "open", Path: "x", Err: fs.ErrNotExist} })
		if err == nil {
			t.Errorf("%q: no mistake", c.text)
			continue
		}
		if got := (German{}).Error(err) + "\n"; !strings.Contains(got, c.want) {
			t.Errorf("%q:\n%s\nwant %s", c.text, got, c.want)
		}
		if (English{}).Error(err) != err.Error() {
			t.Errorf("%q: the English is another", c.text)
		}
	}
}

func TestErrorsInGerman(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{&store.Trouble{What: reason.BusySince.Say("20:15", 7), Safe: reason.NothingChanged.Say(), Way: reason.CloseOrWait.Say()},
			"matside ist schon in einem anderen Fenster offen (seit 20:15 Uhr, Prozess 7); nichts wurde geändert; dort schließen oder warten"},
		{&store.Trouble{What: reason.CantWrite.Say("m.db", syscall.ENOSPC), Way: reason.MakeRoom.Say()},
			"m.db lässt sich nicht schreiben: kein Platz mehr auf dem Datenträger; Platz schaffen, dann noch einmal versuchen"},
		{&store.Trouble{What: reason.RecordsLost.Say("m.db", reason.OneRecord.Say(), reason.Records.Say(9), reason.AndMore.Say("3, 4"))},
			"m.db und ihr Journal sind beide beschädigt: 1 Eintrag nicht lesbar (3, 4 und mehr), insgesamt 9 Einträge"},
		{reason.FabricOn.Err("One"), "der Stoff liegt auf Matte One; erst abziehen"},
		{BrokeOff.Err(errors.New("odd")), "es brach ab: odd"},
		{errors.New("odd"), "odd"},
		{errors.Join(nil, reason.LastLoad.Err(), errors.New("odd")), "sie ist schon die letzte\nodd"},
	} {
		if got := (German{}).Error(c.err); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	for s, want := range map[string]string{"it is so": "It is so.", "is it?": "Is it?", "": "", "so.": "So."} {
		if got := Full(s); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := (German{}).Length(5*length.Inch/2, length.Cm); got != "6,35" {
		t.Error(got)
	}
}

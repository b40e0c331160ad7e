package say

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

var (
	kinds   Kinds
	short   = kinds.New("%s is short by %s %s")
	because = kinds.New("%s, because %s")
	rest    = kinds.New("rest")
)

func TestSentences(t *testing.T) {
	for _, c := range []struct {
		s             Sentence
		english, back string
	}{
		{Nothing, "", ""},
		{rest.Say(), "rest", "tser"},
		{short.Say("Ink", Number("2.5"), "in"), "Ink is short by 2.5 in", "2,5 in: Ink"},
		{because.Say(rest.Say(), errors.New("full")), "rest, because full", "full: tser"},
		{short.Say("100%", 3, "in"), "100% is short by 3 in", "3 in: 100%"},
	} {
		if got := fmt.Sprint(c.s); got != c.english {
			t.Errorf("%q, want %q", got, c.english)
		}
		how := map[*Kind]string{short: "%[2]s %[3]s: %[1]s", because: "%[2]s: %[1]s", rest: "tser"}
		got := c.s.Put(func(k *Kind) string { return how[k] }, func(fact any) string {
			if n, ok := fact.(Number); ok {
				return strings.ReplaceAll(string(n), ".", ",")
			}
			return fmt.Sprint(fact)
		})
		if got != c.back {
			t.Errorf("%q, want %q", got, c.back)
		}
	}
	if all := kinds.All(); len(all) != 3 || all[2] != rest || rest.English() != "rest" {
		t.Errorf("kinds %v", all)
	}
}

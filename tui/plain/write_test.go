package plain

import (
	"context"
	"errors"
	"testing"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/rect"
	"example.org/matside/session"
	"example.org/matside/tui/files"
)

// shelf keeps cut lists in memory.
type shelf map[string]string

func (s shelf) lists(b *book) *Lists {
	return &Lists{
		Read: func(path string) (string, func(string) ([]byte, error), error) {
			if text, ok := s[path]; ok {
				return text, nil, nil
			}
			return "", nil, errors.New("no such file")
		},
		Write: func(path, text string, was *string) error {
			if now, ok := s[path]; ok && (was == nil || *was != now) {
				return files.ErrThere
			}
			s[path] = text
			return nil
		},
		FreeName: files.NameFor,
		Take: func(_ context.Context, path string) (session.QuiltID, error) {
			list, err := cutlist.Read(path, []byte(s[path]), nil)
			if err != nil {
				return 0, err
			}
			id, _, err := b.Start(session.Start{Text: s[path], List: list, Queue: plan.Make(list, plan.Options{Effort: rect.Quick})})
			return id, err
		},
	}
}

func TestAListWrittenInPlainLinesAndCut(t *testing.T) {
	b, _, o, out := evening(t)
	s := shelf{}
	o.Lists = s.lists(b)
	run(t, b, 0, o, "2", "Lamp, again", "Ink", "1", "", "1", // quilt, fabric, yardage, its usual size, nothing special
		"4", "3", "six", "6", "3", "2", "star", "1", // pieces from Ink: half-square triangles, 6, 3 finished
		"1", "1", "1", "1", "1", "1") // save, and the five steps
	want := "quilt \"Lamp, again\"\nfabric Ink, 42 in x 1 yd\n\ncut from Ink\n6 half-square triangles 3 finished for star\n"
	if got := s["lamp-again.cutlist"]; got != want {
		t.Fatalf("saved %q\n%s", got, out)
	}
	has(t, out, "What are you making?", "What do you call the fabric?", "Which shape, from Ink?", "How many?",
		"3 finished: cut 3 7/8 by the book, 3.8536 exactly.", "Saved as lamp-again.cutlist.", "Load 1 of 1, fabric.", "Lamp, again is all cut.", "6 good pieces in 1 load.")
}

func TestWhatIsWrongIsToldInPlainLinesToo(t *testing.T) {
	b, _, o, out := evening(t)
	s := shelf{"bad.cutlist": "quilt Bad\nfabric Ink\ncut from Ink\n4 squaers 3\n"}
	o.Lists = s.lists(b)
	run(t, b, 0, o, "1", "nowhere.cutlist", "1", "bad.cutlist", "3", "bad.cutlist", "1", "4", "4")
	has(t, out, "That did not work.", "bad.cutlist:4:3: there is no shape `squaers`", "did you mean `squares`?", "Put this right first: there is no shape `squaers`.")
}

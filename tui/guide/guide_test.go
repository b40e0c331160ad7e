package guide

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
	"example.org/matside/tui/words"
)

func facts(load int, step session.Step) Facts {
	list, q := fixture.LampRoom()
	return Facts{List: list, Load: &q.Loads[load], Step: step, Mat: "One", Panels: func(f int) int { return len(list.Fabrics[f].Stock) }}
}

func TestPages(t *testing.T) {
	for _, c := range []struct {
		load int
		step session.Step
		want string // the whole page but what is large
	}{
		{0, session.Fabric, "Cut Plum 10 1/2 x 5 1/2.|First number across, second along the grain."},
		{1, session.Fabric, "Cut 2 rough pieces:|1  Plum 10 1/2 x 3|2  Oat 6 1/4 x 3 3/8, panel 2|First number across, second along the grain.|Keep the print's way up: Oat."},
		{1, session.Press, "Press Plum and Oat flat.|It must be dry. Let it cool."},
		{0, session.Lay, "Lay Plum on mat One.|Left edge on the 1/4 line, top on the 1/4.|Right side up, grain up the mat.|Smooth from the middle outward.|You may be off by 1/4 in."},
		{1, session.Cut, "Cut drawing 2.|Set the cutter to woven cotton for Plum.|Set the cutter to suit Oat.|Is the blade in, and seated?|Start it. Leave it alone until it stops."},
		{1, session.Peel, "Peel off 8 pieces.|A  4 squares 2 1/2, Plum|B  4 half-square triangles 2 7/8, Oat, for wing|Waste first, then the pieces."},
	} {
		p := Write(words.English{}, facts(c.load, c.step))
		got := strings.Join(append(append([]string{p.Do}, p.Items...), p.More...), "|")
		if got != c.want {
			t.Errorf("load %d, %v:\ngot  %s\nwant %s", c.load, c.step, got, c.want)
		}
	}
}

// What an earlier load's straight cuts have freed is taken, not cut.
func TestWhatIsCutAlreadyIsTaken(t *testing.T) {
	for _, c := range []struct {
		load  int
		ready []int
		want  string // the page up to how sizes are read
	}{
		{0, []int{0}, "Take Plum 10 1/2 x 5 1/2.|It is cut already."},
		{1, []int{1}, "Cut 2 rough pieces:|1  Plum 10 1/2 x 3|2  Oat 6 1/4 x 3 3/8, panel 2, cut already"},
		{1, []int{0, 1}, "Take 2 rough pieces:|1  Plum 10 1/2 x 3, cut already|2  Oat 6 1/4 x 3 3/8, panel 2, cut already"},
	} {
		f := facts(c.load, session.Fabric)
		f.Ready = func(rough int) bool { return slices.Contains(c.ready, rough) }
		p := Write(words.English{}, f)
		if got := strings.Join(append(append([]string{p.Do}, p.Items...), p.More...), "|"); !strings.HasPrefix(got, c.want+"|First number") {
			t.Errorf("load %d, %v ready:\ngot  %s\nwant %s", c.load, c.ready, got, c.want)
		}
	}
}

func TestCautionsStandWhereTheyBelong(t *testing.T) {
	for step, word := range map[session.Step]string{session.Fabric: "rotary cutter", session.Press: "iron", session.Lay: "blade", session.Cut: "blade"} {
		if p := Write(words.English{}, facts(0, step)); !strings.Contains(p.Caution, word) {
			t.Errorf("%v: caution %q says nothing of the %s", step, p.Caution, word)
		}
	}
	for _, step := range []session.Step{session.Press, session.Lay, session.Cut} {
		if p := Write(words.English{}, facts(0, step)); !strings.Contains(p.Caution, "maker's instructions come first") {
			t.Errorf("%v: the maker's instructions do not come first", step)
		}
	}
}

func TestFaceDownIsSaid(t *testing.T) {
	f := facts(1, session.Lay)
	f.List.Fabrics[1].FaceDown = true
	got := strings.Join(Write(words.English{}, f).More, "|")
	if !strings.Contains(got, "Right side up, grain up: Plum.|Right side DOWN, grain up: Oat.") {
		t.Error(got)
	}
	f.Step = session.Cut
	if got := strings.Join(Write(words.English{}, f).More, "|"); !strings.Contains(got, "Don't mirror it") {
		t.Error(got)
	}
}

// What she acts on is short.
func TestSentencesAreShort(t *testing.T) {
	for load := range 2 {
		for step := range session.Step(session.Steps) {
			p := Write(words.English{}, facts(load, step))
			for _, s := range append(p.More, p.Do) {
				for sentence := range strings.SplitSeq(s, ". ") {
					if n := len(strings.Fields(sentence)); n > 12 {
						t.Errorf("%d words: %q", n, sentence)
					}
				}
			}
		}
	}
}

// However she answers within bounds, exactly as many pieces are told as she
// said, each once, and of each line as many as she said.
func TestAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var load queue.Load
		for range rapid.IntRange(1, 12).Draw(t, "pieces") {
			load.Pieces = append(load.Pieces, queue.Placement{Line: rapid.IntRange(0, 3).Draw(t, "line")})
		}
		n := rapid.IntRange(0, len(load.Pieces)).Draw(t, "spoiled")
		answers := map[int]int{}
		a := Ask(&load, n)
		for !a.Told() {
			least, most := a.Bounds()
			if least >= most {
				t.Fatalf("asked what can only be one way: %d to %d", least, most)
			}
			line := a.Stacks[0].Line
			answers[line] = rapid.IntRange(least, most).Draw(t, "answer")
			a = a.Tell(answers[line])
		}
		seen, of := map[int]bool{}, map[int]int{}
		for _, p := range a.Pieces {
			if seen[p] || p < 0 || p >= len(load.Pieces) {
				t.Fatalf("told %v", a.Pieces)
			}
			seen[p] = true
			of[load.Pieces[p].Line]++
		}
		if len(a.Pieces) != n {
			t.Fatalf("%d told, want %d", len(a.Pieces), n)
		}
		for line, want := range answers {
			if of[line] != want {
				t.Fatalf("line %d: %d told, want %d", line, of[line], want)
			}
		}
	})
}

func TestStacks(t *testing.T) {
	load := queue.Load{Pieces: []queue.Placement{{Line: 2}, {Line: 0}, {Line: 2}}}
	want := []Stack{{0, []int{1}}, {2, []int{0, 2}}}
	if got := Stacks(&load); !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

package tui

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"example.org/matside/plan"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
	"example.org/matside/tui/settings"
)

// second starts another quilt beside the one in hand.
func (d *desk) second(name string) session.QuiltID {
	list, q := fixture.LampRoom()
	list.Quilt = name
	d.after(time.Minute)
	id, st, err := d.book.Start(session.Start{Text: "quilt " + name + "\n", List: list, Queue: q, Name: name})
	if err != nil {
		d.t.Fatal(err)
	}
	d.f.state = st
	return id
}

func TestTheShelf(t *testing.T) {
	d := newDesk(t, 80, 24)
	id := d.second("Porch Swing")
	d.key("s")
	d.sees("The shelf", "Lamp Room", "Porch Swing", "under way", "0 of 16 pieces, 2 loads to go")
	d.key("up", "up", "enter") // the one touched last is on top
	if d.f.quilt != id {
		t.Fatalf("quilt %d is in hand, want %d", d.f.quilt, id)
	}
	st := d.book.State()
	if st.Quilt(id).Clock.IsZero() || !st.Quilt(1).Clock.IsZero() {
		t.Error("time counts for the quilt that was left, or not for the one in hand")
	}
	d.sees("Porch Swing", "FABRIC")
	d.key("s", "a")
	d.sees("set aside")
	d.key("backspace")
	if strings.Contains(ansi.Strip(d.f.View()), "FABRIC") {
		t.Error("a quilt set aside is cut on")
	}
	d.key("s", "a")
	d.sees("under way")
}

func TestScreensWithoutAQuilt(t *testing.T) {
	for _, keys := range []string{"d o", "m o", "s d o", "s m o", "g o", "m m", "d p"} {
		d, _ := atTable(t, 80, 24)
		d.does(keys)
		if d.f.crash != nil {
			t.Fatalf("%s: %v", keys, d.f.crash)
		}
		d.does("enter backspace q")
	}
}

func TestRenamingTypesAName(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("s", "r")
	d.sees("A new name for Lamp Room:")
	d.key("enter")
	d.sees("A name needs a letter at least.")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("Quiet Wood"), Paste: true})
	d.key("q", "backspace", "enter")
	d.sees("Quiet Wood", "under way")
	if d.quit {
		t.Error("q typed into a name left")
	}
	if got := d.q().Name; got != "Quiet Wood" {
		t.Errorf("its name is %q", got)
	}
	d.key("r", "Z", "esc")
	d.sees("The shelf", "Quiet Wood")
}

func TestWhatCantBeTakenBackIsAsked(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.second("Porch Swing")
	for _, no := range []string{"enter", "n", "esc", "backspace"} {
		d.key("s", "f")
		d.sees("finished?", "y is yes, Enter is no.")
		d.key(no, "x")
		d.sees("off the shelf for good?")
		d.key(no, "backspace")
	}
	if n := len(d.book.done); n != 0 {
		t.Fatalf("%d actions were written without a yes", n)
	}
	d.key("s", "x", "y")
	if got := d.book.State().Quilts[0].Standing; got != session.Gone {
		t.Errorf("after yes it is %v", got)
	}
	if text := ansi.Strip(d.f.View()); strings.Contains(text, "Lamp Room") {
		t.Errorf("a removed quilt still shows:\n%s", text)
	}
}

func TestMatsInFull(t *testing.T) {
	d := newDesk(t, 120, 40)
	d.key("enter", "enter", "enter", "enter", "f", "r", "enter", "m")
	d.sees("Fabric has lifted since its wash: wash it.", "Chance that fabric has lifted, by loads since the wash", "100%", "The blade has cut 2 yards.", "Change the blade")
	d.key("r")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("Old")})
	d.key("enter")
	d.sees("mat Old, in use")
	d.key("n", "down", "x")
	d.sees("Is mat Two thrown away?")
	d.key("y")
	if strings.Contains(ansi.Strip(d.f.View()), "Two") {
		t.Error("a mat thrown away is still shown")
	}
	d.key("b")
	d.sees("Is a new blade in the cutter?")
	d.key("y")
	d.sees("The blade has cut 0 yards.")
	d.key("a", "u")
	if m := d.book.State().Mats[0]; m.Refreshes != 0 {
		t.Errorf("adhesive taken back, and still noted: %+v", m)
	}
}

func TestDaysBehind(t *testing.T) {
	d := newDesk(t, 120, 40)
	d.key("d")
	d.sees("Nothing has been peeled yet.")
	d.key("enter", "enter", "enter", "enter", "enter", "2", "enter")
	d.after(26 * time.Hour)
	d.key("enter", "enter", "enter", "enter", "enter", "d")
	d.sees("The days behind", "Wed, Nov 25", "6, 2 spoiled", "Thu, Nov 26", "Minutes a step", "fabric", "Spoiled, by fabric", "Plum", "Spoiled, by place on the mat")
	d = newDesk(t, 60, 20)
	d.key("enter", "enter", "enter", "enter", "2", "enter", "d")
	d.sees("Pieces an evening", "part 1 of 3")
	d.key("n")
	d.sees("Minutes a step", "Spoiled, by fabric", "part 2 of 3")
	d.key("n")
	d.sees("Spoiled, by place on the mat", "part 3 of 3")
}

// slowJob is a job that ends when it is told to.
func (d *desk) slowJob(release <-chan any) tea.Cmd {
	return d.f.begin(job{name: "Planning Lamp Room.",
		do: func(_ context.Context, tell func(say.Sentence)) any {
			tell(plan.Packing.Say())
			tell(plan.Packing.Say())
			tell(plan.Fitting.Say())
			return <-release
		},
		then: func(_ view, answer any) action { return show{sure{says: answer.(string), under: walk{}}} }})
}

func TestAJobShowsItsStepsAndCanBeDropped(t *testing.T) {
	d := newDesk(t, 80, 24)
	release := make(chan any, 1)
	release <- "It is planned."
	cmd := d.slowJob(release)
	d.sees("Planning Lamp Room.", "Backspace stop", "q leave")
	answer := cmd()
	d.sees("✓ Packing the loads", "Fitting rough cuts to the fabric")
	d.send(answer)
	d.sees("It is planned.")

	d = newDesk(t, 80, 24)
	release <- "It is planned."
	cmd = d.slowJob(release)
	d.key("backspace")
	d.sees("Cut Plum")
	d.send(cmd()) // too late: nobody waits for it
	d.sees("Cut Plum")

	d = newDesk(t, 80, 24)
	_ = d.slowJob(release)
	d.key("q")
	if !d.quit {
		t.Error("q does not leave in the middle of a job")
	}
}

func TestAJobThatPanicsIsAnAnswer(t *testing.T) {
	d := newDesk(t, 80, 24)
	var got any
	d.run(d.f.begin(job{name: "x", do: func(context.Context, func(say.Sentence)) any { panic("broken") },
		then: func(_ view, answer any) action { got = answer; return nil }}))
	if e, ok := got.(brokeOff); !ok || !strings.Contains(e.Error(), "broken") {
		t.Errorf("answer %v", got)
	}
	d.sees("Cut Plum")
}

func TestOpeningThatFails(t *testing.T) {
	d := newDesk(t, 80, 24)
	busy := errors.New("it is open in another window")
	_ = d.f.begin(d.f.openJob("Opening.", nil))
	d.send(worked{d.f.jobs.id, busy})
	if !d.quit || d.f.failure != busy {
		t.Errorf("quit %v, failure %v", d.quit, d.f.failure)
	}
	fits(t, d)
}

// Settings are in use at once and kept one try at a time, the last ones last;
// leaving waits for them.
func TestSettingsAreKeptInOrder(t *testing.T) {
	d := newDesk(t, 80, 24)
	var keptLooks []string
	d.f.keep = func(s settings.Settings) error { keptLooks = append(keptLooks, s.Look); return nil }
	first := d.f.set(settings.Settings{Look: "light"})
	if cmd := d.f.set(settings.Settings{Look: "dark"}); cmd != nil {
		t.Error("two tries at once")
	}
	_ = d.f.set(settings.Settings{Look: "high contrast"})
	d.send(keyMsg("q"))
	if d.quit {
		t.Error("left before the settings were kept")
	}
	d.run(first)
	if got := strings.Join(keptLooks, " "); got != "light high contrast" || !d.quit {
		t.Errorf("kept %q, quit %v", got, d.quit)
	}
	d = newDesk(t, 80, 24)
	d.f.keep = func(settings.Settings) error { return errDisk }
	d.key("l")
	d.sees("The settings could not be kept: no room on the disk.")
}

func TestKeyGapIsHers(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.f.use(settings.Settings{KeyGap: 900 * ms})
	d.send(keyMsg("enter"))
	d.after(600 * ms)
	d.send(keyMsg("enter"))
	d.after(3 * time.Second)
	if d.q().Step != session.Press {
		t.Errorf("with a gap of 900 ms, two hits 600 ms apart went to %v", d.q().Step)
	}
	d.send(keyMsg("enter"))
	d.after(3 * time.Second)
	if d.q().Step != session.Lay {
		t.Errorf("a press three seconds later went to %v", d.q().Step)
	}
}

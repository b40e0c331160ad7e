package tui

import (
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/settings"
)

func TestPauseIsAnEvent(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("p")
	d.sees("Your pause began at", "It counts as no work.")
	if !d.q().Paused {
		t.Fatal("no pause is written down")
	}
	d.after(40 * time.Minute)
	d.key("enter")
	if d.q().Paused {
		t.Fatal("Enter does not end the pause")
	}
	d.key("enter")
	if took := d.q().Loads[0].Work[session.Fabric]; took > time.Minute {
		t.Errorf("the pause counted as %v of work", took)
	}
}

func TestAPauseIsDue(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.f.use(settings.Settings{Pause: 20, Sound: true, Notify: true})
	d.run(d.f.arm())
	d.after(19 * time.Minute)
	if strings.Contains(ansi.Strip(d.f.View()), "rest your hands") || d.wrote != "" {
		t.Fatalf("too early: %q", d.wrote)
	}
	d.after(2 * time.Minute)
	d.sees("Time to rest your hands.", "p begins a pause. Enter goes on as before.")
	if want := "\a\x1b]9;matside: Time to rest your hands.\a"; d.wrote != want {
		t.Errorf("wrote %q, want %q", d.wrote, want)
	}
	d.after(30 * time.Minute)
	if n := strings.Count(d.wrote, "\x1b]9;"); n != 1 {
		t.Errorf("it rang %d times", n)
	}
	d.key("p")
	d.after(10 * time.Minute)
	d.key("enter")
	if strings.Contains(ansi.Strip(d.f.View()), "rest your hands") {
		t.Error("a pause is still due after the pause")
	}
}

func TestNoPauseIsDueWhereSheWantsNone(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.f.use(settings.Settings{Pause: -1, Sound: true})
	d.run(d.f.arm())
	d.after(3 * time.Hour)
	if strings.Contains(ansi.Strip(d.f.View()), "rest your hands") || d.wrote != "" {
		t.Errorf("a pause is due; wrote %q", d.wrote)
	}
}

func TestTheCutIsOver(t *testing.T) {
	d := newDesk(t, 120, 40)
	d.f.use(settings.Settings{Sound: true})
	d.key("enter", "enter", "enter")
	v := d.f.view()
	d.sees("It should take about", "Meanwhile: press Plum and Oat for the next load.")
	d.after(guide.CutTakes(v.state, v.quilt.InHand()) - time.Minute)
	if d.wrote != "" {
		t.Fatalf("it rang early: %q", d.wrote)
	}
	d.after(2 * time.Minute)
	d.sees("The cutter ought to be done.")
	if d.wrote != "\a" {
		t.Errorf("wrote %q, want one bell", d.wrote)
	}
	if d.q().Step != session.Cut {
		t.Error("it went on by itself")
	}
}

func TestSilentUnlessTurnedOn(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter", "enter", "enter")
	d.after(3 * time.Hour)
	if d.wrote != "" {
		t.Errorf("wrote %q", d.wrote)
	}
}

// The time left changes by itself at most once a minute, and never where
// nothing is to move.
func TestTheClock(t *testing.T) {
	d := newDesk(t, 80, 24)
	seen := d.seen
	d.after(10 * time.Minute)
	if n := d.seen - seen; n != 10 {
		t.Errorf("%d messages in ten minutes", n)
	}
	d = newDesk(t, 80, 24)
	d.f.use(settings.Settings{Still: true, Pause: -1})
	d.after(2 * time.Minute)
	seen = d.seen
	d.after(10 * time.Minute)
	if n := d.seen - seen; n != 0 {
		t.Errorf("still: %d messages in ten minutes", n)
	}
}

package tui

import (
	"strings"
	"testing"

	"example.org/matside/plan"
	"example.org/matside/plan/say"
)

// testPlanner is a planner that does what the test says.
type testPlanner struct {
	tell    func(say.Sentence)
	hurried bool
}

func (p *testPlanner) Watch(tell func(say.Sentence)) { p.tell, p.hurried = tell, false }
func (p *testPlanner) Hurry()                        { p.hurried = true }

// What is planned for a save is told while it lasts, and doesn't keep her
// from leaving.
func TestPlanningForASaveIsToldAndHurried(t *testing.T) {
	d := newDesk(t, 80, 24)
	p := &testPlanner{}
	d.f.planner = p
	d.slow = true
	d.key("enter")
	d.sees("saving …", "Cut Plum")
	told := d.f.words.Say(plan.Packing.Say())
	p.tell(plan.Packing.Say())
	d.sees("saving … " + told)
	late := p.tell
	d.release()
	d.sees("Press Plum flat.")
	late(plan.Packing.Say())
	if strings.Contains(d.f.View(), told) {
		t.Error("a step is told when the save is over")
	}
	if p.hurried {
		t.Error("hurried, and nobody wanted to leave")
	}
	d.slow = true
	d.key("enter", "q")
	if !p.hurried {
		t.Error("she wants to leave, and the planner takes its time")
	}
	d.release()
	if !d.quit {
		t.Error("she has not left")
	}
}

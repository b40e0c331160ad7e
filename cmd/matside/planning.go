package main

import (
	"context"
	"errors"
	"fmt"
	"os/signal"
	"slices"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"example.org/matside/plan"
	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/say"
	"example.org/matside/tui/words"
)

// planning is how a cut list is to be planned, as the options say.
type planning struct {
	effort effort
	first  string // the label whose pieces come first
	loads  int    // as many are allowed for the sake of less fabric; 0: the fewest

	tell func(step say.Sentence) // where the screen shows progress; nil: standard error
}

// telling is the same, with its progress told to a screen that is up and
// takes care of interrupts. A nil tell changes nothing.
func (p planning) telling(tell func(say.Sentence)) *planning {
	p.tell = tell
	return &p
}

// effort is the --effort option.
type effort struct{ rect.Effort }

var efforts = []struct {
	name string
	rect.Effort
}{{"quick", rect.Quick}, {"usual", rect.Usual}, {"thorough", rect.Thorough}}

func (e *effort) String() string {
	for _, o := range efforts {
		if o.Effort == e.Effort {
			return o.name
		}
	}
	return ""
}

func (e *effort) Set(s string) error {
	for _, o := range efforts {
		if o.name == strings.ToLower(s) {
			e.Effort = o.Effort
			return nil
		}
	}
	return fmt.Errorf("it is one of quick, usual, thorough")
}

func (e *effort) Type() string { return "EFFORT" }

// effortOption lets a command be told how hard to look for a good plan.
func (p *planning) effortOption(c *cobra.Command) {
	c.Flags().Var(&p.effort, "effort", "how hard to look for fewer loads: quick, usual or thorough")
}

// again is how pieces are planned that are cut once more or later, always with
// usual effort: she waits for them at the screen.
func (p *planning) again() *replanner {
	return &replanner{opt: plan.Options{First: p.first}}
}

// options lets a command be told all of it.
func (p *planning) options(c *cobra.Command) {
	p.effortOption(c)
	c.Flags().StringVar(&p.first, "first", "", "the `LABEL` whose pieces are to be cut first")
	c.Flags().IntVar(&p.loads, "loads", 0, "allow `N` loads, if that takes less fabric")
}

// fits refuses options that the cut list can't meet.
func (p *planning) fits(s source) error {
	if p.loads < 0 {
		return usagef("--loads is a number of loads, not %d", p.loads)
	}
	if p.first == "" {
		return nil
	}
	labels := labelsOf(s.list)
	if slices.Contains(labels, p.first) {
		return nil
	}
	hint := "No piece in it has a label; `24 squares 2 1/2 for A` gives one."
	if len(labels) > 0 {
		hint = "Its labels are " + printable(strings.Join(labels, ", ")) + "."
	}
	return problem{what: fmt.Sprintf("%s has no piece to cut on the mat for %q", printable(s.name), printable(p.first)), hint: hint}
}

// labelsOf lists the labels of what is cut on the mat, each once.
func labelsOf(l *cutlist.List) (all []string) {
	for i := range l.Lines {
		if label := l.Lines[i].Label; label != "" && l.Lines[i].Kind == cutlist.OnMat && !slices.Contains(all, label) {
			all = append(all, label)
		}
	}
	return all
}

// make plans a cut list and has the plan checked. Interrupted, it gives the
// best plan so far, and errInterrupted with it.
func (p *planning) make(ctx context.Context, w world, s source) (*queue.Queue, error) {
	front, err := p.front(ctx, w, s, p.loads > 0)
	if len(front) == 0 {
		return nil, err
	}
	q := front[0]
	if p.loads > 0 {
		if q = plan.AtMost(front, p.loads); q == nil {
			return nil, problem{
				what: fmt.Sprintf("%s can't be cut in %d: the fewest loads found are %d", printable(s.name), p.loads, len(front[0].Loads)),
				hint: "`matside plan FILE --trade` shows how many loads take how much fabric.",
			}
		}
	}
	return q, err
}

// print plans a cut list and writes the plan. Interrupted, it writes the best
// plan so far and still says so.
func (p *planning) print(ctx context.Context, w world, s source, write writer) error {
	q, err := p.make(ctx, w, s)
	if q == nil {
		return err
	}
	return errors.Join(write(w.out, q), err)
}

// front plans a cut list: every plan worth having, or just the one of fewest
// loads.
func (p *planning) front(ctx context.Context, w world, s source, all bool) ([]*queue.Queue, error) {
	if err := p.fits(s); err != nil {
		return nil, err
	}
	tell := p.tell
	if tell == nil {
		watched, release := signal.NotifyContext(ctx, syscall.SIGINT)
		defer release()
		context.AfterFunc(watched, release) // a second interrupt ends the program
		shown := showProgress(w)
		defer shown.end()
		ctx, tell = watched, shown.say
	}
	opt := plan.Options{Effort: p.effort.Effort, First: p.first, Progress: tell,
		Stop: func() bool { return ctx.Err() != nil }}
	front := leavable(ctx, p.tell != nil, func() []*queue.Queue {
		if all {
			return plan.Trade(s.list, opt)
		}
		return []*queue.Queue{plan.Make(s.list, opt)}
	})
	for _, q := range front {
		if err := sound(s, q); err != nil {
			return nil, err
		}
	}
	if ctx.Err() != nil {
		return front, errInterrupted
	}
	return front, nil
}

// leavable is what plan makes. Where a screen is up it can be left at once: a
// search on its way to an end is then left behind, and nothing comes of it.
func leavable(ctx context.Context, screen bool, plan func() []*queue.Queue) []*queue.Queue {
	if !screen {
		return plan()
	}
	done := make(chan []*queue.Queue, 1)
	go func() { done <- plan() }()
	select {
	case front := <-done:
		return front
	case <-ctx.Done():
		return nil
	}
}

// sound has a plan checked: what the check finds is our own mistake, and
// nothing that it finds fault with is printed or cut.
func sound(s source, q *queue.Queue) error {
	faults := check.Check(q)
	if len(faults) == 0 {
		return nil
	}
	var found []string
	for _, f := range faults[:min(len(faults), 5)] {
		found = append(found, "  "+f.String())
	}
	return told{what: words.PlanAtFault.Say(printable(s.name), strings.Join(found, "\n")), hint: words.NothingChanged.Say()}
}

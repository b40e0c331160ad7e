package main

import (
	"sync"
	"sync/atomic"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/say"
	"example.org/matside/session"
)

// replanner plans what is cut once more or later, while a step is saved: it
// can be watched and hurried meanwhile. It is a tui.Planner.
type replanner struct {
	opt     plan.Options
	hurried atomic.Bool
	mu      sync.Mutex
	tell    func(say.Sentence) // nil: nobody watches
}

// plan is a session.Planner.
func (r *replanner) plan(list *cutlist.List, wish session.Wish) (*queue.Queue, error) {
	opt := r.opt
	opt.Stop, opt.Progress = r.hurried.Load, r.say
	return session.PlanWith(opt)(list, wish)
}

func (r *replanner) say(step say.Sentence) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.tell != nil {
		r.tell(step)
	}
}

// Watch tells the steps of what is planned from now on, with all the time it
// takes.
func (r *replanner) Watch(tell func(say.Sentence)) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.tell = tell
	r.hurried.Store(false)
}

// Hurry makes it end soon with the best it has.
func (r *replanner) Hurry() { r.hurried.Store(true) }

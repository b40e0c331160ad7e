package session

import (
	"fmt"

	"example.org/matside/plan"
	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
)

// PlanWith is the Planner that package plan makes.
func PlanWith(opt plan.Options) Planner {
	return func(list *cutlist.List, w Wish) (*queue.Queue, error) {
		opt := opt
		opt.Used, opt.SkipHand = w.Used, !w.Hand
		opt.Wanted = make([][]int, len(list.Lines))
		for _, c := range w.Wanted {
			opt.Wanted[c.Line] = append(opt.Wanted[c.Line], c.Copy)
		}
		for i, l := range list.Lines {
			if l.Kind != cutlist.OnMat && w.Hand {
				for c := 1; c <= max(l.Count, 1); c++ {
					opt.Wanted[i] = append(opt.Wanted[i], c)
				}
			}
		}
		made := plan.Make(list, opt)
		if faults := check.Against(made, check.Asked{Wanted: opt.Wanted, Used: opt.Used}); len(faults) > 0 {
			return nil, fmt.Errorf("the plan did not pass its check, which is a fault of matside's: %v", faults[0])
		}
		return made, nil
	}
}

// usualPlanner plans with the usual effort.
var usualPlanner = PlanWith(plan.Options{})

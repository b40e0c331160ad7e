package guide

import "example.org/matside/plan/queue"

// Asked goes through the lines on a mat until it is told which pieces are
// spoiled. What can only be one way is not asked.
type Asked struct {
	Left   int     // spoiled pieces not told yet
	Stacks []Stack // the lines not asked yet, the one to ask first
	Pieces []int   // pieces told, indexes into the load's Pieces
}

// Ask begins with n spoiled pieces, at most as many as the load holds.
func Ask(load *queue.Load, n int) Asked {
	return Asked{Left: n, Stacks: Stacks(load)}.plain()
}

// Told reports that nothing is left to ask.
func (a Asked) Told() bool { return a.Left == 0 }

// Bounds are the fewest and the most pieces of the line to ask that can be
// spoiled: the lines after it must be able to hold the rest.
func (a Asked) Bounds() (least, most int) {
	after := 0
	for _, s := range a.Stacks[1:] {
		after += len(s.Pieces)
	}
	return max(a.Left-after, 0), min(a.Left, len(a.Stacks[0].Pieces))
}

// Tell notes that n pieces of the line to ask are spoiled, n within Bounds:
// the last n, for pieces of a line are all alike.
func (a Asked) Tell(n int) Asked { return a.tell(n).plain() }

func (a Asked) tell(n int) Asked {
	pieces := a.Stacks[0].Pieces
	told := append(append([]int{}, a.Pieces...), pieces[len(pieces)-n:]...)
	return Asked{a.Left - n, a.Stacks[1:], told}
}

// plain tells what can only be one way.
func (a Asked) plain() Asked {
	for a.Left > 0 {
		least, most := a.Bounds()
		if least != most {
			break
		}
		a = a.tell(least)
	}
	return a
}

package session

import "example.org/matside/plan/queue"

// drawn gives loads planned later the numbers of their drawings: that of a
// load of this quilt with the same outlines at the same places, or the next
// free one. So a number never stands for two drawings, and one that she has
// sent to the cutter already can be used again.
func (q *Quilt) drawn(loads []queue.Load) []queue.Load {
	numbers, last := map[string]int{}, q.Drawings
	for i := range q.Loads {
		l := &q.Loads[i]
		numbers[l.Load.Drawing()] = l.Layout
	}
	for i := range loads {
		l := &loads[i]
		key := l.Drawing()
		if numbers[key] == 0 {
			last++
			numbers[key] = last
		}
		l.Layout = numbers[key]
	}
	return loads
}

package session

import (
	"cmp"
	"encoding/binary"
	"slices"

	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// drawn gives loads planned later the numbers of their drawings: that of a
// load of this quilt with the same outlines at the same places, or the next
// free one. So a number never stands for two drawings, and one that she has
// sent to the cutter already can be used again.
func (q *Quilt) drawn(loads []queue.Load) []queue.Load {
	numbers, last := map[string]int{}, q.Drawings
	for i := range q.Loads {
		l := &q.Loads[i]
		numbers[drawing(&l.Load)] = l.Layout
	}
	for i := range loads {
		l := &loads[i]
		key := drawing(l)
		if numbers[key] == 0 {
			last++
			numbers[key] = last
		}
		l.Layout = numbers[key]
	}
	return loads
}

// drawing is a load's outlines as one string, whatever the order they come in
// and the corner they begin with.
func drawing(l *queue.Load) string {
	all := make([][]byte, len(l.Pieces))
	for i := range l.Pieces {
		all[i] = corners(l.Pieces[i].Outline)
	}
	slices.SortFunc(all, slices.Compare)
	var b []byte
	for _, o := range all {
		b = append(binary.BigEndian.AppendUint64(b, uint64(len(o))), o...)
	}
	return string(b)
}

func corners(o outline.Outline) []byte {
	if len(o) == 0 {
		return nil
	}
	first := 0
	for i, p := range o {
		if c := cmp.Or(cmp.Compare(p.Y, o[first].Y), cmp.Compare(p.X, o[first].X)); c < 0 {
			first = i
		}
	}
	b := make([]byte, 0, 16*len(o))
	for i := range o {
		p := o[(first+i)%len(o)]
		b = binary.BigEndian.AppendUint64(b, uint64(p.X))
		b = binary.BigEndian.AppendUint64(b, uint64(p.Y))
	}
	return b
}

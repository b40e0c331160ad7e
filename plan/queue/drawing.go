package queue

import (
	"cmp"
	"encoding/binary"
	"slices"

	"example.org/matside/plan/outline"
)

// Drawing is what a cutter is sent for the load, as a string to compare: its
// outlines at their places, whatever the order they come in and the corner
// they begin with.
func (l *Load) Drawing() string {
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

// corners is an outline as bytes, from its first corner from the top left.
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

package nest

import (
	"encoding/binary"

	"example.org/matside/plan/length"
)

// A Sheet is a container that is filled again and again with some of the same
// items, in other numbers or at other values. It remembers what it worked out.
type Sheet struct {
	m   *model
	opt Options
}

// NewSheet is a container of w x h for some items; their Counts and Values are
// of no matter.
func NewSheet(w, h, gap length.Len, items []Item, opt Options) *Sheet {
	return &Sheet{newModel(newContainer(w, h, gap), items), opt}
}

// Fill lays as much value as it can, no item more often than its count. A nil
// value is each item's area. It never fails: what fits at no turn is left out.
// Calls must come one at a time.
func (s *Sheet) Fill(count []int, value []int64) []Placed {
	s.m.appraise(value)
	return s.m.placed(s.m.fill(count, s.opt))
}

// Fill fills a container of w x h once, as a Sheet does.
func Fill(w, h, gap length.Len, items []Item, opt Options) []Placed {
	count := make([]int, len(items))
	var value []int64
	for i, it := range items {
		count[i] = it.Count
		if it.Value != 0 {
			value = append(value, it.Value)
		}
	}
	return NewSheet(w, h, gap, items, opt).Fill(count, value)
}

// crowdingKey is the same where crowding does the same: the layout, what there
// is left, and which item is worth more than which.
func (m *model) crowdingKey(spots []spot, left []int) string {
	var key []byte
	for i, n := range left {
		key = binary.AppendVarint(key, int64(min(n, m.roomFor(i))))
	}
	for _, i := range m.waiting(nil, left, 1) {
		key = binary.AppendVarint(key, int64(i))
	}
	for _, s := range spots {
		for _, v := range []int64{int64(s.shape), s.at.x, s.at.y} {
			key = binary.AppendVarint(key, v)
		}
	}
	return string(key)
}

package nest

import "slices"

// flipped is the model seen in a mirror along the diagonal: x and y change
// places. Rows in it are columns in m. Shapes keep their numbers.
func (m *model) flipped() *model {
	f := &model{
		container: container{m.h, m.w, m.gap},
		items:     m.items, turns: m.turns, value: m.value, area: m.area,
		regions: make([]*region, len(m.regions)),
	}
	for _, s := range m.shapes {
		s.ring = s.ring.flipped()
		s.w, s.h = s.h, s.w
		parts := make([]ring, len(s.parts))
		for i, p := range s.parts {
			parts[i] = p.flipped()
		}
		s.parts = parts
		f.shapes = append(f.shapes, s)
	}
	return f
}

func (r ring) flipped() ring {
	out := make(ring, len(r))
	for i, p := range r {
		out[i] = vec{p.y, p.x}
	}
	slices.Reverse(out) // a mirror turns the way round about
	return out
}

func flipSpots(spots []spot) []spot {
	out := make([]spot, len(spots))
	for i, s := range spots {
		out[i] = spot{s.shape, vec{s.at.y, s.at.x}}
	}
	return out
}

func flipAll(all [][]spot) [][]spot {
	for i := range all {
		all[i] = flipSpots(all[i])
	}
	return all
}

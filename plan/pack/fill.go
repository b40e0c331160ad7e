package pack

import (
	"encoding/binary"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// filler packs single rough cuts, and remembers what it has packed. Value is
// the worth of a piece of each kind, nil for its area.
type filler struct {
	*Job
	value []int64
	solid []int64 // worth of a solid of each class; nil for that of its pieces
	seen  map[string]Group
	work  int // packings done, the measure of effort
}

func (j *Job) filler(value []int64) *filler {
	if value == nil {
		value = make([]int64, len(j.Kinds))
		for k := range value {
			value[k] = j.Kinds[k].area
		}
	}
	return &filler{Job: j, value: value, seen: map[string]Group{}}
}

// fill packs as much worth as it can of a fabric's wanted pieces, fussy ones
// left out, into one box of at most w x h. The group is at 0,0, and empty
// where nothing fits.
func (f *filler) fill(fabric int, want []int, w, h length.Len) Group {
	key := f.key(fabric, want, w, h)
	g, ok := f.seen[key]
	if !ok {
		f.work++
		g = f.pack(fabric, want, w, h)
		f.seen[key] = g
	}
	return g
}

// pack tries blocks, and outlines as they are where there are any that are no
// rectangles, and takes what is worth more.
func (f *filler) pack(fabric int, want []int, w, h length.Len) Group {
	bs := f.blocks(fabric, want)
	worth := make([]int64, len(bs))
	for i, b := range bs {
		for _, p := range b.parts {
			worth[i] += f.value[p.Kind]
		}
	}
	bin := rect.Fill(w+f.List.Gap, h+f.List.Gap, f.sizes(bs), worth, f.options())
	g := f.group(fabric, bs, bin)
	if f.slanted(fabric, want) && f.couldGain(fabric, want, &g, w, h) {
		if n := f.nested(fabric, want, w, h); f.worth(&n) > f.worth(&g) {
			return n
		}
	}
	return g
}

func (f *filler) key(fabric int, want []int, w, h length.Len) string {
	b := binary.AppendUvarint(nil, uint64(fabric))
	b = binary.AppendUvarint(b, uint64(w))
	b = binary.AppendUvarint(b, uint64(h))
	for _, k := range f.of[fabric] {
		b = binary.AppendUvarint(b, uint64(f.atMost(k, want[k], w, h)))
	}
	return string(b)
}

// atMost caps a count of pieces at what the area of a box allows: more of
// them would ask for the same packing.
func (j *Job) atMost(k, n int, w, h length.Len) int {
	return int(min(int64(n), square(w, h)/j.Kinds[k].area+1))
}

// worth is what a group's pieces are worth together.
func (f *filler) worth(g *Group) int64 {
	var sum int64
	for _, p := range g.Parts {
		sum += f.value[p.Kind]
	}
	return sum
}

func (j *Job) options() rect.Options { return rect.Options{Effort: rect.Quick, Stop: j.Stop} }

// sizes are blocks as the rectangle core wants them: each with the gap at its
// right and below, so that it keeps apart from the next.
func (j *Job) sizes(bs []block) []rect.Size {
	g := j.List.Gap
	out := make([]rect.Size, len(bs))
	for i, b := range bs {
		out[i] = rect.Size{W: b.w + g, H: b.h + g, Turn: b.turn, Count: b.count}
	}
	return out
}

// group takes the blocks of a bin apart into pieces.
func (j *Job) group(fabric int, bs []block, bin rect.Bin) Group {
	g := Group{Fabric: fabric}
	for _, p := range bin {
		b := &bs[p.Size]
		for _, part := range b.parts {
			if p.Turned {
				part = j.quarterTurned(part, b.w)
			}
			part.X += p.X
			part.Y += p.Y
			g.Parts = append(g.Parts, part)
		}
	}
	j.tighten(&g)
	return g
}

// quarterTurned is a part of a block w wide after the block has been turned
// by a quarter, counter-clockwise.
func (j *Job) quarterTurned(p Part, w length.Len) Part {
	pw, _ := j.size(p)
	return Part{Kind: p.Kind, Turn: (p.Turn + quarter) % (4 * quarter), X: p.Y, Y: w - p.X - pw}
}

// Fill packs as much area as it can of the pieces wanted of a fabric into one
// box of at most w x h, and of what the mat allows; a fussy piece comes by
// itself. Nothing fits where the group has no parts.
func (j *Job) Fill(fabric int, want []int, w, h length.Len) Group {
	w, h = min(w, j.W), min(h, j.H)
	if w <= 0 || h <= 0 {
		return Group{}
	}
	for _, k := range j.of[fabric] {
		if want[k] > 0 && j.Kinds[k].Fussy {
			if g := j.alone(k); g.W <= w && g.H <= h {
				return g
			}
		}
	}
	return j.filler(nil).fill(fabric, want, w, h)
}

// alone is a group of a single piece, turned if it only fits so.
func (j *Job) alone(k int) Group {
	p := &j.Kinds[k]
	g := Group{Fabric: p.Fabric, W: p.W, H: p.H, Parts: []Part{{Kind: k}}}
	if p.W > j.W || p.H > j.H {
		g.W, g.H, g.Parts[0].Turn = p.H, p.W, quarter
	}
	return g
}

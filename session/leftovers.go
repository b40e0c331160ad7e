package session

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// Leftover is fabric worth keeping that a quilt leaves: Count rectangles of
// one size, which is never larger than what is really there. It is washed
// already where the fabric was.
type Leftover struct {
	Fabric        cutlist.Fabric // its name and print; without Stock
	Width, Height length.Len     // across and along the lengthwise grain
	Count         int
}

// Leftovers are what is left of a quilt's fabric: of one that is done what
// stands on the table, of one under way what will, when its loads to come are
// cut too. Panels never cut into count. They come fabric by fabric, the
// largest first.
func (q *Quilt) Leftovers() []Leftover {
	list := q.List()
	if list == nil {
		return q.Leaves
	}
	remnants := append(q.Remains(q.Standing != Done), q.untouched()...)
	var out []Leftover
	for _, r := range remnants {
		fabric := list.Fabrics[r.Fabric]
		fabric.Stock = nil
		l := Leftover{Fabric: fabric, Width: down(r.Width, list.Unit), Height: down(r.Height, list.Unit), Count: 1}
		if !(Remnant{Width: l.Width, Height: l.Height}).Worth() {
			continue
		}
		at := slices.IndexFunc(out, func(o Leftover) bool {
			return o.Fabric.Name == l.Fabric.Name && o.Width == l.Width && o.Height == l.Height
		})
		if at >= 0 {
			out[at].Count++
		} else {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b Leftover) int {
		return cmp.Or(cmp.Compare(a.Fabric.Line, b.Fabric.Line), length.Mul(b.Width, b.Height).Cmp(length.Mul(a.Width, a.Height)))
	})
	return out
}

// untouched are the panels that nothing comes out of, as large as they are
// once washed.
func (q *Quilt) untouched() []Remnant {
	var out []Remnant
	for f, fabric := range q.List().Fabrics {
		for p, panel := range fabric.Stock {
			used := slices.ContainsFunc(q.Stock, func(u queue.PanelUse) bool { return u.Fabric == f && u.Panel == p+1 })
			if !used {
				out = append(out, Remnant{Fabric: f, Panel: p + 1,
					Width: shrunk(panel.Width, fabric.ShrinkAcross), Height: shrunk(panel.Height, fabric.ShrinkAlong)})
			}
		}
	}
	return out
}

// shrunk is a length after washing; ppm is in millionths.
func shrunk(l length.Len, ppm int64) length.Len {
	const million = 1_000_000
	return l * length.Len(million-ppm) / million // a length is at most 100 m: this stays inside int64
}

// down rounds to what can be measured off a ruler: eighths of an inch, or
// millimetres.
func down(l length.Len, u length.Unit) length.Len {
	step := length.Inch / 8
	if u != length.In {
		step = length.Millimetre
	}
	return l / step * step
}

// LeftoverText is what a quilt leaves as statements of a cut list; "" when
// nothing worth keeping is left.
func (q *Quilt) LeftoverText() string {
	left, unit := q.Leftovers(), q.Unit
	if list := q.List(); list != nil {
		unit = list.Unit
	}
	if len(left) == 0 {
		return ""
	}
	return CutListText(q.Name, unit, left)
}

// Offer are the finished quilts that leave fabric of a name that list cuts
// from, the one finished last on top: what she may have before she buys.
func (s *State) Offer(list *cutlist.List) []*Quilt {
	var out []*Quilt
	for _, q := range slices.Backward(s.Quilts) {
		if q.Standing != Done {
			continue
		}
		fits := func(l Leftover) bool { return fabricNamed(list, l.Fabric.Name) >= 0 }
		if slices.ContainsFunc(q.Leftovers(), fits) {
			out = append(out, q)
		}
	}
	return out
}

// CutListText writes leftovers as statements of a cut list, one a fabric,
// ready to be pasted into the next one. The reader reads them back as they
// are, whatever the units there.
func CutListText(quilt string, u length.Unit, left []Leftover) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# left of %s\n", quilt)
	for i, l := range left {
		if i == 0 || l.Fabric.Name != left[i-1].Fabric.Name {
			if i > 0 {
				b.WriteString(attributes(left[i-1].Fabric))
			}
			b.WriteString("fabric " + edit.Name(l.Fabric.Name))
		}
		b.WriteString(", ")
		if l.Count > 1 {
			fmt.Fprintf(&b, "%d of ", l.Count)
		}
		b.WriteString(l.Width.FormatUnit(u) + " x " + l.Height.FormatUnit(u))
	}
	if len(left) > 0 {
		b.WriteString(attributes(left[len(left)-1].Fabric))
	}
	return b.String()
}

// attributes end a fabric's statement. That it shrinks is left out: what is
// left has been washed with the rest.
func attributes(f cutlist.Fabric) string {
	text := ""
	if f.OneWay {
		text += ", one-way"
	}
	if f.Sheds {
		text += ", sheds"
	}
	if f.FaceDown {
		text += ", face down"
	}
	if f.Setting != "" {
		text += ", cutter setting " + edit.Name(f.Setting)
	}
	return text + "\n"
}

package plan

import (
	"testing"

	"example.org/matside/plan/cutting"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// (1) Every rough cut and every piece by hand is set free exactly once, at
// its own size. (2) No cut runs through something not yet free.
func TestCuttingOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := Make(drawList(t), Options{Effort: rect.Quick})
		type id struct{ fabric, panel, load, rough, line, copy int }
		boxes := map[id][4]int64{}
		for _, u := range q.Stock {
			for _, r := range u.RoughCuts {
				boxes[id{u.Fabric, u.Panel, r.Load, r.RoughCut, 0, 0}] = [4]int64{int64(r.X), int64(r.Y), int64(r.Width), int64(r.Height)}
			}
			for _, h := range u.ByHand {
				boxes[id{u.Fabric, u.Panel, 0, 0, h.Line, h.Copy}] = [4]int64{int64(h.X), int64(h.Y), int64(h.Width), int64(h.Height)}
			}
		}
		for _, s := range cutting.Order(q) {
			b := [4]int64{int64(s.Left), int64(s.Top), int64(s.Width), int64(s.Height)}
			if s.At > 0 {
				for i, w := range boxes {
					inside := w[0] >= b[0] && w[1] >= b[1] && w[0]+w[2] <= b[0]+b[2] && w[1]+w[3] <= b[1]+b[3]
					clear := w[0] >= b[0]+b[2] || w[0]+w[2] <= b[0] || w[1] >= b[1]+b[3] || w[1]+w[3] <= b[1]
					if i.fabric == s.Fabric && i.panel == s.Panel && !inside && !clear {
						t.Fatalf("%+v cuts through %v", s, w)
					}
				}
			}
			if s.Load == 0 && s.Copy == 0 {
				continue
			}
			i := id{s.Fabric, s.Panel, s.Load, s.RoughCut, s.Line, s.Copy}
			if boxes[i] != b {
				t.Fatalf("%+v should be %v", s, boxes[i])
			}
			delete(boxes, i)
		}
		if len(boxes) > 0 {
			t.Fatalf("never set free: %v", boxes)
		}
	})
}

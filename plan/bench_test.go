package plan

import (
	"fmt"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
)

// typical is a quilt of about n pieces in four fabrics, some with stock.
func typical(n int) *cutlist.List {
	l := sheet([]cutlist.Fabric{cloth("Plum"), cloth("Oat"), cloth("Fern"), cloth("Rust")})
	add := func(fabric, share int, line cutlist.Line) {
		line.Number, line.Fabric, line.Count = 10+len(l.Lines), fabric, share*n/250
		l.Lines = append(l.Lines, line)
	}
	add(0, 40, cutlist.Line{Outline: rectangle(eighths(20), eighths(20))})
	add(0, 24, cutlist.Line{Outline: rectangle(eighths(20), eighths(36))})
	add(1, 80, cutlist.Line{Outline: halfSquare(72_482_013)})
	add(2, 40, cutlist.Line{Outline: halfSquare(72_482_013)})
	add(2, 20, cutlist.Line{Outline: rectangle(eighths(36), eighths(36))})
	add(2, 16, cutlist.Line{Outline: quarterSquare(eighths(42))})
	add(3, 12, cutlist.Line{Outline: rectangle(3*in, 6*in), Grain: cutlist.Lengthwise})
	add(3, 18, cutlist.Line{Outline: rectangle(eighths(52), eighths(52))})
	return l
}

// motley is 1 000 pieces of 40 sizes in 12 fabrics.
func motley() *cutlist.List {
	var fabrics []cutlist.Fabric
	for f := range 12 {
		fabrics = append(fabrics, cloth(fmt.Sprint("Cloth ", f)))
	}
	l := sheet(fabrics)
	for s := range 40 {
		w, h := eighths(8+(s*7)%33), eighths(8+(s*11)%41)
		l.Lines = append(l.Lines, cutlist.Line{Number: 10 + s, Fabric: s % 12, Count: 25, Outline: rectangle(w, h)})
	}
	return l
}

func squares(n int, side length.Len) *cutlist.List {
	return sheet([]cutlist.Fabric{cloth("Ink")}, cutlist.Line{Count: n, Outline: rectangle(side, side)})
}

func BenchmarkMake(b *testing.B) {
	for _, c := range []struct {
		name string
		list *cutlist.List
	}{
		{"typical-250", typical(250)}, {"typical-2500", typical(2500)}, {"typical-10000", typical(10000)},
		{"squares-5000", squares(5000, eighths(20))}, {"squares-100000", squares(100000, in)}, {"motley-1000", motley()},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			loads, fewest := 0, 0
			for b.Loop() {
				q := Make(c.list, Options{})
				loads, fewest = len(q.Loads), q.Fewest.Loads
			}
			b.ReportMetric(float64(loads), "loads")
			b.ReportMetric(float64(fewest), "fewest")
		})
	}
}

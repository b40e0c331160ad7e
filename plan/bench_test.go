package plan

import "testing"

// BenchmarkMake plans each of the works of TestTable, and 100 000 pieces of
// one size, as many as a cut list may ask for.
func BenchmarkMake(b *testing.B) {
	for _, w := range append(works, work{name: "100 000 squares 1", list: small("fabric Ink\ncut from Ink\n100000 squares 1")}) {
		b.Run(w.name, func(b *testing.B) {
			l := w.list()
			b.ReportAllocs()
			loads, fewest := 0, 0
			for b.Loop() {
				q := Make(l, Options{})
				loads, fewest = len(q.Loads), q.Fewest.Loads
			}
			b.ReportMetric(float64(loads), "loads")
			b.ReportMetric(float64(fewest), "fewest")
		})
	}
}

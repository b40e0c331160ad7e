package wear

import (
	"math"
	"slices"
	"testing"
)

// This file fits Weibull's law the way it is done on graph paper: a line
// through the failures at their median ranks, those adjusted for what was cut
// short in between. matside doesn't; it is a second opinion on Fit that shares
// nothing with it, and is itself held to published figures.

// plotted are the failures' ages and adjusted ranks, in order.
func plotted(lives []Life) (ages, ranks []float64) {
	sorted := slices.Clone(lives)
	slices.SortStableFunc(sorted, func(a, b Life) int {
		if a.Age != b.Age {
			return int(math.Copysign(1, a.Age-b.Age))
		}
		if a.Failed == b.Failed {
			return 0
		} else if a.Failed {
			return -1
		}
		return 1
	})
	n, rank := float64(len(sorted)), 0.0
	for i, l := range sorted {
		if l.Failed {
			rank += (n + 1 - rank) / (1 + n - float64(i))
			ages, ranks = append(ages, l.Age), append(ranks, rank)
		}
	}
	return ages, ranks
}

// median is Benard's value for the median rank.
func median(rank, n float64) float64 { return (rank - 0.3) / (n + 0.4) }

// line is the least squares line of y on x.
func line(x, y []float64) (slope, intercept float64) {
	n := float64(len(x))
	var sx, sy, sxx, sxy float64
	for i := range x {
		sx, sy, sxx, sxy = sx+x[i], sy+y[i], sxx+x[i]*x[i], sxy+x[i]*y[i]
	}
	slope = (n*sxy - sx*sy) / (n*sxx - sx*sx)
	return slope, (sy - slope*sx) / n
}

// TestPlotNIST: NIST/SEMATECH e-Handbook 8.4.1.3, the fit by graph, from the
// page's own R code in a public copy: y of each failure, slope and intercept.
func TestPlotNIST(t *testing.T) {
	lives := fits[0].lives
	ages, ranks := plotted(lives)
	var x, y []float64
	for i, want := range []float64{.03491627, .08701138, .14197026, .20012618, .26187419, .32768741, .39813907, .47393291, .55594606, .64529116} {
		h := -math.Log(1 - median(ranks[i], 20))
		near(t, "W1 y", h, want, 5e-9)
		x, y = append(x, math.Log10(ages[i])), append(y, math.Log10(h))
	}
	slope, at := line(x, y)
	near(t, "W1 slope", slope, 1.457519, 5e-7)
	near(t, "W1 intercept", at, -4.116536, 5e-7)
	near(t, "W1 scale", math.Pow(10, -at/slope), 667.34, 5e-3) // calculated
}

// TestPlotHandbook: The New Weibull Handbook, fig. 2-5: shape 2.024 and scale
// 94.998 by regression on ranks, age on rank. The likeliest law for the same
// lives is another (calculated), and must not be mixed up with it.
func TestPlotHandbook(t *testing.T) {
	w4 := lives([]float64{30, 49, 82, 90, 96}, []float64{10, 45, 100})
	ages, ranks := plotted(w4)
	var x, y []float64
	for i, want := range []float64{1.125, 2.438, 3.750, 5.062, 6.375} {
		near(t, "W4 rank", ranks[i], want, 6e-4)
		x = append(x, math.Log(ages[i]))
		y = append(y, math.Log(-math.Log(1-median(ranks[i], 8))))
	}
	perY, at := line(y, x)
	near(t, "W4 shape", 1/perY, 2.024, 1e-3)
	near(t, "W4 scale", math.Exp(at), 94.998, 5e-2)
	w, _ := Fit(w4)
	near(t, "W4 likeliest shape", w.Shape, 3.017, 5e-4)
	near(t, "W4 likeliest scale", w.Scale, 87.96, 5e-3)
}

// TestRanks: adjusted ranks of Kececioglu, Reliability Engineering Handbook
// (1994), table 3.1, by reliawiki.com (W5: median ranks within 0.1 percent, for
// Benard's value is near them only), and of an article on the mean order
// number (W6: its first rank lies between 1 and 2; the ranks calculated).
func TestRanks(t *testing.T) {
	_, ranks := plotted(lives([]float64{5100, 15000, 40000}, []float64{9500, 22000}))
	for i, want := range []float64{12.94, 36.1, 70.84} {
		near(t, "W5 median rank", 100*median(ranks[i], 5), want, 0.1)
	}
	_, ranks = plotted(lives([]float64{2730, 3900, 5000}, []float64{2500, 4100}))
	for i, want := range []float64{1.2, 2.4, 4.2} {
		near(t, "W6 rank", ranks[i], want, 1e-9)
	}
}

// TestFitAgainstPlot: over the published lives the likeliest law and the line
// through the ranks agree as far as two estimates from a dozen lives do.
func TestFitAgainstPlot(t *testing.T) {
	for _, c := range fits {
		ages, ranks := plotted(c.lives)
		var x, y []float64
		for i := range ages {
			x = append(x, math.Log(ages[i]))
			y = append(y, math.Log(-math.Log(1-median(ranks[i], float64(len(c.lives))))))
		}
		perY, at := line(y, x)
		w, _ := Fit(c.lives)
		near(t, c.source+" shape", w.Shape*perY, 1, 0.3)
		near(t, c.source+" scale", w.Scale/math.Exp(at), 1, 0.15)
	}
}

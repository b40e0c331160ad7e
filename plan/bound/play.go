package bound

import "example.org/matside/plan/length"

// A game finds good pins: one player sticks a weight of one in all into the
// mat, the other lays one piece of each kind on it; what the pieces cover,
// each counted as often as there are of its kind, goes to the first. The value
// of the game is the bound that pins can prove, in mats.
//
// Both play by predictive regret matching, in turn (Farina, Kroer and
// Sandholm, "Faster game solving via predictive Blackwell approachability",
// AAAI 2021; from memory), which comes near the value in a few hundred rounds
// of additions and multiplications; the pins are the mean of those played,
// later ones counting more. Any pins prove something, so nothing hangs on it.
type game struct {
	*lattice
	orbits [][]int // points that look alike to the shapes
	hands  []*hand
	pins   regrets
	mean   []float64

	steps, cover, sums []float64 // scratch
}

// hand is where a shape may be laid, each place in an imprint's cell.
type hand struct {
	count float64
	even  float64 // the share of the mat that the shape covers
	views []imprint
	lay   regrets
	gets  []float64
}

// regrets are a player's: of each move, how much better it would have been.
type regrets struct {
	play   []float64 // how often each move is made, one in all
	regret []float64
}

func newRegrets(n int) regrets {
	r := regrets{make([]float64, n), make([]float64, n)}
	r.even()
	return r
}

func (r *regrets) even() {
	for i := range r.play {
		r.play[i] = 1 / float64(len(r.play))
	}
}

// learn takes in what each move would have got, times sign.
func (r *regrets) learn(gets []float64, sign float64) {
	var mean, sum float64
	for i, p := range r.play {
		mean += float64(p * gets[i])
	}
	for i, g := range gets {
		d := float64(sign * (g - mean))
		r.regret[i] = max(0, r.regret[i]+d)
		r.play[i] = max(0, r.regret[i]+d)
		sum += r.play[i]
	}
	if sum <= 0 {
		r.even()
		return
	}
	for i := range r.play {
		r.play[i] /= sum
	}
}

// coarse is into how many parts a pitch is cut while playing: more points are
// worth more than finer places.
const coarse = 1

func newGame(l *lattice, area length.Area, shapes []shape, orbits [][]int) *game {
	g := &game{lattice: l, orbits: orbits, pins: newRegrets(l.n*l.m + 1)}
	g.mean, g.cover = make([]float64, len(g.pins.play)), make([]float64, len(g.pins.play))
	g.steps, g.sums = make([]float64, l.m*(l.n+1)), make([]float64, l.m*(l.n+1))
	clear(g.pins.play)
	g.pins.play[l.n*l.m] = 1 // all spread evenly, which proves what area does
	for _, s := range shapes {
		h := &hand{count: float64(s.count), even: s.area.Float() / area.Float()}
		n := 0
		if s.count == 0 {
			continue
		}
		for _, o := range s.ways {
			for _, im := range l.imprints(o, coarse) {
				h.views = append(h.views, im)
				n += im.na * im.nb
			}
		}
		h.lay, h.gets = newRegrets(n), make([]float64, n)
		g.hands = append(g.hands, h)
	}
	return g
}

// play plays so many rounds and gives the pins.
func (g *game) play(rounds int) []float64 {
	for t := range rounds {
		g.pins.learn(g.covered(), 1)
		for i, w := range g.pins.play {
			g.mean[i] += float64(w * float64((t+1)*(t+1)))
		}
		g.layAgain()
	}
	var sum float64
	for _, w := range g.mean {
		sum += w
	}
	for i := range g.mean {
		g.mean[i] /= sum
	}
	return g.mean
}

// covered is how often each point is covered by the pieces as they are laid
// now; of points that look alike, the mean. The last is for weight spread
// evenly.
func (g *game) covered() []float64 {
	stride := g.n + 1
	steps, out := g.steps, g.cover // steps from a point to the next in its row
	clear(steps)
	clear(out)
	for _, h := range g.hands {
		at := 0
		for i := range h.views {
			v := &h.views[i]
			for b := range v.nb {
				g.spread(steps, v, b, h.lay.play[at:at+v.na], h.count)
				at += v.na
			}
		}
		out[g.n*g.m] += float64(h.count * h.even)
	}
	for j := range g.m {
		var sum float64
		for i := range g.n {
			sum += steps[j*stride+i]
			out[j*g.n+i] = sum
		}
	}
	for _, o := range g.orbits {
		var sum float64
		for _, i := range o {
			sum += out[i]
		}
		sum /= float64(len(o))
		for _, i := range o {
			out[i] = sum
		}
	}
	return out
}

// spread counts what pieces laid from a row of anchors cover.
func (g *game) spread(steps []float64, v *imprint, b int, laid []float64, count float64) {
	for _, r := range v.runs {
		at := (v.b+b+r.row)*(g.n+1) + v.a
		from, to := steps[at+r.from:][:len(laid)], steps[at+r.to+1:][:len(laid)]
		for a, x := range laid {
			if x > 0 {
				x = float64(x * count)
				from[a] += x
				to[a] -= x
			}
		}
	}
}

// layAgain has the second player learn what each place covers.
func (g *game) layAgain() {
	g.tell(g.pins.play)
	for _, h := range g.hands {
		h.lay.learn(h.gets, -1)
	}
}

// tell tells each hand what every place covers of the pins at points.
func (g *game) tell(weights []float64) {
	stride := g.n + 1
	sums := g.sums // of the weights before a point in its row
	for j := range g.m {
		for i := range g.n {
			sums[j*stride+i+1] = sums[j*stride+i] + weights[j*g.n+i]
		}
	}
	for _, h := range g.hands {
		clear(h.gets)
		at := 0
		for i := range h.views {
			v := &h.views[i]
			for b := range v.nb {
				gets := h.gets[at : at+v.na]
				for _, r := range v.runs {
					at := (v.b+b+r.row)*stride + v.a
					left, right := sums[at+r.from:][:v.na], sums[at+r.to+1:][:v.na]
					for a := range gets {
						gets[a] += right[a] - left[a]
					}
				}
				at += v.na
			}
		}
	}
}

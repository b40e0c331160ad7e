package svgpath

import (
	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
)

// curveError is how far outside a curve its corners may lie.
var curveError = real.Len(length.Millimetre / 100)

// corner is a corner of the flattened path; joint says that it lies on a curve,
// where two pieces of it meet.
type corner struct {
	at    vector
	joint bool
}

// flattener makes a closed path into corners. Where the path bulges (it turns
// the way it runs round: +1 clockwise to the eye, −1 the other way), they lie
// where touching lines meet, elsewhere on the path itself. With way 0 all lie on
// the path.
type flattener struct {
	way     int
	corners []corner
}

// mostCorners caps the corners of an outline, and so the work a file can ask
// for.
const mostCorners = 2000

// full says that there are too many corners to go on.
func (f *flattener) full() bool { return len(f.corners) > mostCorners }

func flatten(path []segment, way int) ([]corner, error) {
	f := &flattener{way: way}
	for i := 0; i < len(path) && !f.full(); i++ {
		s, before := &path[i], &path[(i+len(path)-1)%len(path)]
		f.emit(s.start(), s.kind != line || before.kind != line)
		switch s.kind {
		case cubic:
			f.cubic(s.p)
		case arc:
			f.arc(s)
		}
	}
	if f.full() {
		return nil, ErrTooLarge
	}
	return f.corners, nil
}

func (f *flattener) emit(p vector, joint bool) { f.corners = append(f.corners, corner{p, joint}) }

// arc spreads the corners of an arc evenly over its angles. Touching lines at
// two angles meet over the middle one, 1/cos(half the step) farther out, on any
// ellipse as on a circle.
func (f *flattener) arc(s *segment) {
	span := s.to.Sub(s.from)
	n := steps(span.Max(span.Neg()), longest(s.u, s.v))
	half := span.Quo(real.Int(n)).Half()
	_, cos := real.SinCos(half)
	bulges := s.u.cross(s.v).Sign()*span.Sign()*f.way > 0
	at := s.from
	for i := int64(0); i < 2*n-1 && !f.full(); i++ {
		at = at.Add(half)
		if onCurve := i%2 == 1; onCurve == bulges {
			continue
		}
		sin, c := real.SinCos(at)
		out := s.u.times(c).add(s.v.times(sin))
		if bulges {
			out = out.times(one.Quo(cos))
		}
		f.emit(s.centre.add(out), false)
	}
}

// longest is the longer half axis of the ellipse u·cos t + v·sin t: the larger
// singular value of the matrix of u and v.
func longest(u, v vector) real.Real {
	sum, area := u.dot(u).Add(v.dot(v)), u.cross(v)
	rest := sum.Mul(sum).Sub(area.Mul(area).Mul(real.Int(4))).Sqrt()
	return sum.Add(rest).Half().Sqrt()
}

// steps is in how many parts an arc must be cut to stay within curveError,
// none of them over a right angle.
func steps(span, radius real.Real) int64 {
	step := real.Pi.Half()
	if curveError.Less(radius) {
		reach := radius.Quo(radius.Add(curveError)) // cosine of half a step
		angle := real.Atan(one.Sub(reach.Mul(reach)).Sqrt().Quo(reach))
		step = step.Min(angle.Add(angle))
	}
	return int64(span.Quo(step).Add(half).Nearest()) // never too few
}

// cubic cuts a curve where it changes its bend, and flattens the parts.
func (f *flattener) cubic(p [4]vector) {
	done := zero
	for _, t := range append(bends(p), one) {
		// t of the whole is (t-done)/(1-done) of what is left.
		part := p
		if t.Less(one) {
			part, p = divide(p, t.Sub(done).Quo(one.Sub(done)))
			done = t
		}
		f.part(part)
		if t.Less(one) {
			f.emit(p[0], true)
		}
	}
}

// part flattens a curve that bends one way only.
func (f *flattener) part(p [4]vector) {
	if in, out := ends(p); in.cross(out).Sign()*f.way > 0 {
		f.touching(p, 0)
	} else {
		f.chords(p, 0)
	}
}

// deepest is how often a curve is halved at most; by then it is far below
// curveError unless it is far too large.
const deepest = 14

// touching emits where lines meet that touch the curve at its ends and, if that
// is too far out, at points between.
func (f *flattener) touching(p [4]vector, depth int) {
	in, out := ends(p)
	area := in.cross(out)
	if area.Sign()*f.way > 0 && in.dot(out).Sign() > 0 {
		apex := p[0].add(in.times(p[3].sub(p[0]).cross(out).Quo(area)))
		first, _ := divide(p, half)
		if depth == deepest || f.full() || !curveError.Less(apex.sub(first[3]).length()) {
			f.emit(apex, false)
			return
		}
	} else if depth == deepest || flat(p) || f.full() {
		return
	}
	a, b := divide(p, half)
	f.touching(a, depth+1)
	f.touching(b, depth+1)
}

// chords emits points on the curve until it is flat between them.
func (f *flattener) chords(p [4]vector, depth int) {
	if depth == deepest || flat(p) || f.full() {
		return
	}
	a, b := divide(p, half)
	f.chords(a, depth+1)
	f.emit(b[0], false)
	f.chords(b, depth+1)
}

// flat says whether a curve stays within curveError of the straight line
// between its ends: no farther than three quarters of its farther control
// point, which is what the two weigh together at most.
func flat(p [4]vector) bool {
	far := distance(p[1], p[0], p[3]).Max(distance(p[2], p[0], p[3]))
	return !curveError.Less(far.Mul(real.Int(3)).Half().Half())
}

// distance is how far p is from the segment ab.
func distance(p, a, b vector) real.Real {
	ab, ap := b.sub(a), p.sub(a)
	switch {
	case ap.dot(ab).Sign() <= 0:
		return ap.length()
	case ab.dot(b.sub(p)).Sign() <= 0:
		return b.sub(p).length()
	}
	area := ab.cross(ap)
	return area.Max(area.Neg()).Quo(ab.length())
}

// ends is the ways in which a curve sets off and arrives; control points that
// lie on an end say nothing about them.
func ends(p [4]vector) (in, out vector) {
	for i := 1; i < 4 && in.isZero(); i++ {
		in = p[i].sub(p[0])
	}
	for i := 2; i >= 0 && out.isZero(); i-- {
		out = p[3].sub(p[i])
	}
	return in, out
}

// divide is a curve cut in two at t (de Casteljau).
func divide(p [4]vector, t real.Real) (a, b [4]vector) {
	p01, p12, p23 := p[0].towards(p[1], t), p[1].towards(p[2], t), p[2].towards(p[3], t)
	p012, p123 := p01.towards(p12, t), p12.towards(p23, t)
	mid := p012.towards(p123, t)
	return [4]vector{p[0], p01, p012, mid}, [4]vector{mid, p123, p23, p[3]}
}

// bends is where between its ends a curve changes its bend, in order: where its
// first and second derivatives are parallel, a quadratic equation in t.
func bends(p [4]vector) (ts []real.Real) {
	a, b, c := p[1].sub(p[0]), p[2].sub(p[1]), p[3].sub(p[2])
	// B' ∝ a(1−t)² + 2b·t(1−t) + c·t², B” ∝ (b−a)(1−t) + (c−b)t; their cross
	// product comes to a×b·(1−t)² + a×c·t(1−t) + b×c·t².
	ab, ac, bc := a.cross(b), a.cross(c), b.cross(c)
	k2, k1, k0 := ab.Sub(ac).Add(bc), ac.Sub(ab).Sub(ab), ab
	for _, t := range roots(k2, k1, k0) {
		if zero.Less(t) && t.Less(one) {
			ts = append(ts, t)
		}
	}
	if len(ts) == 2 && ts[1].Less(ts[0]) {
		ts[0], ts[1] = ts[1], ts[0]
	}
	return ts
}

// roots is the real solutions of a·t² + b·t + c = 0.
func roots(a, b, c real.Real) []real.Real {
	if a.Sign() == 0 {
		if b.Sign() == 0 {
			return nil
		}
		return []real.Real{c.Quo(b).Neg()}
	}
	square := b.Mul(b).Sub(a.Mul(c).Mul(real.Int(4)))
	if square.Sign() < 0 {
		return nil
	}
	root, twice := square.Sqrt(), a.Add(a)
	return []real.Real{root.Sub(b).Quo(twice), root.Add(b).Neg().Quo(twice)}
}

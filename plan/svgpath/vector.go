package svgpath

import "example.org/matside/plan/internal/real"

// vector is a point, or a way from one to another; y runs down.
type vector struct{ x, y real.Real }

func (p vector) add(q vector) vector                  { return vector{p.x.Add(q.x), p.y.Add(q.y)} }
func (p vector) sub(q vector) vector                  { return vector{p.x.Sub(q.x), p.y.Sub(q.y)} }
func (p vector) times(k real.Real) vector             { return vector{p.x.Mul(k), p.y.Mul(k)} }
func (p vector) dot(q vector) real.Real               { return p.x.Mul(q.x).Add(p.y.Mul(q.y)) }
func (p vector) cross(q vector) real.Real             { return p.x.Mul(q.y).Sub(p.y.Mul(q.x)) }
func (p vector) length() real.Real                    { return p.x.Hypot(p.y) }
func (p vector) isZero() bool                         { return p.x.Sign() == 0 && p.y.Sign() == 0 }
func (p vector) middle(q vector) vector               { return p.add(q).times(half) }
func (p vector) towards(q vector, t real.Real) vector { return p.add(q.sub(p).times(t)) }

var (
	zero = real.Int(0)
	one  = real.Int(1)
	two  = real.Int(2)
	half = one.Half()
)

// matrix takes a point x, y to u·x + v·y + w.
type matrix struct{ u, v, w vector }

var unmoved = matrix{u: vector{one, zero}, v: vector{zero, one}}

// way is what m makes of a way, which has no place.
func (m matrix) way(p vector) vector { return m.u.times(p.x).add(m.v.times(p.y)) }

// point is what m makes of a point.
func (m matrix) point(p vector) vector { return m.way(p).add(m.w) }

// after is n first and then m.
func (m matrix) after(n matrix) matrix { return matrix{m.way(n.u), m.way(n.v), m.point(n.w)} }

func shift(x, y real.Real) matrix {
	m := unmoved
	m.w = vector{x, y}
	return m
}

func stretch(x, y real.Real) matrix { return matrix{u: vector{x, zero}, v: vector{zero, y}} }

func turn(degrees real.Real) matrix {
	sin, cos := real.SinCos(real.Degrees(degrees))
	return matrix{u: vector{cos, sin}, v: vector{sin.Neg(), cos}}
}

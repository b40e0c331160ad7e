package outline

import "example.org/matside/plan/length"

// small bounds the coordinate differences whose products, and the difference
// of two of them, fit int64: 1.07 m, so every pair of points on one mat.
const small = length.Len(1) << 30

// Orient says on which side of the line from a to b the point c lies: +1 on
// the inner side of an outline's edge from a to b (to the right of one who
// walks it, seen on the mat), -1 on the outer, 0 on the line. Exact for points
// up to MaxLen from the origin.
//
// (1) Orient(b, a, c) = −Orient(a, b, c). (2) Orient(b, c, a) = Orient(a, b, c).
func Orient(a, b, c Point) int {
	return Cross(b.Sub(a), c.Sub(a))
}

// Cross is the sign of the cross product u × v: +1 where v points to the right
// of u as seen on the mat, 0 where they are parallel.
func Cross(u, v Point) int {
	if isSmall(u) && isSmall(v) {
		return sign(u.X*v.Y - u.Y*v.X)
	}
	return length.Product(u.X, v.Y).Sub(length.Product(u.Y, v.X)).Sign()
}

// dot is the sign of the scalar product u · v: +1 where they point the same
// way, more or less.
func dot(u, v Point) int {
	if isSmall(u) && isSmall(v) {
		return sign(u.X*v.X + u.Y*v.Y)
	}
	return length.Product(u.X, v.X).Add(length.Product(u.Y, v.Y)).Sign()
}

func isSmall(p Point) bool {
	return -small < p.X && p.X < small && -small < p.Y && p.Y < small
}

func sign(n length.Len) int {
	switch {
	case n < 0:
		return -1
	case n == 0:
		return 0
	}
	return 1
}

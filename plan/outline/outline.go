package outline

import "example.org/matside/plan/length"

// Point is a place on the mat or in a piece's own frame: x runs right, y runs
// down, as on the mat seen from above. The lengthwise grain runs along y.
type Point struct{ X, Y length.Len }

// Outline is a simple polygon as seen from the right side of the fabric (or,
// placed, as seen on the mat). Corners run so that the shoelace sum
// Σ(x_i·y_{i+1} − x_{i+1}·y_i) is positive, which is clockwise to the eye since
// y runs down. A piece's own outline has its bounding box at 0,0.
type Outline []Point

package paper

import (
	"math"

	"codeberg.org/go-pdf/fpdf"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// place maps a plan's coordinates onto the paper.
type place struct {
	left, top float64 // of 0,0
	scale     float64 // of the drawing: 1 is true size
}

// mm is a length in millimetres: a nanometre is no matter on paper.
func mm(l length.Len) float64 { return float64(l) / float64(length.Millimetre) }

func (m place) x(l length.Len) float64   { return m.left + m.scale*mm(l) }
func (m place) y(l length.Len) float64   { return m.top + m.scale*mm(l) }
func (m place) len(l length.Len) float64 { return m.scale * mm(l) }

func (m place) polygon(o outline.Outline) []fpdf.PointType {
	points := make([]fpdf.PointType, len(o))
	for i, c := range o {
		points[i] = fpdf.PointType{X: m.x(c.X), Y: m.y(c.Y)}
	}
	return points
}

// pattern is how a fabric is hatched: lines in directions, in degrees.
type pattern struct {
	angles []float64
	dots   bool
}

// patterns of the fabrics, one after another; after the last they begin again,
// closer set.
var patterns = []pattern{
	{}, {angles: []float64{45}}, {dots: true}, {angles: []float64{0}}, {angles: []float64{135}},
	{angles: []float64{90}}, {angles: []float64{45, 135}}, {angles: []float64{0, 90}},
}

// fill hatches a polygon with a fabric's pattern. Lines lie on the same raster
// all over the page, so that pieces side by side look like one cloth.
func (p *page) fill(points []fpdf.PointType, fabric int) {
	pat := patterns[fabric%len(patterns)]
	step := max(3.2/float64(1+fabric/len(patterns)), 0.8)
	if len(pat.angles) == 0 && !pat.dots {
		return
	}
	x0, y0, x1, y1 := bounds(points)
	p.pdf.ClipPolygon(points, false)
	p.pdf.SetDrawColor(110, 110, 110)
	p.pdf.SetLineWidth(0.2)
	for _, a := range pat.angles {
		p.hatch(x0, y0, x1, y1, a*math.Pi/180, step)
	}
	if pat.dots {
		p.dots(x0, y0, x1, y1, step)
	}
	p.pdf.ClipEnd()
	p.pdf.SetDrawColor(0, 0, 0)
}

// dots draws rows of dots over a box, every second one shifted by half a step.
// A row is one broken line whose dashes have no length but round ends.
func (p *page) dots(x0, y0, x1, y1, step float64) {
	p.pdf.SetLineCapStyle("round")
	p.line(0.7, 0, step)
	for j := math.Floor(y0 / step); j*step <= y1+1; j++ {
		shift := math.Mod(math.Abs(j), 2) * step / 2
		p.pdf.Line(math.Floor(x0/step)*step-step+shift, j*step, x1+1, j*step)
	}
	p.pdf.SetLineCapStyle("butt")
	p.line(0.2)
}

// hatch draws parallel lines over a box.
func (p *page) hatch(x0, y0, x1, y1, angle, step float64) {
	dx, dy := math.Cos(angle), math.Sin(angle)
	reach := math.Hypot(x1-x0, y1-y0)
	cx, cy := (x0+x1)/2, (y0+y1)/2
	middle := cx*dy - cy*dx // how far the middle is from the line through 0,0
	for n := math.Ceil((middle - reach/2) / step); n*step <= middle+reach/2; n++ {
		off := n*step - middle
		x, y := cx+off*dy, cy-off*dx
		p.pdf.Line(x-dx*reach/2, y-dy*reach/2, x+dx*reach/2, y+dy*reach/2)
	}
}

func bounds(points []fpdf.PointType) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = points[0].X, points[0].Y, points[0].X, points[0].Y
	for _, q := range points {
		x0, x1 = min(x0, q.X), max(x1, q.X)
		y0, y1 = min(y0, q.Y), max(y1, q.Y)
	}
	return
}

// middle is a place inside a polygon far from its edges, and how far: the best
// of a raster of places over its box, of equals the one nearest to its middle.
func middle(points []fpdf.PointType) (x, y, far float64) {
	const n = 15 // odd, so that the middle itself is one
	x0, y0, x1, y1 := bounds(points)
	least := math.Inf(1)
	for j := range n {
		for i := range n {
			px := x0 + (x1-x0)*(float64(i)+0.5)/n
			py := y0 + (y1-y0)*(float64(j)+0.5)/n
			d, off := clearance(points, px, py), math.Hypot(px-(x0+x1)/2, py-(y0+y1)/2)
			if d > far+1e-6 || d > far-1e-6 && off < least {
				x, y, far, least = px, py, d, off
			}
		}
	}
	return x, y, far
}

// clearance is how far a place inside a polygon is from its edges; outside it
// is 0.
func clearance(points []fpdf.PointType, x, y float64) float64 {
	inside, least := false, math.Inf(1)
	for i, a := range points {
		b := points[(i+1)%len(points)]
		if (a.Y > y) != (b.Y > y) && x < a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
		dx, dy := b.X-a.X, b.Y-a.Y
		f := min(max(((x-a.X)*dx+(y-a.Y)*dy)/(dx*dx+dy*dy), 0), 1)
		least = min(least, math.Hypot(x-a.X-f*dx, y-a.Y-f*dy))
	}
	if !inside {
		return 0
	}
	return least
}

// letter writes a short text in the middle of a polygon on white, as large as
// there is room for.
func (p *page) letter(points []fpdf.PointType, s string) {
	x, y, far := middle(points)
	// The text's own box must stay inside the circle that touches the edges.
	for size := p.body + 6; size >= 4; size-- {
		p.font("B", size)
		w, h := p.pdf.GetStringWidth(s), 0.75*size*pt
		if math.Hypot(w, h)/2 > 0.95*far && size > 4 {
			continue
		}
		p.pdf.SetFillColor(255, 255, 255)
		p.pdf.Circle(x, y, min(math.Hypot(w, h)/2+0.4, 0.97*far), "F")
		p.put(x-w/2, y+h/2, s)
		return
	}
}

// line sets the width of lines, and whether they are broken.
func (p *page) line(width float64, dashes ...float64) {
	if dashes == nil {
		dashes = []float64{}
	}
	p.pdf.SetLineWidth(width)
	p.pdf.SetDashPattern(dashes, 0)
}

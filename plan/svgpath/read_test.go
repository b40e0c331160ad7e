package svgpath

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// inches wraps elements in a drawing of 4 by 4 in, 100 units to the inch.
func inches(elements string) []byte {
	return []byte(`<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="4in" height="4in" viewBox="0 0 400 400">` + elements + `</svg>`)
}

func mustRead(t *testing.T, svg []byte) outline.Outline {
	t.Helper()
	o, err := Read(svg)
	if err != nil {
		t.Fatalf("%s: %v", svg, err)
	}
	return o
}

const in = length.Inch

// One square, two inches wide, in all the ways a program may write it.
func TestSquares(t *testing.T) {
	want := outline.Rect(0, 0, 2*in, 2*in)
	for _, e := range []string{
		`<path d="M100 100 H300 V300 H100 Z"/>`,
		`<path d="m100,100h200v200h-200z"/>`,
		`<path d="M 100 100 300 100 300 300 100 300z"/>`,
		`<path d="m1e2 100 200 0 0 200-200 0z m 5 5"/>`,
		`<path d="M100 100L100 300 300 300 300 100 100 100"/>`,       // the other way round, closed by its end
		`<path d="M100 100L200 100 300 100 300 300 100 300zm9,9z"/>`, // a corner on a side, and a stroke without length
		`<polygon points="100,100 300,100 300,300 100,300"/>`,
		`<rect x="100" y="100" width="200" height="200"/>`,
		`<g transform="translate(50) scale(2)"><path transform="rotate(90 5 5)" d="M10 10h100v-100h-100z"/></g>`,
		`<path transform="matrix(0 2 -2 0 7 7)" d="M0 0h100v100h-100z"/>`,
		`<path transform="rotate(-450)" d="M0 0h200v200h-200z"/>`,
		`<defs><path d="M0 0h1v1z"/></defs><path d="M0 0h200v200h-200z"/><path style="display: none" d="M0 0h1v1z"/>`,
		`<path d="M0 0h200v200h-200z"/><path d="M0 0h200"/>`, // a stroke that isn't closed is no outline
	} {
		if o := mustRead(t, inches(e)); !outline.Same(o, want) {
			t.Errorf("%s: %v", e, o)
		}
	}
}

func TestSizes(t *testing.T) {
	cases := []struct {
		attributes string
		side       length.Len // of a square of 96 units
	}{
		{`width="10in" height="10in" viewBox="0 0 960 960"`, in},
		{`width="254mm" height="254mm" viewBox="0 0 960 960"`, in},
		{`width="25.4 cm" viewBox="-5 -5 960 1"`, in},
		{`height="720pt" viewBox="0,0,960,960"`, in},
		{`width="60pc" height="9999pc" viewBox="0 0 960 960"`, in}, // the smaller scale: all of it is seen
		{`width="10in" height="10in"`, in},                         // 96 to the inch
	}
	for _, c := range cases {
		o := mustRead(t, []byte(`<svg `+c.attributes+`><path d="M0 0h96v96h-96z"/></svg>`))
		if !outline.Same(o, outline.Rect(0, 0, c.side, c.side)) {
			t.Errorf("%s: %v", c.attributes, o)
		}
	}
}

func TestMistakes(t *testing.T) {
	cases := []struct {
		svg  string
		want error
	}{
		{``, ErrNotSVG},
		{`quilt`, ErrNotSVG},
		{`<html></html>`, ErrNotSVG},
		{`<svg viewBox="0 0 1 1"><path d="M0 0h1v1z"/></svg>`, ErrNoSize},
		{`<svg width="100" height="100"><path d="M0 0h1v1z"/></svg>`, ErrNoSize},
		{`<svg width="100%" height="50%"><path d="M0 0h1v1z"/></svg>`, ErrNoSize},
		{string(inches(``)), ErrNoPath},
		{string(inches(`<rect width="100" height="0"/>`)), ErrNoPath},
		{string(inches(`<rect width="100" height="100" rx="-3"/>`)), ErrNoPath},
		{string(inches(`<circle r="-3"/>`)), ErrNoPath},
		{string(inches(`<ellipse rx="3" ry="0"/>`)), ErrNoPath},
		{string(inches(`<path d="M0 0h100v100"/>`)), ErrOpen},
		{string(inches(`<path d="M0 0h100v100z"/><circle r="5"/>`)), ErrMany},
		{string(inches(`<path d="M0 0h100v100z M10 10h10v10z"/>`)), ErrMany},
		{string(inches(`<path d="M0 0h100v100zl-100 0 0-50z"/>`)), ErrMany},
		{string(inches(`<path d="h100v100z"/>`)), ErrPath},
		{string(inches(`<path d="M0 0h100v1e"/>`)), ErrPath},
		{string(inches(`<path d="M0 0 100"/>`)), ErrPath},
		{string(inches(`<path d="M0 0a5 5 0 2 0 5 5z"/>`)), ErrPath},
		{string(inches(`<path d="M0 0h1v1z 5"/>`)), ErrPath},
		{string(inches(`<path d="M0 0h1e99v1z"/>`)), ErrPath},
		{string(inches(`<path transform="turn(5)" d="M0 0h1v1z"/>`)), ErrTransform},
		{string(inches(`<path transform="scale(1e8)" d="M0 0h1e5v1z"/>`)), ErrTooLarge},
		{string(inches(`<path d="M0 0h100v100h-50v-200z"/>`)), outline.ErrCrosses},
		{string(inches(`<path d="M0 0h100h-50v50z"/>`)), outline.ErrDoublesBack},
	}
	for _, c := range cases {
		if _, err := Read([]byte(c.svg)); !errors.Is(err, c.want) {
			t.Errorf("%s: error %v, want %v", c.svg, err, c.want)
		}
	}
}

// Circles of 1 in radius, however they are written, are within 0.01 mm outside
// the true one, corners and sides alike, and exactly 2 in wide and high.
func TestCircles(t *testing.T) {
	const k = 55.22847498307936 // a quarter circle as a cubic curve is 0.03 % too far out at most
	for name, c := range map[string]struct {
		svg        string
		inner, out float64 // mm
	}{
		"circle":             {`<circle cx="200" cy="200" r="100"/>`, 0, 0.01},
		"ellipse":            {`<ellipse cx="20" cy="20" rx="50" ry="100" transform="scale(2 1)"/>`, 0, 0.01},
		"two arcs":           {`<path d="M100 200a100 100 0 0 1 200 0a100 100 0 0 1-200 0z"/>`, 0, 0.01},
		"two arcs backwards": {`<path d="M100 200a100 100 0 1 0 200 0a100 100 0 1 0-200 0z"/>`, 0, 0.01},
		"an arc too small":   {`<path d="M100 200A1 1 0 0 1 300 200A9 9 0 01100 200z"/>`, 0, 0.01},
		"turned arcs":        {`<path d="M100 200A100 100 33 01300 200A100 100-77 01 100 200z"/>`, 0, 0.01},
		"rounded square":     {`<rect width="200" height="200" rx="150"/>`, 0, 0.01},
		"cubic curves": {fmt.Sprintf(`<path d="M200 100c%[1]v 0 100 %[2]v 100 100s-%[2]v 100-100 100s-100-%[2]v-100-100s%[2]v-100 100-100z"/>`,
			k, 100-k), 0, 0.01 + 25.4*0.000273},
	} {
		o := mustRead(t, inches(c.svg))
		checkCircle(t, name, o, c.inner, c.out)
	}
}

func checkCircle(t *testing.T, name string, o outline.Outline, inner, outer float64) {
	t.Helper()
	const radius = 25.4e6
	b := o.Bounds()
	if w, h := b.Width(), b.Height(); w != 2*in || h != 2*in {
		t.Errorf("%s: %v x %v", name, w, h)
	}
	if !o.Convex() {
		t.Errorf("%s: not convex", name)
	}
	for i, p := range o {
		q := o[(i+1)%len(o)]
		px, py, qx, qy := float64(p.X)-radius, float64(p.Y)-radius, float64(q.X)-radius, float64(q.Y)-radius
		far := math.Hypot(px, py) - radius
		near := math.Abs(px*qy-py*qx)/math.Hypot(qx-px, qy-py) - radius
		// Two nanometres for rounding.
		if near < -inner*1e6-2 || far > outer*1e6+2 {
			t.Errorf("%s: side %d is %.1f nm out, its corner %.1f nm", name, i, near, far)
		}
	}
	if len(o) > 128 {
		t.Errorf("%s: %d corners", name, len(o))
	}
}

// A leaf bitten into: on the hollow side the corners lie on the curve, so that
// nothing of the shape is lost.
func TestHollow(t *testing.T) {
	o := mustRead(t, inches(`<path d="M0 0h200v200h-200a100 100 0 0 0 0-200z"/>`)) // half a disc missing on the left
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if p.X == 2*in || q.X == 2*in {
			continue
		}
		px, py, qx, qy := float64(p.X), float64(p.Y)-25.4e6, float64(q.X), float64(q.Y)-25.4e6
		mid := math.Hypot((px+qx)/2, (py+qy)/2) - 25.4e6
		if far := math.Hypot(px, py) - 25.4e6; math.Abs(far) > 2 || mid > 2 || mid < -10_002 {
			t.Errorf("corner %d is %.1f nm off the bite, the middle of its side %.1f nm", i, far, mid)
		}
	}
}

// An S-shaped side changes its bend halfway; quadratic curves and their smooth
// successors are parabolas.
func TestCurves(t *testing.T) {
	s := mustRead(t, inches(`<path d="M0 100c100-200 100 200 200 0v200h-200z"/>`))
	q := mustRead(t, inches(`<path d="M0 100q50-100 100 0t100 0v200h-200z"/>`))
	for _, o := range []outline.Outline{s, q} {
		if !o.Simple() || o.Convex() || len(o) < 20 || len(o) > 130 {
			t.Errorf("%d corners, simple %v, convex %v", len(o), o.Simple(), o.Convex())
		}
	}
	// Area: the S takes away what it adds, but for what lies outside the curve.
	plain := length.Mul(2*in, 2*in)
	for _, o := range []outline.Outline{s, q} {
		if a := o.Area(); a.Less(plain) || plain.Add(length.Mul(3*in, length.Millimetre/100)).Less(a) {
			t.Errorf("area %v, plain %v", a, plain)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, e := range []string{
		`<path d="M100 100c1 2 3 4 5 6s7 8 9 10q1 2 3 4t5 6a7 8 9 0 1 2 3z"/>`,
		`<path transform="rotate(30 5 6)skewX(9)" d="M0 0h5v5zm1 1z"/>`,
		`<polygon points="1,1 2,2 3,1"/><rect width="9" height="9" rx="3"/><ellipse rx="5" ry="9"/>`,
	} {
		f.Add(inches(e))
	}
	f.Fuzz(func(t *testing.T, svg []byte) {
		o, err := Read(svg)
		if err != nil {
			return
		}
		b := o.Bounds()
		if !o.Simple() || b.Min != (outline.Point{}) || o.TwiceArea().IsZero() {
			t.Errorf("%q: %v", svg, o)
		}
	})
}

// Package svgpath reads an outline from an SVG file: its one closed path, at
// the physical size the file gives itself.
//
// It understands what drawing programs write for one shape: path (all of its
// commands), polygon, rect, circle and ellipse, inside groups with transforms,
// with a viewBox and a width and height in inches, centimetres, millimetres,
// points or picas. Path data and elliptical arcs follow Scalable Vector Graphics
// (SVG) 2, W3C, chapter 9 and appendix B.2. Curves become corners on the outer
// side of the shape, at most 0.01 mm out: where the shape bulges, between
// touching lines, where it is hollow, on the curve itself.
//
// It reads no style sheets, references (use), text, strokes or pictures, and
// opens no other file. Any bytes may be handed in. The same file gives the
// same outline on every machine.
package svgpath

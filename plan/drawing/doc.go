// Package drawing draws a mat load for a cutter: as SVG 1.1 at true size in
// millimetres, and as DXF R12.
//
// It promises plain straight cuts in absolute coordinates, one group (SVG) or
// layer (DXF) for each fabric; each cut line once, straight runs joined
// (plan/blade), or a closed outline round every piece instead; inside a rough
// cut the cuts between two pieces before those along its waste, so that the
// fabric is held as long as can be; and the same bytes for the same load. No
// length is rounded: six places of a millimetre are whole nanometres.
//
// It does not promise anything about what a cutter makes of it, and R12 has no
// word for its unit: a comment in the file says millimetres. SVG is the W3C's
// recommendation of 2011, DXF R12 the format as its maker published it in 1992.
package drawing

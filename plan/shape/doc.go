// Package shape turns a shape's name and size into the outline to cut.
//
// One law makes them all: a figure of straight sides and arcs is drawn from the
// SIZE, grown by the seam on every side where the size is finished, drawn anew
// from rounded-up numbers where the rulers are to be read in eighths, and its
// sharp tips are cut back where asked. Only then is it rounded, once: corners
// to the nearest nanometre, arcs to corners on their outer side, at most 0.01 mm
// out and never in. All of it is the same on every machine (plan/internal/real).
//
// The shapes, their SIZE and how they lie are common practice of the trade, no
// source; the published allowances that the tests compare with are named there.
// The package knows no grain, no fabric and no words of a cut list.
package shape

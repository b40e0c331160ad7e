// Package outline is the geometry of pieces: simple polygons with corners at
// whole nanometres, turned, mirrored, moved and compared.
//
// Every question that has a yes or no — on which side, do they overlap, are
// they far enough apart, is it simple — is answered exactly, in 64 bits where
// that is enough and 128 or 256 where it is not. Boundaries are in the names:
// Overlaps shares area, so outlines that meet along an edge don't; Contains and
// Inside count the edge. Answers assume simple polygons that run clockwise to
// the eye and lie within 2·MaxLen of the origin; Tidy makes them, Simple checks.
//
// Convex outlines are compared by separating lines along their edges found with
// rotating calipers (Shamos 1978; Toussaint 1983), others by their convex Parts.
// The package promises no speed for outlines of thousands of inward corners.
package outline

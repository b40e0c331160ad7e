// Package wear says when a thing that wears out is best renewed: a mat that
// holds worse with every load, a blade that dulls with every metre.
//
// A life ends by a failure (the fabric lifted, the edge was ragged) or is cut
// short before one (the mat was washed in time): right-censored, in the terms
// of the field. Lives follow Weibull's law, fitted by maximum likelihood
// (Newton's method on the shape, as in Meeker and Escobar, Statistical Methods
// for Reliability Data, from memory), with a few imagined lives standing for
// what is known before the first. When to renew is the age replacement policy
// of Barlow and Hunter (Optimum Preventive Maintenance Policies, Operations
// Research 8, 1960, from memory). Kaplan and Meier's estimate, with Nelson and Aalen's, is here for the
// curve of what was really seen.
//
// It promises the same answer for the same lives, and a number for any input.
// It does not promise that a mat obeys Weibull; the range it gives is wide
// while the lives are few. All is pure; floats decide nothing exact.
package wear

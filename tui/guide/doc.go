// Package guide says what there is to do at each of the five steps of a
// load: the one thing, how it is done well, what can hurt, and what going on
// means. The screens and the plain lines both read it, so that both say the
// same. A pure function of list, load, step and mat; no terminal, no log.
package guide

// Package check looks a plan over, from its cut list and nothing else, and
// names every fault it finds.
//
// It shares no code with what makes plans beyond lengths, outlines and the types
// of the cut list and the queue, so that a mistake of the planner is not made
// twice. It holds a queue to the seven rules of the plan's JSON (each piece
// once, true outlines, grain, usable part, margin, gap, rough cuts, fabric,
// straight cuts, what to buy, what is short, fewest loads, layouts, cut
// length) and finds all faults, exactly, in about n·log n steps for n pieces.
// A queue without a fault can be cut as it stands.
//
// It does not promise that a plan is a good one: neither few loads nor little
// fabric, nor that the fewest possible loads are a true bound beyond what can
// be seen from the plan itself. Any queue may be handed in, however broken.
package check

// Package queue is the plan itself, as data: the loads in the order they are
// cut, what lies on each and where, and what comes out of which panel. The
// planner writes it; the check, the reports, the drawings and the session read
// it.
//
// It promises only what its types say: lengths are whole nanometres, outlines
// lie where they are cut, y runs down from the mat's or the panel's top left
// corner, and the lengthwise grain runs along y. That a queue can be cut is
// plan/check's to say.
package queue

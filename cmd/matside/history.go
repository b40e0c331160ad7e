package main

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"example.org/matside/plan/sheet"
	"example.org/matside/session"
)

// historyOf is a table of all loads that were peeled, in the order of time.
func historyOf(s *session.State) sheet.Table {
	t := sheet.Table{Columns: []string{"peeled at", "quilt", "load", "cut again", "mat", "good pieces", "spoiled", "lifted", "ragged", "cut length (mm)"}}
	for step := range session.Steps {
		t.Columns = append(t.Columns, session.Step(step).String()+" (minutes)")
	}
	type done struct {
		quilt *session.Quilt
		load  *session.Load
	}
	var all []done
	for _, q := range s.Quilts {
		for i := range q.Loads {
			if q.Loads[i].Done {
				all = append(all, done{q, &q.Loads[i]})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b done) int { return a.load.At.Compare(b.load.At) })
	for _, d := range all {
		l := d.load
		row := []string{l.At.Format(time.RFC3339), d.quilt.Name, fmt.Sprint(l.ID), yes(l.Recut), l.Mat,
			fmt.Sprint(len(l.Pieces) - len(l.Spoiled)), fmt.Sprint(len(l.Spoiled)), yes(l.Lifted), yes(l.Ragged), l.CutLength.MM()}
		for step, work := range l.Work {
			row = append(row, worked(work, l.Broken[step]))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func yes(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// worked is a time in minutes to a tenth; nothing where the time isn't known for certain.
func worked(d time.Duration, broken bool) string {
	if broken {
		return ""
	}
	return strconv.FormatFloat(d.Minutes(), 'f', 1, 64)
}

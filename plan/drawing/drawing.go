package drawing

import (
	"fmt"
	"slices"

	"example.org/matside/plan/blade"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// Drawing is what a cutter is given for one load. Coordinates are the mat's:
// millimetres from its top left corner, y down.
type Drawing struct {
	Title         string
	Width, Height length.Len // of the mat
	Groups        []Group    // one for each fabric that is on the mat, in the order of the cut list
	Frame         []Path     // the mat's edge and the part the blade reaches; nil if left out
}

// Group is what is cut from one fabric.
type Group struct {
	Name  string // the fabric's
	Note  string // how it lies, where that matters; may be empty
	Paths []Path // in the order of cutting
}

// Path is cut in one go: straight from point to point.
type Path struct {
	Points []outline.Point
	Closed bool // and back from the last to the first
}

// Options of Of; the zero value draws each cut line once, and the frame.
type Options struct {
	Outlines bool // a closed outline round every piece; neighbours' edges are cut twice
	NoFrame  bool
}

// Of draws one load of a plan of list.
func Of(list *cutlist.List, load *queue.Load, opt Options) Drawing {
	d := Drawing{
		Title: fmt.Sprintf("%s, load %d", list.Quilt, load.Number),
		Width: list.Mat.Width, Height: list.Mat.Height,
	}
	paths := once
	if opt.Outlines {
		paths = outlines
	}
	byFabric := paths(list, load)
	for i, f := range list.Fabrics {
		if len(byFabric[i]) > 0 {
			d.Groups = append(d.Groups, Group{f.Name, note(f), byFabric[i]})
		}
	}
	if !opt.NoFrame {
		d.Frame = frame(list.Mat)
	}
	return d
}

func note(f cutlist.Fabric) string {
	if f.FaceDown {
		return "laid face down: drawn as seen from its wrong side"
	}
	return ""
}

func frame(m cutlist.Mat) []Path {
	rect := func(w, h length.Len) Path {
		return Path{outline.Rect((m.Width-w)/2, (m.Height-h)/2, w, h), true}
	}
	all := []Path{rect(m.Width, m.Height)}
	if m.UsableWidth != m.Width || m.UsableHeight != m.Height {
		all = append(all, rect(m.UsableWidth, m.UsableHeight))
	}
	return all
}

// once gives the paths of each fabric with every cut line once: rough cut by
// rough cut, in each of them by rank.
func once(list *cutlist.List, load *queue.Load) [][]Path {
	var edges []blade.Edge
	for _, p := range load.Pieces {
		edges = append(edges, blade.Edges(p.Outline, list.Lines[p.Line].Fabric, p.RoughCut)...)
	}
	sets := map[set][]blade.Run{}
	for _, r := range blade.Runs(edges) {
		s := set{r.Part, rankOf(r)}
		sets[s] = append(sets[s], r)
	}
	all := make([][]Path, len(list.Fabrics))
	for rough := range load.RoughCuts {
		f := load.RoughCuts[rough].Fabric
		for rank := range ranks {
			all[f] = append(all[f], inTurn(start(all[f]), join(sets[set{rough, rank}]))...)
		}
	}
	return all
}

// set is the runs of a rough cut that may be joined and are cut one after
// another in whatever order is quick.
type set struct{ rough, rank int }

// The ranks, in the order of cutting. What lies between two pieces is cut while
// all round it still holds together; a run that is both comes between.
const (
	between = iota
	both
	along // the waste
	ranks
)

func rankOf(r blade.Run) int {
	switch {
	case r.Inner && r.Outer:
		return both
	case r.Inner:
		return between
	}
	return along
}

// outlines gives each fabric's pieces, rough cut by rough cut.
func outlines(list *cutlist.List, load *queue.Load) [][]Path {
	byRough := make([][]Path, len(load.RoughCuts))
	for _, p := range load.Pieces {
		byRough[p.RoughCut] = append(byRough[p.RoughCut], Path{slices.Clone(p.Outline), true})
	}
	all := make([][]Path, len(list.Fabrics))
	for i, paths := range byRough {
		f := load.RoughCuts[i].Fabric
		all[f] = append(all[f], inTurn(start(all[f]), paths)...)
	}
	return all
}

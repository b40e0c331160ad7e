package guide

import (
	"example.org/matside/plan"
	"example.org/matside/tui/words"
)

// Change tells in sentences what a changed cut list comes to: pieces, then
// fabrics, then loads.
func Change(w words.Words, ch plan.Change) []string {
	var told []string
	for _, l := range ch.Lines {
		switch by := l.After - l.Before; {
		case l.Old == nil:
			told = append(told, w.NewsMore(w.Pieces(*l.New, l.After), l.Fabric, true))
		case l.New == nil:
			told = append(told, w.NewsFewer(w.Pieces(*l.Old, l.Before), l.Fabric))
		case by > 0 && l.Old.Size == l.New.Size && l.Old.Shape == l.New.Shape:
			told = append(told, w.NewsMore(w.Pieces(*l.New, by), l.Fabric, false))
		case by < 0 && l.Old.Size == l.New.Size && l.Old.Shape == l.New.Shape:
			told = append(told, w.NewsFewer(w.Pieces(*l.New, -by), l.Fabric))
		default:
			told = append(told, w.NewsOther(w.Pieces(*l.Old, l.Before), w.Pieces(*l.New, l.After), l.Fabric))
		}
	}
	for _, f := range ch.Fabrics {
		switch {
		case f.Old == nil:
			told = append(told, w.NewsFabric(f.New.Name))
		case f.New == nil:
			told = append(told, w.NewsFabricGone(f.Old.Name))
		default:
			told = append(told, w.NewsFabricOther(f.New.Name))
		}
	}
	if ch.Mat {
		told = append(told, w.NewsMat())
	}
	if len(told) == 0 {
		return []string{w.NewsNothing()}
	}
	return append(told, w.NewsLoads(ch.LoadsAfter-ch.LoadsBefore))
}

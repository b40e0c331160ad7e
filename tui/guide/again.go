package guide

import (
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/words"
)

// Again says what becomes of the pieces just spoiled: which loads bring them
// back, from which panels, and for how many no fabric is left. It is empty
// where none were.
func Again(w words.Words, q *session.Quilt) string {
	var said []string
	again := q.Again
	if len(again.Loads) > 0 {
		var loads []int
		for _, id := range again.Loads {
			loads = append(loads, q.PlaceOf(id))
		}
		var from []string
		if list := q.List(); list != nil {
			for _, s := range again.From {
				from = append(from, list.Fabrics[s.Fabric].Name+" "+w.Panel(s.Panel))
			}
		}
		said = append(said, w.ComeBack(loads, from))
	}
	if len(again.Short) > 0 {
		said = append(said, w.NoneLeftFor(len(again.Short)))
	}
	return strings.Join(said, " ")
}

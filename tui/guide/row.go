package guide

import (
	"example.org/matside/tui/form"
	"example.org/matside/tui/words"
)

// Row is what a row of a cut list's sheet says.
func Row(w words.Words, r form.Row) string {
	switch r.Kind {
	case form.AddQuilt:
		return w.RowAddQuilt()
	case form.AddFabric:
		return w.RowAddFabric()
	case form.AddPiece:
		return w.RowAddPiece(r.Fabric)
	case form.AddSetting:
		return w.RowAddSetting()
	case form.Finish:
		return w.RowFinish()
	}
	return r.Says
}

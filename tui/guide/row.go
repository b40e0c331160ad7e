package guide

import (
	"strings"

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

// NotOff says why a row can't be taken off the list, or "".
func NotOff(w words.Words, f form.Form, row form.Row) string {
	switch {
	case f.Parked(row):
		return ""
	case row.Kind != form.Statement:
		return w.NotALine()
	case !row.Deep && row.Fabric != "" && f.Used(row.Fabric) && strings.HasPrefix(strings.ToLower(row.Says), "fabric"):
		return w.FabricIsUsed(row.Fabric)
	}
	return ""
}

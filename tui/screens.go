package tui

import (
	"slices"
	"strconv"
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
)

// whichMat asks which of several mats was washed.
type whichMat struct{}

func (s whichMat) bindings(v view) []binding {
	all := []binding{}
	for i, m := range v.state.MatsThere() {
		if i == 9 {
			break
		}
		key := strconv.Itoa(i + 1)
		all = append(all, binding{name: "mat " + key, keys: []string{key}, key: key, says: v.words.MatLine(m.Name, m.Since),
			refused: v.unwashable(m.Name), do: func() action { return save{session.Wash{Mat: m.Name}} }})
	}
	return append(all, v.backTo(v.home()), v.helpKey(s), v.leaveKey(), v.sleepKey())
}

func (whichMat) title(v view) string   { return v.words.WhichWash() }
func (whichMat) caution(v view) string { return "" }
func (s whichMat) body(v view, c *canvas.Canvas) {
	lines := []line{{v.words.WhichWash(), strong}, {}}
	for _, b := range s.bindings(v) {
		if len(b.keys) == 1 && b.keys[0] >= "1" && b.keys[0] <= "9" {
			lines = append(lines, line{b.key + "   " + b.says, accent})
		}
	}
	lines = append(lines, line{}, line{v.words.WashHow(), text})
	v.middle(c, nil, lines)
}

// wetMat asks what to do about a mat that is still drying.
type wetMat struct{ wet session.WetMat }

func (s wetMat) bindings(v view) []binding {
	on := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.DryNow(),
		do: func() action { return save{session.GoOn{Anyway: true}} }}
	all := []binding{on}
	if s.wet.Other != "" {
		all = append(all, binding{name: "other", keys: []string{"o"}, key: "o", says: v.words.UseOther(s.wet.Other),
			do: func() action { return save{session.UseMat{Mat: s.wet.Other}} }})
	}
	return append(all, v.backTo(v.home()), v.helpKey(s), v.leaveKey(), v.sleepKey())
}

func (s wetMat) title(v view) string { return "" }
func (wetMat) caution(v view) string { return "" }
func (s wetMat) body(v view, c *canvas.Canvas) {
	v.middle(c, []string{v.words.LargeWet()}, []line{
		{v.words.StillDrying(s.wet.Mat, v.words.Clock(s.wet.Until)), strong}, {}, {v.words.WetHoldsBadly(), text},
	})
}

// help shows every key of the screen under it.
type help struct {
	under screen
	page  int
}

func (s help) bindings(v view) []binding {
	back := binding{name: "on", keys: []string{"enter", "space", "backspace", "esc", "?", "h", "ctrl+j"}, key: "Enter", says: v.words.KeyBack(),
		do: func() action { return show{s.under} }}
	more := binding{name: "page", keys: []string{"n", "down", "pgdown"}, kind: moving, do: func() action { return show{help{s.under, s.page + 1}} }}
	return []binding{back, more, v.leaveKey(), v.lookKey(), v.sleepKey()}
}

func (help) title(v view) string   { return v.words.EveryKey() }
func (help) caution(v view) string { return "" }
func (s help) body(v view, c *canvas.Canvas) {
	const gap = 2
	shown := slices.DeleteFunc(s.under.bindings(v), func(b binding) bool { return b.key == "" })
	name := func(b binding) string {
		if b.name == "on" {
			return v.words.EnterOrSpace()
		}
		return v.words.Key(b.key)
	}
	keys := 0
	for _, b := range shown {
		keys = max(keys, canvas.Width(name(b))+gap)
	}
	var lines []line
	for _, b := range shown {
		key, says := name(b), b.says
		if b.refused != "" {
			says += " (" + b.refused + ")"
		}
		for _, l := range canvas.Wrap(says, c.W-keys-gap) {
			lines = append(lines, line{key + "\t" + l, text})
			key = ""
		}
	}
	for y, l := range onePage(v, lines, s.page, c.H) {
		name, says, ok := strings.Cut(l.text, "\t")
		if !ok {
			c.Text(gap, y, l.text, l.style)
			continue
		}
		c.Text(gap, y, name, accent)
		c.Text(gap+keys, y, says, text)
	}
}

// finished says that the quilt is all cut.
type finished struct{}

func (s finished) bindings(v view) []binding {
	on := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyLeave(), do: func() action { return leave{} }}
	all := []binding{on}
	if v.quilt.Last.Seq != 0 {
		all = append(all, binding{name: "back", keys: []string{"backspace", "delete"}, key: "Backspace", says: v.words.KeyBack(),
			do: func() action { return save{session.Back{}} }})
	}
	return append(all, append(v.washKeys(), v.everywhere(s)...)...)
}

func (finished) title(v view) string   { return "" }
func (finished) caution(v view) string { return "" }
func (finished) body(v view, c *canvas.Canvas) {
	q := v.quilt
	big, title := []string{v.words.LargeAllCut()}, v.words.AllCut(q.Name)
	if !q.Finished() {
		big, title = []string{v.words.LargeShort()}, v.words.CutSoFar(q.Name)
	}
	lines := []line{
		{title, strong}, {},
		{v.words.Totals(q.Pieces.Done, q.LoadsDone()), text},
		{v.words.TotalSpoiled(q.Pieces.Spoiled), text},
	}
	if q.Pieces.Short > 0 {
		lines = append(lines, line{v.words.StillShort(q.Pieces.Short), warn}, line{v.words.MoreFabric(), text})
	}
	if n := guide.ByHand(q); n > 0 {
		lines = append(lines, line{v.words.ByHandYet(n), text})
	}
	lines = append(lines, line{}, line{v.words.ToSewing(), text})
	v.middle(c, big, lines)
}

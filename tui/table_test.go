package tui

import (
	"context"
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/testdata/cutlists"
	"example.org/matside/tui/files"
)

// table is a Desk in memory. It plans for real, quickly.
type table struct {
	files map[string]string
	kept  []byte
	where map[session.QuiltID]string
	fail  error // of the next write
	demo  *testBook
	wrote int
}

func newTable() *table {
	t := &table{files: map[string]string{}, where: map[session.QuiltID]string{}}
	for _, name := range []string{"first-nine-patch.cutlist", "gatepost-evening.cutlist"} {
		t.files["/home/ada/quilts/"+name] = string(cutlists.Read(name))
	}
	t.files["/home/ada/quilts/shopping.txt"] = "thread"
	t.files["/home/ada/quilts/older/lamp.cutlist"] = "quilt Lamp\nfabric Plum\ncut from Plum\n4 squaers 3\n"
	return t
}

func (t *table) Folder(path string, all bool) (files.Folder, error) {
	if path == "" {
		path = "/home/ada/quilts"
	}
	if path == "/home/locked" {
		return files.Folder{}, errors.New("permission denied")
	}
	f := files.Folder{Path: path}
	if path != "/" {
		f.Above = filepath.Dir(path)
	}
	dirs := map[string]bool{}
	var names []string
	for name := range t.files {
		rest, ok := strings.CutPrefix(name, strings.TrimSuffix(path, "/")+"/")
		if !ok {
			continue
		}
		if dir, _, deeper := strings.Cut(rest, "/"); deeper {
			dirs[dir] = true
		} else {
			names = append(names, rest)
		}
	}
	for dir := range dirs {
		f.Entries = append(f.Entries, files.Entry{Name: dir, Path: filepath.Join(path, dir), Dir: true})
	}
	slices.SortFunc(f.Entries, func(a, b files.Entry) int { return strings.Compare(a.Name, b.Name) })
	slices.Sort(names)
	for _, name := range names {
		if !all && filepath.Ext(name) != files.Ext {
			f.Hidden++
			continue
		}
		f.Entries = append(f.Entries, files.Entry{Name: name, Path: filepath.Join(path, name)})
	}
	return f, nil
}

func (t *table) Read(path string) (string, func(string) ([]byte, error), error) {
	text, ok := t.files[path]
	if !ok {
		return "", nil, errors.New("no such file or directory")
	}
	return text, nil, nil
}

func (t *table) Write(path, text string, was *string) error {
	if err := t.fail; err != nil {
		t.fail = nil
		return err
	}
	now, there := t.files[path]
	switch {
	case there && was == nil:
		return files.ErrThere
	case there && now != *was:
		return files.ErrChanged
	}
	t.files[path] = text
	t.wrote++
	return nil
}

func (t *table) FreeName(quilt string) string {
	path := "/home/ada/quilts/" + files.NameFor(quilt)
	for t.files[path] != "" {
		path = strings.TrimSuffix(path, files.Ext) + "-2" + files.Ext
	}
	return path
}

func (t *table) Stamp(path string) files.Stamp { return files.StampFor(t.files[path]) }

func (t *table) Plan(_ context.Context, path, text string, tell func(say.Sentence)) (*queue.Queue, error) {
	list, err := cutlist.Read(filepath.Base(path), []byte(text), nil)
	if err != nil {
		return nil, err
	}
	q, ok := plans[text]
	if !ok {
		q = plan.Make(list, plan.Options{Effort: rect.Quick, Progress: tell})
		plans[text] = q
	}
	return q, nil
}

// plans are those made so far: the same text has the same plan.
var plans = map[string]*queue.Queue{}

func (t *table) Take(ctx context.Context, book Notebook, path string, tell func(say.Sentence)) (session.QuiltID, error) {
	text := t.files[path]
	q, err := t.Plan(ctx, path, text, tell)
	if err != nil {
		return 0, err
	}
	id, _, err := book.Start(session.Start{Text: text, List: q.List, Queue: q})
	t.where[id] = path
	return id, err
}

func (t *table) FileOf(id session.QuiltID) string { return t.where[id] }

func (t *table) Demo(context.Context, func(say.Sentence)) (Opened, error) {
	text := string(cutlists.Read(cutlists.Demo))
	q, err := t.Plan(context.Background(), cutlists.Demo, text, func(say.Sentence) {})
	if err != nil {
		return Opened{}, err
	}
	t.demo = &testBook{Ledger: session.New(session.OpenOptions{})}
	id, _, err := t.demo.Start(session.Start{Text: text, List: q.List, Queue: q})
	return Opened{Book: t.demo, Quilt: id, Demo: true}, err
}

func (t *table) Unfinished() []byte     { return t.kept }
func (t *table) Keep(form []byte) error { t.kept = form; return nil }

// atTable is a desk without a quilt, with cut lists beside it.
func atTable(t failer, w, h int) (*desk, *table) {
	d := newDesk(t, w, h)
	tab := newTable()
	d.f.desk, d.f.quilt, d.f.demo, d.f.screen = tab, 0, false, first{}
	return d, tab
}

// types types text into a field, a rune at a time.
func (d *desk) types(text string) {
	for _, r := range text {
		msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if r == ' ' {
			msg.Type = tea.KeySpace
		}
		d.send(msg)
		d.after(150 * time.Millisecond)
	}
}

// does goes through keys; a word that begins with ' is typed, _ for a space.
func (d *desk) does(keys string) {
	for key := range strings.FieldsSeq(keys) {
		if text, ok := strings.CutPrefix(key, "'"); ok {
			d.types(strings.ReplaceAll(text, "_", " "))
		} else {
			d.key(key)
		}
	}
}

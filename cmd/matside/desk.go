package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui"
	"example.org/matside/tui/files"
)

// desk is the tui.Desk of this machine: its folders, its planner, and the
// folder where what is unfinished is kept.
type desk struct {
	w     world
	lists *lists
	state string // the folder for what is unfinished; "" keeps nothing

	mu         sync.Mutex
	unfinished []byte
	ends       *ends
}

// ends is what is to be closed when the program ends, the last opened first.
type ends struct {
	mu  sync.Mutex
	all []func() error
}

func (e *ends) add(end func() error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	e.all = append(e.all, end)
}

func (e *ends) close() error {
	e.mu.Lock()
	defer e.mu.Unlock()
	var err error
	for _, end := range slices.Backward(e.all) {
		err = errors.Join(err, end())
	}
	return err
}

// unfinishedName is the file of a form left unfinished.
const unfinishedName = "unfinished.json"

// newDesk is the desk beside the data file db.
func newDesk(w world, db string) *desk {
	d := &desk{w: w, state: stateFolder(w.getenv), ends: &ends{}}
	if d.state != "" {
		d.unfinished, _ = os.ReadFile(filepath.Join(d.state, unfinishedName))
	}
	d.lists = readLists(d.state, db)
	return d
}

func (d *desk) Folder(path string, all bool) (files.Folder, error) {
	if path == "" {
		path = "."
	}
	return files.List(path, all)
}

func (d *desk) Read(path string) (string, func(string) ([]byte, error), error) {
	text, err := files.Read(path)
	return text, besides(filepath.Dir(path)), err
}

func (d *desk) Write(path, text string, was *string) error { return files.Write(path, text, was) }

func (d *desk) FreeName(quilt string) string {
	folder, err := os.Getwd()
	if err != nil {
		folder = "."
	}
	return files.FreeName(folder, quilt)
}

func (d *desk) Stamp(path string) files.Stamp { return files.StampOf(path) }

// Plan plans with the usual effort. One that was stopped is an error: nobody
// waits for it.
func (d *desk) Plan(ctx context.Context, path, text string, tell func(say.Sentence)) (*queue.Queue, error) {
	list, err := cutlist.Read(printable(filepath.Base(path)), []byte(text), besides(filepath.Dir(path)))
	if err != nil {
		return nil, err
	}
	return d.plan(ctx, source{name: path, path: path, text: []byte(text), list: list}, tell)
}

func (d *desk) plan(ctx context.Context, s source, tell func(say.Sentence)) (*queue.Queue, error) {
	q := plan.Make(s.list, plan.Options{Progress: tell, Stop: func() bool { return ctx.Err() != nil }})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return q, sound(s, q)
}

func (d *desk) Take(ctx context.Context, book tui.Notebook, path string, tell func(say.Sentence)) (session.QuiltID, error) {
	s, err := readSource(d.w, path)
	if err != nil {
		return 0, err
	}
	state := book.State()
	q := sessionOf(&state, s)
	if q == nil {
		return d.start(ctx, book, s, tell)
	}
	d.lists.set(q.ID, s.path)
	if q.Standing == session.Aside {
		if _, err := book.Do(q.ID, session.TakeUp{}); err != nil {
			return 0, err
		}
	}
	if q.Text() == string(s.text) {
		return q.ID, nil
	}
	_, err = book.Do(q.ID, session.Replan{Text: string(s.text), List: s.list})
	return q.ID, err
}

func (d *desk) start(ctx context.Context, book tui.Notebook, s source, tell func(say.Sentence)) (session.QuiltID, error) {
	q, err := d.plan(ctx, s, tell)
	if err != nil {
		return 0, err
	}
	if len(q.Loads) == 0 {
		return 0, nothingToCut(s.name)
	}
	id, _, err := book.Start(session.Start{Text: string(s.text), List: s.list, Queue: q})
	if err == nil {
		d.lists.set(id, s.path)
	}
	return id, err
}

func (d *desk) FileOf(id session.QuiltID) string { return d.lists.of(id) }

// Demo has a desk of its own: its quilts are none of those whose cut lists
// are known here.
func (d *desk) Demo(ctx context.Context, tell func(say.Sentence)) (tui.Opened, error) {
	folder, err := os.MkdirTemp("", "matside-demo-")
	if err != nil {
		return tui.Opened{}, noDemoRoom(err)
	}
	d.ends.add(func() error { return os.RemoveAll(folder) })
	s, err := demoSource()
	if err != nil {
		return tui.Opened{}, err
	}
	q, err := d.plan(ctx, s, tell)
	if err != nil {
		return tui.Opened{}, err
	}
	file := filepath.Join(folder, "demo.db")
	again := new(replanner)
	l, err := session.Open(file, session.OpenOptions{Probe: probe(), Planner: again.plan})
	if err != nil {
		return tui.Opened{}, err
	}
	d.ends.add(l.Close)
	id, _, err := l.Start(session.Start{Text: string(s.text), List: s.list, Queue: q})
	if err != nil {
		return tui.Opened{}, err
	}
	_, err = l.Do(id, session.SitDown{})
	own := &desk{w: d.w, lists: readLists("", file), state: d.state, unfinished: d.Unfinished(), ends: d.ends}
	return tui.Opened{Book: l, Quilt: id, Demo: true, Desk: own, Planner: again}, err
}

func (d *desk) Unfinished() []byte {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.unfinished
}

func (d *desk) Keep(form []byte) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.unfinished = form
	if d.state == "" {
		return nil
	}
	path := filepath.Join(d.state, unfinishedName)
	if form == nil {
		if err := os.Remove(path); !errors.Is(err, os.ErrNotExist) {
			return err
		}
		return nil
	}
	return keepFile(path, form)
}

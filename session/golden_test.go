package session

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestPastFormats reads a backup of every form there has been, and asks for
// the state it stood for then. -update makes the files of a new form, where
// there are none yet; those of an old one stay as that matside wrote them.
func TestPastFormats(t *testing.T) {
	const form = "testdata/format-1"
	_, err := os.Stat(form + ".backup")
	isNew := *update && os.IsNotExist(err)
	if isNew {
		path := filepath.Join(t.TempDir(), "m.db")
		lively(t, path)
		if _, err := Backup(path, form+".backup", OpenOptions{}); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(t.TempDir(), "m.db")
	s, _, err := Restore(path, form+".backup", OpenOptions{})
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	e := json.NewEncoder(&got)
	e.SetIndent("", " ")
	for _, q := range s.Quilts {
		if err := e.Encode(counted(s.Status(q.ID))); err != nil {
			t.Fatal(err)
		}
	}
	if isNew {
		if err := os.WriteFile(form+".status.json", got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(form + ".status.json")
	if err != nil || !bytes.Equal(got.Bytes(), want) {
		t.Errorf("%v; got\n%s\nwant\n%s", err, got.Bytes(), want)
	}
}

// counted is what the log alone says, without what is advised from it: that may
// grow wiser with each matside.
func counted(s Status) any {
	type mat struct {
		Name                                string
		Since, Washes, Refreshes, LoadsEver int
	}
	var mats []mat
	for _, m := range s.Mats {
		mats = append(mats, mat{m.Name, m.LoadsSinceWash, m.Washes, m.Refreshes, m.LoadsEver})
	}
	return struct {
		Quilt, Step, Mat                           string
		Load, LoadsDone, LoadsLeft                 int
		Asked, Done, Left, Waiting, Short, Spoiled int
		Mats                                       []mat
		Finished                                   bool
	}{s.Quilt, s.Step, s.Mat, s.Load, s.LoadsDone, s.LoadsLeft, s.PiecesAsked, s.PiecesDone, s.PiecesLeft, s.PiecesWaiting,
		s.PiecesShort, s.PiecesSpoiled, mats, s.Finished}
}

// lively makes a log with every kind of event in it.
func lively(t *testing.T, path string) *Ledger {
	t.Helper()
	l := openAt(t, path)
	id := startOn(t, l, 9, 3)
	do(t, l, id, GoOn{}, GoOn{}, GoOn{}, GoOn{}, GoOn{Spoiled: []int{0}, Lifted: true, Apart: true}, Wash{}, AddMat{Mat: "Two", Loads: 2}, UseMat{"Two"},
		GoOn{}, GoOn{}, GoOn{}, GoOn{}, GoOn{Spoiled: []int{1}, Ragged: true, Apart: true}, JoinRecuts{}, Skip{3}, Move{3, 0}, Back{},
		Replan{"edited", smallList(10, 3)}, Pause{}, Resume{}, Leave{}, SitDown{}, SetDue{"Two", 5}, TakeBackMat{"Two"}, Refresh{"Two"}, RenameMat{"Two", "Blue"},
		ChangeBlade{}, SetHabits{Habits{Dry: 30}}, Rename{"Lamp Room, again"}, PutAside{}, TakeUp{})
	other := startOn(t, l, 4, 0)
	do(t, l, other, GoOn{Anyway: true}, Finish{})
	third := startOn(t, l, 4, 0)
	do(t, l, third, Remove{}, RetireMat{FirstMat})
	kinds := map[kind]bool{}
	for _, e := range l.tail {
		kinds[e.Content.kind()] = true
	}
	for k := range read {
		if !kinds[k] && k != "lost" {
			t.Errorf("no event %q in it", k)
		}
	}
	return l
}

// TestFormatDocument: every kind of event is described.
func TestFormatDocument(t *testing.T) {
	b, err := os.ReadFile("FORMAT.md")
	if err != nil {
		t.Fatal(err)
	}
	for k := range read {
		if !bytes.Contains(b, []byte("`"+string(k)+"`")) {
			t.Errorf("FORMAT.md doesn't tell of %q", k)
		}
	}
}

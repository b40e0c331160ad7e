package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"example.org/matside/session/reason"
	"example.org/matside/session/store"
)

// This file looks after the data file: check, repair, backup, restore, export
// and import.

// Report is what Check and Repair say.
type Report struct {
	Events  uint64   // in the log
	Faults  []string // what isn't sound in one of the two files
	Lost    []uint64 // numbers of events that neither file has
	Left    []uint64 // events that can't follow, because of what is lost
	Kept    string   // where Repair kept the files as they were
	Cached  uint64   // the number up to which a snapshot is kept; 0: none
	Rebuilt bool     // the snapshot was made anew from the log, and is the same
}

// Sound says that all is well.
func (r *Report) Sound() bool {
	return len(r.Faults) == 0 && len(r.Lost) == 0 && len(r.Left) == 0 && (r.Cached == 0 || r.Rebuilt)
}

// Check reads all there is at path, folds the log anew and compares the result
// with the snapshot. It writes nothing. While another process has the file
// open only the log is checked.
func Check(path string, opt OpenOptions) (Report, error) {
	opt.setUp()
	found, err := store.Check(path, opt.Store)
	r := Report{Events: found.Records, Faults: found.Faults, Lost: found.Lost}
	if err != nil || len(r.Lost) > 0 {
		return r, err
	}
	events, err := readLog(path)
	if err != nil {
		return r, err
	}
	s, err := Fold(events)
	if err != nil {
		return r, err
	}
	r.Left = s.Left
	return r, r.compare(path, events)
}

// compare folds the log up to the snapshot and compares.
func (r *Report) compare(path string, events []Event) error {
	seq, kept, err := store.ReadCached(path)
	if err != nil || seq == 0 || seq > uint64(len(events)) {
		return err
	}
	r.Cached = seq
	dead, err := takenBack(events)
	if err != nil {
		return err
	}
	s := newState()
	if err := s.applyAll(events[:seq], dead); err != nil {
		return err
	}
	again, err := s.encode()
	if r.Rebuilt = bytes.Equal(again, kept); !r.Rebuilt && err == nil {
		if _, old := decodeState(kept); old != nil { // of another version: not read, so it does no harm
			r.Cached = 0
			return nil
		}
		r.Faults = append(r.Faults, "the snapshot differs from the log; it is not used, and made anew")
	}
	return err
}

func readLog(path string) ([]Event, error) {
	lines, err := store.Read(path)
	if err != nil {
		return nil, err
	}
	return decodeAll(lines)
}

func decodeAll(lines [][]byte) ([]Event, error) {
	events := make([]Event, len(lines))
	for i, line := range lines {
		e, err := Decode(line)
		if err != nil {
			return nil, newer(err)
		}
		if e.Seq != uint64(i+1) {
			return nil, fmt.Errorf("%w: event %d stands at %d", ErrCannotFollow, e.Seq, i+1)
		}
		events[i] = e
	}
	return events, nil
}

// newer puts ErrNewer into her words.
func newer(err error) error {
	if !errors.Is(err, ErrNewer) {
		return err
	}
	return &Trouble{What: reason.NewerLog.Say(), Safe: reason.NotTouched.Say(),
		Way: reason.UseThatOne.Say(), Err: err}
}

// Repair keeps every event that is sound in either file, names those that are
// lost, and keeps the damaged files beside.
func Repair(path string, opt OpenOptions) (Report, error) {
	opt.setUp()
	found, err := store.Repair(path, opt.Store, lostLine)
	r := Report{Events: found.Records, Faults: found.Faults, Lost: found.Lost, Kept: found.Kept}
	if err != nil {
		return r, err
	}
	s, err := Peek(path)
	r.Left = s.Left
	return r, err
}

// lostLine stands in the place of an event that is lost; it takes the time of
// the one before.
func lostLine(seq uint64, before []byte) []byte {
	e := Event{Seq: seq, Content: Lost{}}
	if b, err := Decode(before); err == nil {
		e.At = b.At
	}
	line, err := e.Encode()
	if err != nil {
		panic(err) // it has nothing that could fail
	}
	return line
}

// Backup writes all that is kept at path into one new file, and says how many
// events it holds. The data file may be open elsewhere.
func Backup(path, to string, opt OpenOptions) (int, error) {
	opt.setUp()
	return store.Backup(path, to, opt.Store)
}

// Restore puts a backup in the place of what is kept at path. It checks the
// backup first, to the last event, and keeps what was there in a backup of its
// own, whose name it gives. It is refused while the file is open elsewhere.
func Restore(path, from string, opt OpenOptions) (s State, kept string, err error) {
	opt.setUp()
	lines, err := store.ReadBackup(from, opt.Store)
	if err != nil {
		return s, "", err
	}
	return replace(path, lines, opt)
}

func replace(path string, lines [][]byte, opt OpenOptions) (s State, kept string, err error) {
	events, err := decodeAll(lines)
	if err == nil {
		s, err = Fold(events)
	}
	if err != nil {
		return s, "", err
	}
	kept, err = store.Replace(path, lines, opt.Store)
	return s, kept, err
}

// Exported is the documented form of `matside export --json`: Format is 1,
// Events are the log's, each as FORMAT.md describes it, numbered from 1.
type Exported struct {
	Format  int               `json:"format"`
	Program string            `json:"program,omitempty"`
	At      time.Time         `json:"exported"`
	Events  []json.RawMessage `json:"events"`
}

const exportFormat = 1

// Export writes everything as one JSON object. The file may be open elsewhere.
func Export(path string, w io.Writer, opt OpenOptions) error {
	opt.setUp()
	lines, err := store.Read(path)
	if err != nil {
		return err
	}
	x := Exported{Format: exportFormat, Program: opt.Store.Program, At: opt.Now(), Events: make([]json.RawMessage, len(lines))}
	for i, line := range lines {
		x.Events[i] = line
	}
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	return e.Encode(x)
}

// Import puts an export in the place of what is kept at path, as Restore does.
func Import(path string, r io.Reader, opt OpenOptions) (s State, kept string, err error) {
	opt.setUp()
	var x Exported
	if err := json.NewDecoder(r).Decode(&x); err != nil {
		return s, "", &Trouble{What: reason.NoExport.Say(), Safe: reason.NothingChanged.Say(),
			Way: reason.NameExport.Say(), Err: err}
	}
	if x.Format != exportFormat {
		return s, "", &Trouble{What: reason.OtherExport.Say(x.Format, exportFormat),
			Safe: reason.NothingChanged.Say(), Way: reason.UseTheWriter.Say(), Err: ErrNewer}
	}
	lines := make([][]byte, len(x.Events))
	for i, raw := range x.Events {
		var b bytes.Buffer
		if err := json.Compact(&b, raw); err != nil {
			return s, "", err
		}
		lines[i] = b.Bytes()
	}
	return replace(path, lines, opt)
}

// IsNew says that nothing is kept at path yet.
func IsNew(path string) bool {
	_, err := os.Stat(path)
	_, err2 := os.Stat(store.JournalPath(path))
	return os.IsNotExist(err) && os.IsNotExist(err2)
}

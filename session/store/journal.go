package store

import (
	"bytes"
	"fmt"
	"os"
	"strconv"
)

// The journal is one header line, `matside journal 1 ID`, and then one line
// for each record: its number, its checksum in eight hexadecimal digits, and
// the record's own line. ID is the same as the data file's.

const journalHead = "matside journal 1 "

// found is what could be read of a file: sound lines by number, in a slice
// where number n stands at n-1 and what is missing is nil.
type found struct {
	id     string
	lines  [][]byte
	faults []string // what was not sound, for her
	torn   bool     // the last journal line was never finished
	badEnd bool     // the last journal line that was finished isn't sound
	newer  bool     // a format we don't know
}

func (f *found) fault(format string, args ...any) {
	if len(f.faults) < 100 {
		f.faults = append(f.faults, fmt.Sprintf(format, args...))
	}
}

// maxSeq keeps a damaged number from asking for all the memory there is.
const maxSeq = 50_000_000

func (f *found) put(seq uint64, line []byte) {
	for uint64(len(f.lines)) < seq {
		f.lines = append(f.lines, nil)
	}
	f.lines[seq-1] = line
}

// appendJournalLine writes a record as it stands in the journal.
func appendJournalLine(b []byte, seq uint64, line []byte) []byte {
	b = strconv.AppendUint(b, seq, 10)
	b = fmt.Appendf(b, " %08x ", sum(seq, line))
	return append(append(b, line...), '\n')
}

// readJournal reads what is sound of a journal's bytes.
func readJournal(b []byte) found {
	var f found
	f.lines = make([][]byte, 0, bytes.Count(b, []byte{'\n'}))
	for n := 1; len(b) > 0; n++ {
		line, rest, whole := bytes.Cut(b, []byte{'\n'})
		b = rest
		switch {
		case !whole:
			f.torn = true
		case n == 1:
			f.readHead(line)
		default:
			f.readLine(n, line)
		}
	}
	return f
}

func (f *found) readHead(line []byte) {
	id, ok := bytes.CutPrefix(line, []byte(journalHead))
	if !ok || !properID(string(id)) {
		f.fault("the journal's first line is not sound")
		return
	}
	f.id = string(id)
}

func (f *found) readLine(n int, line []byte) {
	seq, text, ok := splitLine(line)
	f.badEnd = !ok
	if !ok {
		f.fault("line %d of the journal is not sound", n)
		return
	}
	if seq <= uint64(len(f.lines)) && f.lines[seq-1] != nil && !bytes.Equal(f.lines[seq-1], text) {
		f.fault("the journal has event %d twice", seq)
		return
	}
	f.put(seq, text)
}

// splitLine takes a journal line apart and checks it.
func splitLine(line []byte) (seq uint64, text []byte, ok bool) {
	number, rest, ok := bytes.Cut(line, []byte{' '})
	if !ok || len(number) > 9 || len(rest) < 9 || rest[8] != ' ' {
		return 0, nil, false
	}
	for _, d := range number {
		if d < '0' || d > '9' {
			return 0, nil, false
		}
		seq = 10*seq + uint64(d-'0')
	}
	if seq == 0 || seq > maxSeq {
		return 0, nil, false
	}
	check, err := strconv.ParseUint(string(rest[:8]), 16, 32)
	text = rest[9:]
	return seq, text, err == nil && uint32(check) == sum(seq, text)
}

// journalBytes is a whole journal.
func journalBytes(id string, lines [][]byte) []byte {
	b := []byte(journalHead + id + "\n")
	for i, line := range lines {
		b = appendJournalLine(b, uint64(i+1), line)
	}
	return b
}

// JournalPath is the journal's place beside a data file.
func JournalPath(path string) string { return path + ".journal" }

// readJournalFile reads the journal beside path; missing is not an error.
func readJournalFile(path string) (found, bool, error) {
	b, err := os.ReadFile(JournalPath(path))
	if os.IsNotExist(err) {
		return found{}, false, nil
	}
	if err != nil {
		return found{}, true, err
	}
	return readJournal(b), true, nil
}

package store

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
)

// The journal is one header line, `matside journal FORMAT ID SUM`, and then
// one line for each record: its number, its checksum in eight hexadecimal
// digits, and the record's own line. ID is the same as the data file's. SUM is
// the checksum of `FORMAT ID`, taken as a line of number 0. A backup is a
// journal with one line more, `end COUNT`, so that a part of one is not taken
// for the whole.

const journalHead = "matside journal "

// appendJournalLine writes a record as it stands in the journal.
func appendJournalLine(b []byte, seq uint64, line []byte) []byte {
	b = strconv.AppendUint(b, seq, 10)
	b = fmt.Appendf(b, " %08x ", sum(seq, line))
	return append(append(b, line...), '\n')
}

// readJournal reads what is sound of a journal; with keep the lines too, from
// number from on.
func readJournal(r io.Reader, keep bool, from uint64) (found, error) {
	f := found{keep: keep, from: from}
	lines := lineReader{bufio.NewReaderSize(r, 1<<18), nil}
	for n := 1; ; n++ {
		line, err := lines.next()
		switch {
		case err == io.EOF:
			f.torn = len(line) > 0
			return f, nil
		case err != nil:
			return f, err
		case n == 1:
			f.readHead(line)
		default:
			f.readLine(n, line)
		}
	}
}

// lineReader reads lines of any length, without their line breaks.
type lineReader struct {
	*bufio.Reader
	long []byte
}

// next gives the next line; its bytes are good until the one after. What
// stands after the last line break comes with io.EOF.
func (r *lineReader) next() ([]byte, error) {
	part, err := r.ReadSlice('\n')
	if err == bufio.ErrBufferFull {
		r.long = r.long[:0]
		for err == bufio.ErrBufferFull {
			r.long = append(r.long, part...)
			part, err = r.ReadSlice('\n')
		}
		part = append(r.long, part...)
		r.long = part
	}
	if err == nil {
		part = part[:len(part)-1]
	}
	return part, err
}

func (f *found) readHead(line []byte) {
	rest, ok := bytes.CutPrefix(line, []byte(journalHead))
	fields := bytes.Split(rest, []byte{' '})
	if !ok || len(fields) != 3 {
		f.fault("the journal's first line is not sound")
		return
	}
	format, id := string(fields[0]), string(fields[1])
	n, err := strconv.ParseUint(format, 10, 32)
	if err != nil || n == 0 || !properID(id) || string(fields[2]) != headSum(uint32(n), id) {
		f.fault("the journal's first line is not sound")
		return
	}
	f.id, f.format = id, uint32(n)
}

func headSum(format uint32, id string) string {
	return fmt.Sprintf("%08x", sum(0, fmt.Appendf(nil, "%d %s", format, id)))
}

func (f *found) readLine(n int, line []byte) {
	if count, ok := bytes.CutPrefix(line, []byte("end ")); ok && string(count) == fmt.Sprint(len(f.marks)) {
		f.ended = true
		return
	}
	seq, text, check, ok := splitLine(line)
	f.badEnd = !ok
	switch {
	case !ok:
		f.fault("line %d of the journal is not sound", n)
	case f.ended:
		f.fault("the journal goes on after its end")
	case f.has(seq) && f.marks[seq-1].sum != check:
		f.fault("the journal has event %d twice", seq)
	case !f.has(seq):
		f.put(seq, text, check)
	}
}

// splitLine takes a journal line apart and checks it.
func splitLine(line []byte) (seq uint64, text []byte, check uint32, ok bool) {
	number, rest, ok := bytes.Cut(line, []byte{' '})
	if !ok || len(number) == 0 || len(number) > 9 || len(rest) < 9 || rest[8] != ' ' {
		return 0, nil, 0, false
	}
	for _, d := range number {
		if d < '0' || d > '9' {
			return 0, nil, 0, false
		}
		seq = 10*seq + uint64(d-'0')
	}
	for _, d := range rest[:8] {
		switch {
		case d >= '0' && d <= '9':
			check = check<<4 | uint32(d-'0')
		case d >= 'a' && d <= 'f':
			check = check<<4 | uint32(d-'a'+10)
		default:
			return 0, nil, 0, false
		}
	}
	text = rest[9:]
	return seq, text, check, number[0] != '0' && seq <= maxSeq && check == sum(seq, text)
}

// writeJournal writes a whole journal; with end it is a backup.
func writeJournal(w io.Writer, format uint32, id string, lines [][]byte, end bool) error {
	b := bufio.NewWriterSize(w, 1<<16)
	fmt.Fprintf(b, "%s%d %s %s\n", journalHead, format, id, headSum(format, id))
	var buf []byte
	for i, line := range lines {
		buf = appendJournalLine(buf[:0], uint64(i+1), line)
		b.Write(buf)
	}
	if end {
		fmt.Fprintf(b, "end %d\n", len(lines))
	}
	return b.Flush()
}

// writeJournalFile writes one aside.
func (f Fault) writeJournalFile(path string, format uint32, id string, lines [][]byte, end bool) error {
	return f.aside(path, func(temp string) error {
		if err := f.before("write new file"); err != nil {
			return err
		}
		file, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
		if err != nil {
			return err
		}
		return errors.Join(writeJournal(file, format, id, lines, end), file.Close())
	})
}

// JournalPath is the journal's place beside a data file.
func JournalPath(path string) string { return path + ".journal" }

// readJournalFile is readJournal on a file; missing is not an error.
func readJournalFile(path string, keep bool, from uint64) (found, bool, error) {
	file, err := os.Open(path)
	if os.IsNotExist(err) {
		return found{}, false, nil
	}
	if err != nil {
		return found{}, true, err
	}
	defer file.Close()
	f, err := readJournal(file, keep, from)
	return f, true, err
}

package store

import (
	"bytes"
	"fmt"
)

// found is what could be read of a file: which numbers stand there with a
// sound line, and, when keep is set, the lines themselves.
type found struct {
	keep    bool
	from    uint64 // of the lines kept, the first that is wanted
	id      string
	format  uint32
	program string
	marks   []mark   // number n stands at n-1
	lines   [][]byte // the same, when kept
	faults  []string // what was not sound, for her
	torn    bool     // a journal whose last line was never finished
	badEnd  bool     // a journal whose last finished line isn't sound
	ended   bool     // a journal with an end line: a backup
}

// mark stands for a sound line: its checksum and its length plus one.
type mark struct{ sum, size uint32 }

func (f *found) fault(format string, args ...any) {
	if len(f.faults) < 100 {
		f.faults = append(f.faults, fmt.Sprintf(format, args...))
	}
}

// maxSeq keeps a damaged number from asking for all the memory there is.
const maxSeq = 20_000_000

// put notes a sound line, of which it keeps a copy if at all.
func (f *found) put(seq uint64, line []byte, check uint32) {
	for uint64(len(f.marks)) < seq {
		f.marks = append(f.marks, mark{})
		if f.keep {
			f.lines = append(f.lines, nil)
		}
	}
	f.marks[seq-1] = mark{check, uint32(len(line)) + 1}
	if f.keep && seq >= f.from {
		f.lines[seq-1] = bytes.Clone(line)
	}
}

func (f *found) has(seq uint64) bool {
	return seq <= uint64(len(f.marks)) && f.marks[seq-1].size > 0
}

// gap says that a number below the last is missing.
func (f *found) gap() bool {
	for _, m := range f.marks {
		if m.size == 0 {
			return true
		}
	}
	return false
}

// takeIn adds what other has and f lacks.
func (f *found) takeIn(other found) {
	f.keep = f.keep || other.keep
	if f.id == "" {
		f.id, f.program = other.id, other.program
	}
	f.format = max(f.format, other.format)
	for _, s := range other.faults {
		f.fault("%s", s)
	}
	for i, m := range other.marks {
		seq := uint64(i + 1)
		if m.size == 0 || f.has(seq) {
			continue
		}
		var line []byte
		if other.keep {
			line = other.lines[i]
		}
		f.put(seq, line, m.sum)
		f.marks[i] = m
	}
}

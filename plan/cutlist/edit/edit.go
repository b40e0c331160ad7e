package edit

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
)

// Doc is the text of a cut list, line by line. The zero value is an empty one.
type Doc struct {
	mark  string // a byte-order mark, kept in front
	lines []row
}

// row is a line and how it ends: "\n", "\r\n" or, the last one, "".
type row struct{ text, end string }

// Of is the Doc of a text.
//
// (1) Of(text).String() is text.
func Of(text string) Doc {
	var d Doc
	const mark = "\ufeff"
	if rest, ok := strings.CutPrefix(text, mark); ok {
		d.mark, text = mark, rest
	}
	for text != "" {
		line, rest, more := strings.Cut(text, "\n")
		r := row{line, ""}
		if more {
			r.end = "\n"
		}
		if more && strings.HasSuffix(line, "\r") {
			r = row{line[:len(line)-1], "\r\n"}
		}
		d.lines, text = append(d.lines, r), rest
	}
	return d
}

// String is the text.
func (d Doc) String() string {
	var b strings.Builder
	b.WriteString(d.mark)
	for _, r := range d.lines {
		b.WriteString(r.text)
		b.WriteString(r.end)
	}
	return b.String()
}

// Len is how many lines there are; line numbers count from 0 here, one less
// than in the messages of the reader.
func (d Doc) Len() int { return len(d.lines) }

// Line is line n without its end, Parts what it says, and Comment what stands
// behind that, from its # on.
func (d Doc) Line(n int) string { return d.lines[n].text }

// Parts is what line n says.
func (d Doc) Parts(n int) cutlist.Parts { return cutlist.Apart(d.lines[n].text) }

// Comment is the comment of line n, from its # on, or "".
func (d Doc) Comment(n int) string {
	return strings.TrimLeft(d.lines[n].text[d.Parts(n).To:], " \t")
}

// Set writes another statement in line n.
//
// (2) Every other line, and the indentation and comment of this one, stay as
// they are. (3) A statement that is set to what it is leaves all as it is.
func (d Doc) Set(n int, says string) Doc {
	p := d.Parts(n)
	text := d.lines[n].text
	behind := text[p.To:]
	if p.From == p.To && says != "" && strings.HasPrefix(behind, "#") {
		behind = "  " + behind
	}
	d.lines = slices.Clone(d.lines)
	d.lines[n].text = text[:p.From] + says + behind
	return d
}

// Insert puts a statement into a line of its own before line n, or at the end
// for n = Len. It ends as the lines around it do.
//
// (4) All lines there were stay as they are, but that a last one without a
// line end gets one when something comes behind it.
func (d Doc) Insert(n int, says string) Doc {
	end := "\n"
	if len(d.lines) > 0 && d.lines[0].end == "\r\n" {
		end = "\r\n"
	}
	d.lines = slices.Clone(d.lines)
	if n > 0 && d.lines[n-1].end == "" {
		d.lines[n-1].end = end
	}
	d.lines = slices.Insert(d.lines, n, row{says, end})
	return d
}

// Remove takes the statement of line n away; a comment behind it stays, in a
// line of its own.
func (d Doc) Remove(n int) Doc {
	comment := d.Comment(n)
	d.lines = slices.Clone(d.lines)
	if comment != "" {
		d.lines[n].text = comment
		return d
	}
	d.lines = slices.Delete(d.lines, n, n+1)
	return d
}

// Find is the first line that says so and has that name, or any name for "".
func (d Doc) Find(says cutlist.Says, name string) (n int, ok bool) {
	for n := range d.lines {
		if p := d.Parts(n); p.Says == says && (name == "" || p.Name == name) {
			return n, true
		}
	}
	return 0, false
}

// Rename gives a fabric another name, wherever it is called by the old one.
func (d Doc) Rename(fabric, name string) Doc {
	for n := range d.lines {
		p := d.Parts(n)
		if (p.Says == cutlist.SaysFabric || p.Says == cutlist.SaysCutFrom) && p.Name == fabric {
			p.Name = name
			d = d.Set(n, Write(p))
		}
	}
	return d
}

// AddFabric puts a fabric behind the others, or behind the quilt and its
// settings where it is the first, and says in which line it stands now.
func (d Doc) AddFabric(says string) (Doc, int) {
	at := 0
	for n := range d.lines {
		switch p := d.Parts(n); p.Says {
		case cutlist.SaysFabric:
			at = n + 1
		case cutlist.SaysQuilt, cutlist.SaysUnits, cutlist.SaysSetting:
			if _, any := d.Find(cutlist.SaysFabric, ""); !any && !d.cutsBefore(n) {
				at = n + 1
			}
		}
	}
	return d.Insert(at, says), at
}

// cutsBefore reports a cut from above line n.
func (d Doc) cutsBefore(n int) bool {
	first, ok := d.Find(cutlist.SaysCutFrom, "")
	return ok && first < n
}

// AddPiece puts a piece line behind the others cut from a fabric, or at the
// end below a cut from of its own, and says in which line it stands now.
func (d Doc) AddPiece(fabric, says string) (Doc, int) {
	at, from := -1, ""
	for n := range d.lines {
		switch p := d.Parts(n); p.Says {
		case cutlist.SaysCutFrom:
			if from = p.Name; from == fabric {
				at = n + 1
			}
		case cutlist.SaysPiece, cutlist.SaysStrips, cutlist.SaysBinding:
			if from == fabric {
				at = n + 1
			}
		}
	}
	if at < 0 {
		at = len(d.lines)
		if at > 0 && strings.TrimSpace(d.lines[at-1].text) != "" {
			d, at = d.Insert(at, ""), at+1
		}
		d, at = d.Insert(at, "cut from "+Name(fabric)), at+1
	}
	return d.Insert(at, says), at
}

// AddSetting puts a setting behind the quilt and the other settings that
// stand above the first fabric, and says in which line it stands now.
func (d Doc) AddSetting(says string) (Doc, int) {
	at := 0
	for n := range d.lines {
		p := d.Parts(n)
		if p.Says == cutlist.SaysFabric || p.Says == cutlist.SaysCutFrom {
			break
		}
		if p.Says == cutlist.SaysQuilt || p.Says == cutlist.SaysUnits || p.Says == cutlist.SaysSetting {
			at = n + 1
		}
	}
	return d.Insert(at, says), at
}

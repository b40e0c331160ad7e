package plain

import (
	"slices"
	"strconv"
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/matpic"
)

// byPlace asks which pieces are spoiled by their place on the mat: the rows
// are told with the numbers of their pieces, and each piece she types is told
// back before she ends.
func (t *talk) byPlace() error {
	_, q := t.quilt()
	load := q.InHand()
	list := q.ListOf(load)
	letters := matpic.Letters(list)
	rows := matpic.Rows(&load.Load)
	for _, says := range matpic.TellNumbered(t.words, list, &load.Load) {
		t.say(says)
	}
	flat := slices.Concat(rows...)
	t.say(t.words.PlainWhichPieces())
	t.say(t.words.PlainWhichEnd())
	var picked []int
	for {
		line, err := t.from.text(t)
		switch {
		case err != nil:
			return err
		case line == "0" || line == "" && len(picked) == 0:
			return nil
		case line == "":
			return t.goOn(session.GoOn{Spoiled: picked, Lifted: t.lifted, Ragged: t.ragged})
		}
		numbers, ok := numbersIn(line, len(flat))
		if !ok {
			t.say(t.words.FromTo(0, len(flat)))
			continue
		}
		for _, n := range numbers {
			piece := flat[n-1]
			at := slices.Index(picked, piece)
			if at >= 0 {
				picked = slices.Delete(picked, at, at+1)
			} else {
				picked = append(picked, piece)
			}
			row, place := matpic.PlaceOf(rows, piece)
			line := load.Pieces[piece].Line
			what := t.words.RowPieces(t.words.Pieces(list.Lines[line], 1), list.Fabrics[list.Lines[line].Fabric].Name, letters[line])
			t.say(t.words.PlainPiece(at >= 0, row+1, place+1, what))
		}
		slices.Sort(picked)
	}
}

// numbersIn are the numbers of a line, from 1 to most, parted by spaces or
// commas; false where anything else is in it.
func numbersIn(line string, most int) ([]int, bool) {
	var all []int
	for _, word := range strings.FieldsFunc(line, func(r rune) bool { return r == ' ' || r == ',' || r == ';' }) {
		n, err := strconv.Atoi(word)
		if err != nil || n < 1 || n > most {
			return nil, false
		}
		all = append(all, n)
	}
	return all, len(all) > 0
}

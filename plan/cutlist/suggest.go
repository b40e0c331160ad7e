package cutlist

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
)

// near is how many slips of the pen a suggestion may be away.
const near = 2

// didYouMean is a hint that names the word of the choices that lies nearest to
// what was written, or nothing when none is near. Of equally near ones the first
// stands.
func didYouMean(written string, choices []string) say.Sentence {
	if best := nearest(written, choices); best != "" {
		return mistake.DidYouMean.Say(ticked(best))
	}
	return say.Nothing
}

// write is a hint to write so.
func write(so string) say.Sentence { return mistake.Write.Say(ticked(so)) }

// mistyped reads a word that must be meant for the one that may stand here, and
// notes the mistake.
func (c *cursor) mistyped(word string) bool {
	c.skip()
	from := c.at
	written := c.word()
	if nearest(written, []string{word}) == "" {
		c.at = from
		return false
	}
	c.wrong(from, mistake.NothingHere.Say(ticked(written)), didYouMean(written, []string{word}))
	return true
}

// nearest is the choice that lies nearest to what was written, in any case, or
// "". A short word may differ in less than half of its letters.
func nearest(written string, choices []string) string {
	const longest, most = 64, 500 // so that no file makes us compare for ever
	w := []rune(strings.ToLower(written))
	best, least := "", near+1
	if len(w) > longest {
		return ""
	}
	for _, choice := range choices[:min(most, len(choices))] {
		c := []rune(strings.ToLower(choice))
		if len(c) > longest || abs(len(c)-len(w)) >= least {
			continue
		}
		if d := slips(w, c, least); d < least && 2*d < len(c)+1 {
			best, least = choice, d
		}
	}
	return best
}

// slips is how many letters must be changed, added, dropped or swapped with
// their neighbour to make a out of b: the Levenshtein distance with swaps of
// neighbours (Damerau 1964, in its restricted form). From most on, it may be
// any number that is no less.
func slips(a, b []rune, most int) int {
	var before, above []int
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		before, above, row = above, row, make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			change := above[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, above[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		if min(slices.Min(row), slices.Min(above)) >= most { // a swap looks two rows back
			return most
		}
	}
	return row[len(b)]
}

func abs(n int) int { return max(n, -n) }

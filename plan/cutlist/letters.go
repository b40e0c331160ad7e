package cutlist

// Letters gives every line a letter of its own, by which its pieces are called
// on a screen or on paper: its label where that is one letter and no earlier
// line has it, else the next one free. Lines cut by hand have one too, so that
// they are called the same everywhere. Past the 52nd the letters start again.
func (l *List) Letters() []rune {
	letters := make([]rune, len(l.Lines))
	taken := make(map[rune]bool)
	for i, line := range l.Lines {
		if r := []rune(line.Label); len(r) == 1 && isLetter(r[0]) && !taken[r[0]] {
			letters[i], taken[r[0]] = r[0], true
		}
	}
	const all = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
	at := 0
	for i := range letters {
		if letters[i] != 0 {
			continue
		}
		for n := 0; n < len(all) && taken[rune(all[at%len(all)])]; n++ {
			at++
		}
		letters[i] = rune(all[at%len(all)])
		taken[letters[i]] = true
	}
	return letters
}

func isLetter(r rune) bool { return r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' }

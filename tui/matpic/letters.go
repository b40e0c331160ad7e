package matpic

import (
	"example.org/matside/plan/cutlist"
)

// Letters gives every line of a list a letter of its own: its label where
// that is one letter and no earlier line has it, else the next one free.
// Lines cut by hand have one too, so that they are called the same
// everywhere. Past the 52nd the letters start again.
func Letters(list *cutlist.List) []rune {
	letters := make([]rune, len(list.Lines))
	taken := make(map[rune]bool)
	for i, line := range list.Lines {
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

// Pattern is the character that fabric number n shows at column x and row y
// of a piece. The patterns go round after six.
func Pattern(n, x, y int) rune {
	on := func(yes bool, r rune) rune {
		if yes {
			return r
		}
		return ' '
	}
	switch n % 6 {
	case 1:
		return on((x+2*y)%4 == 0, '·')
	case 2:
		return '░'
	case 3:
		return on((x+y)%3 == 0, '╱')
	case 4:
		return on(x%2 == 0, ':')
	case 5:
		return on(y%2 == 0, '╌')
	}
	return ' '
}

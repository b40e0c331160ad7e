package matpic

import "example.org/matside/plan/cutlist"

// Letters are the letters by which the lines of a list are called.
func Letters(list *cutlist.List) []rune { return list.Letters() }

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

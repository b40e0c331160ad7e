package main

import (
	"strings"
	"unicode"
)

// printable keeps control characters in a name from reaching the terminal.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return '\uFFFD'
	}, s)
}

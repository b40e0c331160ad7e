// Package early keeps Bubble Tea from asking the terminal for its background
// before the first picture stands.
//
// Bubble Tea v1 asks on start-up, in a package initialiser, and waits five
// seconds on a terminal that does not answer, eating what is typed
// meanwhile. lipgloss does not ask once it has been told. Go initialises
// packages in the order of their import paths as far as imports allow, and
// "example.org/…" sorts before "github.com/…"; so importing this package is
// enough. The order is a fact about Go, and early_test.go proves it on a
// terminal that answers nothing.
//
// What it tells is a guess from COLORFGBG and nothing else. It promises no
// more than that nobody asks: the looks of matside paint their own background.
package early

import (
	"os"
	"strings"

	"github.com/charmbracelet/lipgloss"
)

func init() { lipgloss.SetHasDarkBackground(Dark(os.Getenv("COLORFGBG"))) }

// Dark says whether COLORFGBG ("15;0", "0;default;15") names a dark
// background; true where it says nothing.
func Dark(colorfgbg string) bool {
	fields := strings.Split(colorfgbg, ";")
	switch fields[len(fields)-1] {
	case "7", "9", "10", "11", "12", "13", "14", "15":
		return false
	}
	return true
}

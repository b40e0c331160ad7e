package words

import (
	"fmt"
	"time"
)

// ComeBack says which loads, by their places, bring spoiled pieces again, and
// from which panels.
func (e English) ComeBack(loads []int, from []string) string {
	load := "load "
	if len(loads) > 1 {
		load = "loads "
	}
	text := "Cut again in " + load + e.And(numbers(loads))
	if len(from) > 0 {
		text += ", from " + e.And(from)
	}
	return text + "."
}

// NoneLeftFor says for how many pieces no fabric is left.
func (English) NoneLeftFor(n int) string {
	return "No fabric is left for " + count(n, "piece", "pieces") + "."
}

// SecondMat says what mats that take turns save, or would save.
func (e English) SecondMat(saves time.Duration, there bool) string {
	if there {
		return fmt.Sprintf("Mats that take turns save about %s of waiting.", e.Time(saves))
	}
	return fmt.Sprintf("A second mat would save about %s of waiting.", e.Time(saves))
}

// ComeBack is English's.
func (g German) ComeBack(loads []int, from []string) string {
	text := "Wird neu geschnitten in Ladung " + g.And(numbers(loads))
	if len(from) > 0 {
		text += ", aus " + g.And(from)
	}
	return text + "."
}

// NoneLeftFor is English's.
func (German) NoneLeftFor(n int) string { return "Für " + stueck(n) + " ist kein Stoff mehr da." }

// SecondMat is English's.
func (g German) SecondMat(saves time.Duration, there bool) string {
	if there {
		return fmt.Sprintf("Matten im Wechsel sparen etwa %s Wartezeit.", g.Time(saves))
	}
	return fmt.Sprintf("Eine zweite Matte würde etwa %s Wartezeit sparen.", g.Time(saves))
}

func numbers(all []int) []string {
	out := make([]string, len(all))
	for i, n := range all {
		out[i] = itoa(n)
	}
	return out
}

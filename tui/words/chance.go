package words

import (
	"fmt"
	"math"
	"time"
)

// TimeBetween says a range of time: "between 50 min and 1 h 20 min". Where
// both ends read the same it is "about" that.
func (e English) TimeBetween(low, high time.Duration, guess bool) string {
	text := "about " + e.Time(high)
	if from, to := e.Time(low), e.Time(high); from != to {
		text = "between " + from + " and " + to
	}
	if guess {
		text += " (a guess)"
	}
	return text
}

// OneIn says a chance as one goes by in daily life: "1 in 12".
func (English) OneIn(p float64) string {
	switch {
	case p < 0.01:
		return "under 1 in 100"
	case p < 0.36:
		return fmt.Sprintf("1 in %d", int(math.Round(1/p)))
	case p < 0.45:
		return "2 in 5"
	case p < 0.58:
		return "1 in 2"
	case p < 0.73:
		return "2 in 3"
	case p < 0.95:
		return "4 in 5"
	}
	return "nearly certain"
}

// MayLift says the chance that the next load lifts, and between what it lies
// four times in five.
func (e English) MayLift(low, mid, high float64) string {
	return "Chance that the next load lifts: " + about(e, "about ", " to ", low, mid, high)
}

// MayFray is the same for a ragged edge.
func (e English) MayFray(low, mid, high float64) string {
	return "Chance of a ragged edge in the next load: " + about(e, "about ", " to ", low, mid, high)
}

// about says a chance and between what it lies, with a language's words for
// about and to.
func about(w Words, near, between string, low, mid, high float64) string {
	from, to, text := w.OneIn(low), w.OneIn(high), w.OneIn(mid)
	if text[0] >= '0' && text[0] <= '9' {
		text = near + text
	}
	if from != to {
		text += " (" + from + between + to + ")"
	}
	return text + "."
}

// WhyGuess says why a number of loads is a guess: lifts noted, of how many it
// takes to know better.
func (English) WhyGuess(lifts, takes int) string {
	if lifts == 0 {
		return fmt.Sprintf("a guess: no lift is noted yet, and it takes %d to know your mats", takes)
	}
	return fmt.Sprintf("a guess: %s noted, and it takes %d to know your mats", count(lifts, "lift is", "lifts are"), takes)
}

// NewMatTime says that washing no longer helps.
func (English) NewMatTime() string {
	return "Time for a new mat: even freshly washed it lifts too often to be worth the wash."
}

// ChangeBladeTime says that the blade is due; the maker comes first.
func (English) ChangeBladeTime() string {
	return "Change the blade; the maker's instructions come first."
}

// ChangeBladeCare is the caution where it is changed.
func (English) ChangeBladeCare() string {
	return "Cutter off and unplugged; fingers off the edge; tape the old blade up before it goes into the bin."
}

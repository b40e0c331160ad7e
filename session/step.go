package session

import (
	"encoding/json"
	"fmt"
)

// Step is one of the five things she does for a load, in this order.
type Step uint8

// The five steps. A load that has been peeled is done.
const (
	Fabric Step = iota // cut the rough rectangles
	Press              // iron them flat
	Lay                // lay them on the mat; "load" on screen
	Cut                // the cutter cuts
	Peel               // take the pieces off, look at each
)

// Steps counts them.
const Steps = int(Peel) + 1

var stepWords = [Steps]string{"fabric", "press", "load", "cut", "peel"}

// String is the word on the screen and in `status --json`.
func (s Step) String() string {
	if int(s) < Steps {
		return stepWords[s]
	}
	return fmt.Sprintf("step %d", uint8(s))
}

// MarshalJSON writes the word, so that the log can be read by eye.
func (s Step) MarshalJSON() ([]byte, error) { return json.Marshal(s.String()) }

// UnmarshalJSON reads the word.
func (s *Step) UnmarshalJSON(b []byte) error {
	var word string
	if err := json.Unmarshal(b, &word); err != nil {
		return err
	}
	for i, w := range stepWords {
		if w == word {
			*s = Step(i)
			return nil
		}
	}
	return fmt.Errorf("no step is called %q", word)
}

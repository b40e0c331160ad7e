package bound

import (
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// TestPerBinOfTooLarge asks for a size that fits no bin.
func TestPerBinOfTooLarge(t *testing.T) {
	if got := PerBin(10*length.Inch, 10*length.Inch, rect.Size{W: 11 * length.Inch, H: length.Inch}); got != 0 {
		t.Errorf("%d pieces go into a bin that is too small for one", got)
	}
	if got := PerBin(11*length.Inch, 10*length.Inch, rect.Size{W: 11 * length.Inch, H: length.Inch}); got != 10 {
		t.Errorf("%d pieces of ten", got)
	}
}

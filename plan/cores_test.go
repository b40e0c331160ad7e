package plan

import (
	"bytes"
	"runtime"
	"testing"

	"example.org/matside/plan/rect"
	"example.org/matside/plan/report"
)

// The same list gives the same bytes, however many cores there are.
func TestSameOnAnyCores(t *testing.T) {
	l := quilt(t, 6, allPatches)
	plan := func(cores int) []byte {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		var b bytes.Buffer
		if err := report.JSON(&b, Make(l, Options{Effort: rect.Quick})); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	one := plan(1)
	for _, cores := range []int{2, 3} {
		if !bytes.Equal(one, plan(cores)) {
			t.Errorf("another plan on %d cores than on one", cores)
		}
	}
}

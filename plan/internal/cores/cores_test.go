package cores

import (
	"runtime"
	"slices"
	"testing"
)

// Each piece is done once, and what comes of it is in its place, on any number
// of cores.
func TestEach(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for cores := 1; cores <= 3; cores++ {
		runtime.GOMAXPROCS(cores)
		for n := range 20 {
			got, want := make([]int, n), make([]int, n)
			Each(n, func(i int) { got[i] += i * i })
			for i := range want {
				want[i] = i * i
			}
			if !slices.Equal(got, want) {
				t.Errorf("%d pieces on %d cores: %v", n, cores, got)
			}
		}
	}
}

// Work begun beside goes on without being waited for, and is waited for as
// often as one likes.
func TestStart(t *testing.T) {
	went := make(chan bool)
	wait := Start(func() int { went <- true; return 7 })
	<-went
	if a, b := wait(), wait(); a != 7 || b != 7 {
		t.Errorf("%d and %d, want 7", a, b)
	}
}

// A panic comes out where the result is waited for.
func TestPanic(t *testing.T) {
	for name, do := range map[string]func(){
		"Start": func() { Start(func() int { panic("spilt") })() },
		"Each":  func() { Each(3, func(int) { panic("spilt") }) },
	} {
		func() {
			defer func() {
				if r := recover(); r != "spilt" {
					t.Errorf("%s: %v came out", name, r)
				}
			}()
			do()
		}()
	}
}

// Only one goroutine asks at a time.
func TestInTurn(t *testing.T) {
	if InTurn(nil) != nil {
		t.Error("no question has become one")
	}
	asked := 0
	ask := InTurn(func() bool { asked++; return asked > 3 })
	Each(100, func(int) { ask() })
	if asked != 100 {
		t.Errorf("asked %d times of 100", asked)
	}
}

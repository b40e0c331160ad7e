package cores

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Start begins a piece of work beside what the caller does next. The function
// it gives waits for what comes of it, and may be called more than once.
func Start[T any](work func() T) (wait func() T) {
	var result T
	var panicked any
	done := make(chan struct{})
	go func() {
		defer close(done)
		defer func() { panicked = recover() }()
		result = work()
	}()
	return func() T {
		<-done
		if panicked != nil {
			panic(panicked)
		}
		return result
	}
}

// Each does the pieces of work 0 to n−1, and returns when all are done.
func Each(n int, work func(i int)) {
	var next atomic.Int64
	var waits []func() struct{}
	for range min(n, runtime.GOMAXPROCS(0)) {
		waits = append(waits, Start(func() (none struct{}) {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
			return
		}))
	}
	for _, wait := range waits {
		wait()
	}
}

// InTurn lets only one goroutine at a time ask a question; nil stays nil.
func InTurn(ask func() bool) func() bool {
	if ask == nil {
		return nil
	}
	var mu sync.Mutex
	return func() bool {
		mu.Lock()
		defer mu.Unlock()
		return ask()
	}
}

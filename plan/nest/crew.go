package nest

import "sync/atomic"

// sideBySide does do(0) … do(n−1), the first on the caller's goroutine, the
// others each on one of its own, and waits for all. The stop it hands them may
// be asked from any of them; the caller's own is asked on its goroutine only.
func sideBySide(n int, stop func() bool, do func(i int, stop func() bool)) {
	var halt atomic.Bool
	ask := func() bool {
		if stop != nil && stop() {
			halt.Store(true)
		}
		return halt.Load()
	}
	wants, done := make(chan struct{}, 1), make(chan struct{}, n)
	for i := 1; i < n; i++ {
		go func() {
			do(i, func() bool {
				select {
				case wants <- struct{}{}: // the caller asks when it has time
				default:
				}
				return halt.Load()
			})
			done <- struct{}{}
		}()
	}
	do(0, ask)
	for left := n - 1; left > 0; {
		select {
		case <-wants:
			ask()
		case <-done:
			left--
		}
	}
}

//go:build !unix

package rect_test

import "time"

// cpu is the time since the tests began: the processor's own is not told here.
func cpu() time.Duration { return time.Since(began) }

var began = time.Now()

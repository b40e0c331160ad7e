//go:build !unix

package guard

import "os"

// Terminal does nothing here.
func Terminal(*os.File) (release func()) { return func() {} }

// StandBy does nothing here.
func StandBy() {}

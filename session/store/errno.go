package store

import (
	"errors"

	berrors "go.etcd.io/bbolt/errors"
)

// isTooBig says that the data file has reached its own limit.
func isTooBig(err error) bool { return errors.Is(err, berrors.ErrMaxSizeReached) }

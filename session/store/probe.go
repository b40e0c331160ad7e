package store

import (
	"fmt"
	"time"

	bolt "go.etcd.io/bbolt"
)

// Probe lets bbolt itself open the data file at path, read all of it and check
// its pages. Run it in a process of its own, under a time limit: on a file
// that is damaged in a way our reader does not know, bbolt may end the process
// by a signal, or run on for ever. The file is opened read-only.
func Probe(path string) error {
	return guard(func() error {
		db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, PreLoadFreelist: true, Timeout: time.Second})
		if err != nil {
			return err
		}
		defer db.Close()
		return db.View(func(tx *bolt.Tx) error {
			if err := probeRecords(tx); err != nil {
				return err
			}
			var first error
			for err := range tx.Check() { // to the end, or its goroutine never does
				if first == nil {
					first = err
				}
			}
			return first
		})
	})
}

func probeRecords(tx *bolt.Tx) error {
	for _, name := range [][]byte{headBucket, eventBucket, cacheBucket} {
		b := tx.Bucket(name)
		if b == nil {
			return fmt.Errorf("%w: no %s", ErrNotOurs, name)
		}
		if err := b.ForEach(func(_, _ []byte) error { return nil }); err != nil {
			return err
		}
	}
	return nil
}

package store

import (
	"encoding/binary"
	"hash/crc32"
)

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// sum is a record's checksum, over its number and its line.
func sum(seq uint64, line []byte) uint32 {
	var key [8]byte
	binary.BigEndian.PutUint64(key[:], seq)
	return crc32.Update(crc32.Checksum(key[:], castagnoli), castagnoli, line)
}

// toValue is a record's value in the data file: checksum, then line.
func toValue(seq uint64, line []byte) []byte {
	return append(binary.BigEndian.AppendUint32(make([]byte, 0, 4+len(line)), sum(seq, line)), line...)
}

// fromValue is the line of a value, or false if it isn't sound. The line
// shares the value's bytes.
func fromValue(seq uint64, value []byte) ([]byte, bool) {
	if len(value) < 4 || binary.BigEndian.Uint32(value) != sum(seq, value[4:]) {
		return nil, false
	}
	return value[4:], true
}

func toKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

package length

// Area is an area in square nanometres, 128 bits: a square of 3.04 m already
// overflows int64. The zero value is no area.
type Area struct{ Hi, Lo uint64 }

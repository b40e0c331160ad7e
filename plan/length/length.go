package length

// Len is a length in whole nanometres. A bare int64 never means a length.
type Len int64

// Every 1/64 inch (396 875 nm) and every 0.001 mm is a whole number of these.
const (
	Nanometre  Len = 1
	Micrometre     = 1000 * Nanometre
	Millimetre     = 1000 * Micrometre
	TenthMM        = Millimetre / 10
	Centimetre     = 10 * Millimetre
	Metre          = 1000 * Millimetre
	Inch           = 254 * TenthMM
	Yard           = 36 * Inch
)

// MaxLen caps every length read, so that sums of coordinates stay far inside
// int64; products do not (3.04 m squared overflows in nm²): use Area.
const MaxLen = 100 * Metre

// Unit is the unit in which lengths without one are read, and in which
// lengths are printed.
type Unit uint8

// The units a cut list can be written in.
const (
	In Unit = iota
	Cm
	Mm
)

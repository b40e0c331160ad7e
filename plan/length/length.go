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

// Len is one of the unit.
func (u Unit) Len() Len {
	switch u {
	case Cm:
		return Centimetre
	case Mm:
		return Millimetre
	}
	return Inch
}

// String is the unit's short word: in, cm or mm.
func (u Unit) String() string {
	switch u {
	case Cm:
		return "cm"
	case Mm:
		return "mm"
	}
	return "in"
}

// unitWords are all the words for a unit, in small letters, with what one of
// it measures. The marks " and ″ (and ”, which word processors make of the
// first) are in inchMarks.
var unitWords = map[string]Len{
	"in": Inch, "inch": Inch, "inches": Inch,
	"yd": Yard, "yds": Yard, "yard": Yard, "yards": Yard,
	"mm": Millimetre, "cm": Centimetre, "m": Metre,
}

// inchMarks stand for inches behind a number.
const inchMarks = "\"″”"

// UnitWords are the words a unit can be written with, for suggestions.
func UnitWords() []string {
	return []string{"in", "inch", "inches", "yd", "yds", "yard", "yards", "mm", "cm", "m"}
}

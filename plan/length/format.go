package length

import (
	"math/big"
	"strconv"
	"strings"
)

// sixtyFourth is the finest fraction of an inch a ruler shows.
const sixtyFourth = Inch / 64

// String is the length with its unit, in inches where that is a whole 64th and
// in millimetres otherwise. Parse reads it back to the same value.
func (l Len) String() string {
	if l%sixtyFourth == 0 {
		return l.FormatUnit(In)
	}
	return l.FormatUnit(Mm)
}

// FormatUnit is Format and the unit's word: "2 1/2 in", "6.35 cm".
func (l Len) FormatUnit(u Unit) string { return l.Format(u) + " " + u.String() }

// Format is the number alone, as a quilter writes it in that unit: inches as a
// mixed fraction down to 1/64 ("2 1/2"), and where that would not be exact as a
// decimal with as many places as it takes to read the same value back;
// centimetres and millimetres as decimals, always exact.
func (l Len) Format(u Unit) string {
	if u == In && l%sixtyFourth == 0 {
		return mixed(int64(l/sixtyFourth), 64)
	}
	return l.shortest(u.Len())
}

// Yards is how fabric is sold: "2 3/8 yd"; what is no whole eighth of a yard
// is a decimal that reads back to the same value.
func (l Len) Yards() string {
	const eighth = Yard / 8
	if l%eighth == 0 {
		return mixed(int64(l/eighth), 8) + " yd"
	}
	return l.shortest(Yard) + " yd"
}

// Show is for screens only: as Format, but what would need more than four
// places of a decimal (two for cm and mm) is rounded to so many.
func (l Len) Show(u Unit) string {
	switch {
	case u == In && l%sixtyFourth == 0:
		return l.Format(u)
	case u == In:
		return trimZeros(fixed(l, Inch, 4))
	}
	return trimZeros(fixed(l, u.Len(), 2))
}

// AppendMM appends the length in millimetres as a decimal number with up to
// six places, exact: the number JSON wants. 6.35, 0.000001, -12.7, 0.
func (l Len) AppendMM(b []byte) []byte {
	const mm = uint64(Millimetre)
	n := uint64(l)
	if l < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendUint(b, n/mm, 10)
	if n%mm == 0 {
		return b
	}
	// The leading 1 keeps the zeros behind the point.
	places := strconv.FormatUint(mm+n%mm, 10)[1:]
	return append(append(b, '.'), strings.TrimRight(places, "0")...)
}

// MM is AppendMM as a string.
func (l Len) MM() string { return string(l.AppendMM(nil)) }

// mixed is n/parts as a whole number and a fraction in lowest terms.
func mixed(n, parts int64) string {
	if n < 0 {
		return "-" + mixed(-n, parts)
	}
	whole, top := n/parts, n%parts
	if top == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for top%2 == 0 { // parts is a power of two
		top, parts = top/2, parts/2
	}
	f := strconv.FormatInt(top, 10) + "/" + strconv.FormatInt(parts, 10)
	if whole == 0 {
		return f
	}
	return strconv.FormatInt(whole, 10) + " " + f
}

// shortest is l in units with the fewest places that read back to l. A yard is
// under 10⁹ nm, so nine places always do.
func (l Len) shortest(unit Len) string {
	places := 0
	for places < 9 && !l.is(fixed(l, unit, places), unit) {
		places++
	}
	return trimZeros(fixed(l, unit, places))
}

// is says whether the decimal s in units reads as l, or without their signs.
func (l Len) is(s string, unit Len) bool {
	v, _ := new(big.Rat).SetString(s)
	v.Abs(v.Mul(v, new(big.Rat).SetInt64(int64(unit))))
	return round(v).CmpAbs(big.NewInt(int64(l))) == 0
}

// fixed is l in units with so many places, the last one rounded.
func fixed(l, unit Len, places int) string {
	return new(big.Rat).SetFrac64(int64(l), int64(unit)).FloatString(places)
}

// trimZeros drops the zeros that end a decimal, and the sign of what rounded to
// nothing.
func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

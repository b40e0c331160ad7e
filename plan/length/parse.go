package length

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxDigits caps how long a number may be written, so that nobody has to wait
// for a million digits.
const maxDigits = 40

// Parse reads one length and nothing else: 2, 2.5, 1/2, 2 1/2, 2-1/2, ½, 2½
// or 2 ½, then perhaps a unit (in, inch, inches, ", ″, yd, yard, yards, mm, cm,
// m, in any case). A length without a unit is in bare.
//
// (1) Parse(l.FormatUnit(u), any) == l for every l from 0 to MaxLen.
// (2) Parse(l.Format(u), u) == l.
// (3) Every whole 1/64 in and 0.001 mm is exact; the rest is the nearest
// nanometre to the number as written.
//
// The error wraps one of the sentinels of this package.
func Parse(s string, bare Unit) (Len, error) {
	trimmed := strings.TrimSpace(s)
	l, n, err := Scan(trimmed, bare)
	if err != nil {
		return 0, err
	}
	rest := strings.TrimSpace(trimmed[n:])
	if rest == "" {
		return l, nil
	}
	if word := Word(rest); word != "" {
		return 0, fmt.Errorf("%q: %w", clip(word), ErrUnit)
	}
	return 0, fmt.Errorf("%q after the length: %w", clip(rest), ErrRest)
}

// Scan reads the length that s starts with and says how many bytes it took,
// its unit included. What follows is left alone: Scan("2 1/2 x 4", In) takes 5
// bytes. It is what a reader of longer lines needs; s must start with the
// number itself. With an error, n is how many bytes of s are at fault (0 when
// there is no number at all).
func Scan(s string, bare Unit) (l Len, n int, err error) {
	value, n, err := scanNumber(s)
	if err != nil {
		return 0, n, err
	}
	unit := bare.Len()
	if u, un := scanUnit(s[n:]); un > 0 {
		unit, n = u, n+un
	}
	l, err = toLen(value, unit)
	return l, n, err
}

// ScanParts reads the number that s starts with, in any form a length's number
// has but without a unit, in parts of which one makes a whole: ScanParts("3.5%",
// 10000) is 35000. Rounded to the nearest part; n is as in Scan.
func ScanParts(s string, parts int64) (value int64, n int, err error) {
	v, n, err := scanNumber(s)
	if err != nil {
		return 0, n, err
	}
	parted := round(v.Mul(v, new(big.Rat).SetInt64(parts)))
	if !parted.IsInt64() {
		return 0, n, ErrDigits
	}
	return parted.Int64(), n, nil
}

// scanNumber reads a whole number, a decimal, a fraction or a mixed number.
func scanNumber(s string) (*big.Rat, int, error) {
	if f, n, err := scanFraction(s); n > 0 {
		return f, n, err
	}
	whole := digits(s)
	n := len(whole)
	if strings.HasPrefix(s[n:], ".") {
		if places := digits(s[n+1:]); places != "" {
			n += 1 + len(places)
			return decimal(s[:n], n)
		}
	}
	if n == 0 {
		return nil, 0, ErrNone
	}
	value, _, err := decimal(whole, n)
	if err != nil {
		return nil, n, err
	}
	f, fn, err := scanFraction(s[n+joint(s[n:]):])
	if fn == 0 {
		return value, n, nil
	}
	n += joint(s[n:]) + fn
	if err == nil && f.Cmp(big.NewRat(1, 1)) >= 0 {
		err = ErrNotLess
	}
	if err != nil {
		return nil, n, err
	}
	return value.Add(value, f), n, nil
}

// joint is what stands between a whole number and its fraction: spaces, one
// hyphen, or nothing.
func joint(s string) int {
	if strings.HasPrefix(s, "-") {
		return 1
	}
	return spaces(s)
}

// scanFraction reads 1/2 or ½; n is 0 when s does not start with one.
func scanFraction(s string) (f *big.Rat, n int, err error) {
	r, size := utf8.DecodeRuneInString(s)
	if v, ok := vulgar[r]; ok {
		return big.NewRat(v[0], v[1]), size, nil
	}
	top := digits(s)
	slash := 0
	for _, mark := range []string{"/", "⁄"} {
		if top != "" && strings.HasPrefix(s[len(top):], mark) {
			slash = len(mark)
		}
	}
	if slash == 0 {
		return nil, 0, nil
	}
	under := digits(s[len(top)+slash:])
	if under == "" {
		return nil, 0, nil
	}
	n = len(top) + slash + len(under)
	if len(top) > maxDigits || len(under) > maxDigits {
		return nil, n, ErrDigits
	}
	if strings.Trim(under, "0") == "" {
		return nil, n, ErrOverZero
	}
	return new(big.Rat).SetFrac(tens(top), tens(under)), n, nil
}

// vulgar are the fractions that are one character.
var vulgar = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅐': {1, 7}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅑': {1, 9}, '⅒': {1, 10}, '↉': {0, 3},
}

// IsVulgar says whether r is a fraction in one character, such as ½.
func IsVulgar(r rune) bool {
	_, ok := vulgar[r]
	return ok
}

// decimal makes a number of digits with perhaps a point among them.
func decimal(s string, n int) (*big.Rat, int, error) {
	if len(s) > maxDigits {
		return nil, n, ErrDigits
	}
	whole, places, _ := strings.Cut(s, ".")
	under := "1" + strings.Repeat("0", len(places))
	return new(big.Rat).SetFrac(tens(whole+places), tens(under)), n, nil
}

// tens is the value of decimal digits. Rat.SetString would take a 0 in front
// for the sign of another base.
func tens(digits string) *big.Int {
	v, _ := new(big.Int).SetString(digits, 10)
	return v
}

// scanUnit reads the unit that follows a number, spaces before it included; n
// is 0 when none follows. In `42inx2yd` the unit is in.
func scanUnit(s string) (unit Len, n int) {
	gap := spaces(s)
	r, size := utf8.DecodeRuneInString(s[gap:])
	if size > 0 && strings.ContainsRune(inchMarks, r) && r != utf8.RuneError {
		return Inch, gap + size
	}
	word := Word(s[gap:])
	if u, ok := unitWords[strings.ToLower(word)]; ok {
		return u, gap + len(word)
	}
	short := strings.TrimRight(word, "xX")
	if len(short)+1 == len(word) && short != "" {
		if u, ok := unitWords[strings.ToLower(short)]; ok {
			return u, gap + len(short)
		}
	}
	return 0, 0
}

// toLen is value units in nanometres, rounded once.
func toLen(value *big.Rat, unit Len) (Len, error) {
	nm := round(new(big.Rat).Mul(value, new(big.Rat).SetInt64(int64(unit))))
	if nm.Cmp(big.NewInt(int64(MaxLen))) > 0 {
		return 0, ErrTooLong
	}
	return Len(nm.Int64()), nil
}

// round is the whole number nearest to a value of 0 or more, a half rounding
// up: floor((2·num + den) / (2·den)).
func round(v *big.Rat) *big.Int {
	top := new(big.Int).Lsh(v.Num(), 1)
	top.Add(top, v.Denom())
	return top.Quo(top, new(big.Int).Lsh(v.Denom(), 1))
}

// Word is the run of letters that s starts with.
func Word(s string) string {
	for i, r := range s {
		if !unicode.IsLetter(r) {
			return s[:i]
		}
	}
	return s
}

func digits(s string) string {
	n := 0
	for n < len(s) && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	return s[:n]
}

// spaces is how many bytes of white space s starts with.
func spaces(s string) int { return len(s) - len(strings.TrimLeftFunc(s, unicode.IsSpace)) }

// clip keeps an error short whatever was typed.
func clip(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "…"
}

package length

import (
	"errors"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const half, quarter = Inch / 2, Inch / 4

func TestParse(t *testing.T) {
	for _, c := range []struct {
		in   string
		bare Unit
		want Len
	}{
		{"2", In, 2 * Inch}, {"2.5", In, 2*Inch + half}, {"1/2", In, half}, {"2 1/2", In, 2*Inch + half},
		{"2-1/2", In, 2*Inch + half}, {"½", In, half}, {"2½", In, 2*Inch + half}, {"2 ½", In, 2*Inch + half},
		{"2-½", In, 2*Inch + half}, {".5", In, half}, {"1⁄2", In, half}, {"2\t1/2", In, 2*Inch + half},
		{"2 1/2", In, 2*Inch + half}, {"5/2", In, 2*Inch + half}, {"02.50", In, 2*Inch + half},
		{"2 in", Mm, 2 * Inch}, {"2inch", Mm, 2 * Inch}, {"2 INCHES", Mm, 2 * Inch}, {`2½"`, Mm, 2*Inch + half},
		{"2″", Mm, 2 * Inch}, {"2 ″", Mm, 2 * Inch}, {"2”", Mm, 2 * Inch}, {"2 yd", Mm, 2 * Yard}, {"1 1/2 Yards", Mm, 54 * Inch},
		{"1 yard", Mm, Yard}, {"3/8 yd", In, 27 * Inch / 2}, {"0.635 cm", In, quarter}, {"6.35", Mm, quarter},
		{"0.635", Cm, quarter}, {"2 m", In, 2 * Metre}, {"2 M", In, 2 * Metre}, {"2 mm", In, 2 * Millimetre},
		{"100 m", In, MaxLen}, {"0", In, 0}, {"0/3", In, 0}, {"1/64", In, 396_875}, {"2 63/64", In, 2*Inch + 63*396_875},
		{"1/3", In, 8_466_667}, {"2/3", In, 16_933_333}, {"0.0000005", Mm, 1}, {"0.0000004999", Mm, 0},
		{"  2 1/2  ", In, 2*Inch + half}, {"⅞", In, 7 * Inch / 8}, {"3⅞ in", Mm, 31 * Inch / 8}, {"↉", In, 0},
		{"010", In, 10 * Inch}, {"01/016", In, Inch / 16}, {"010/020", In, half}, {"2 01/02", In, 5 * half}, {"00/09", In, 0}, {"010.010", Mm, 10_010_000},
		{strings.Repeat("0", maxDigits-1) + "1/" + strings.Repeat("0", maxDigits-1) + "2", In, half},
		{"0.000001", Mm, 1}, {"2.50000000000000000000000000", In, 2*Inch + half},
	} {
		got, err := Parse(c.in, c.bare)
		if err != nil || got != c.want {
			t.Errorf("Parse(%q, %v) = %d, %v; want %d", c.in, c.bare, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		in   string
		want error
	}{
		{"", ErrNone}, {"   ", ErrNone}, {"in", ErrNone}, {"-2", ErrNone}, {"x", ErrNone}, {".", ErrNone}, {"/2", ErrNone},
		{"2 ft", ErrUnit}, {"2 squares", ErrUnit}, {"2 x", ErrUnit}, {"2e5", ErrUnit}, {"2 ms", ErrUnit},
		{"2 3", ErrRest}, {"2.5 1/2 1/2", ErrRest}, {"2,5", ErrRest}, {"2 in in", ErrUnit}, {"½ ½", ErrRest},
		{"2.", ErrRest}, {"2 /", ErrRest}, {"2 1/2/3", ErrRest}, {"2--1/2", ErrRest}, {"2\x00", ErrRest}, {"2\xff", ErrRest},
		{"1/0", ErrOverZero}, {"2 1/0", ErrOverZero}, {"2 5/4", ErrNotLess}, {"2 2/2", ErrNotLess},
		{"100.000001 m", ErrTooLong}, {"110 yd", ErrTooLong}, {"99999999999999999999", ErrTooLong},
		{strings.Repeat("9", 41), ErrDigits}, {"0." + strings.Repeat("0", 1<<20), ErrDigits},
		{"1/" + strings.Repeat("3", 1<<20), ErrDigits}, {strings.Repeat("0", maxDigits) + "1/2", ErrDigits},
	} {
		if got, err := Parse(c.in, In); !errors.Is(err, c.want) {
			t.Errorf("Parse(%.50q) = %d, %v; want %v", c.in, got, err, c.want)
		}
	}
}

// TestScan: how far a length goes in a longer line.
func TestScan(t *testing.T) {
	for _, c := range []struct {
		in, took string
		want     Len
	}{
		{"2 1/2 x 4", "2 1/2", 5 * half}, {"2 x 4", "2", 2 * Inch}, {"2x4", "2", 2 * Inch}, {"42inx2yd", "42in", 42 * Inch},
		{"42 in x 2 yd", "42 in", 42 * Inch}, {"2mmX3", "2mm", 2 * Millimetre}, {"2×3", "2", 2 * Inch}, {`2" x 3"`, `2"`, 2 * Inch},
		{"3 finished", "3", 3 * Inch}, {"3 inset", "3", 3 * Inch}, {"3 1/2, trimmed", "3 1/2", 7 * half}, {"0 2 1/2", "0", 0},
		{"2-1/2-3", "2-1/2", 5 * half}, {"2 1/x", "2", 2 * Inch}, {"2 by 3", "2", 2 * Inch}, {"2 # in", "2", 2 * Inch},
	} {
		got, n, err := Scan(c.in, In)
		if err != nil || got != c.want || c.in[:n] != c.took {
			t.Errorf("Scan(%q) = %d, %d, %v; want %d from %q", c.in, got, n, err, c.want, c.took)
		}
	}
	if _, n, err := Scan("2 1/0 x 3", In); n != len("2 1/0") || !errors.Is(err, ErrOverZero) {
		t.Errorf("a length at fault is %d bytes, %v; want 5, ErrOverZero", n, err)
	}
}

func TestScanParts(t *testing.T) {
	for _, c := range []struct {
		in   string
		n    int
		want int64
	}{{"3%", 1, 30000}, {"3.5%", 3, 35000}, {"3 1/2 %", 5, 35000}, {"0.00005", 7, 1}, {"0.00004", 7, 0}} {
		got, n, err := ScanParts(c.in, 10000)
		if err != nil || got != c.want || n != c.n {
			t.Errorf("ScanParts(%q) = %d, %d, %v", c.in, got, n, err)
		}
	}
	if _, _, err := ScanParts(strings.Repeat("9", 30), 10000); !errors.Is(err, ErrDigits) {
		t.Errorf("30 digits of percent: %v", err)
	}
}

// TestParseIsNearest is law (3): no decimal or fraction lands more than half a
// nanometre from what was written.
func TestParseIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, 1000).Draw(t, "whole")
		under := rapid.Int64Range(1, 1_000_000).Draw(t, "under")
		top := rapid.Int64Range(0, under-1).Draw(t, "top")
		value := new(big.Rat).Add(new(big.Rat).SetInt64(whole), big.NewRat(top, under))
		l, err := Parse(new(big.Rat).SetInt64(whole).RatString()+" "+big.NewRat(top, under).Num().String()+"/"+big.NewRat(top, under).Denom().String(), In)
		if err != nil {
			t.Fatal(err)
		}
		off := new(big.Rat).Sub(new(big.Rat).Mul(value, new(big.Rat).SetInt64(int64(Inch))), new(big.Rat).SetInt64(int64(l)))
		if off.Abs(off).Cmp(big.NewRat(1, 2)) > 0 {
			t.Fatalf("%v in is %d nm: off by %v", value, l, off)
		}
		if 64%under == 0 && off.Sign() != 0 {
			t.Fatalf("%v in is a whole 64th and not exact", value)
		}
	})
}

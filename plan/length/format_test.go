package length

import (
	"encoding/json"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		l              Len
		in, cm, mm, yd string
	}{
		{0, "0", "0", "0", "0 yd"},
		{5 * half, "2 1/2", "6.35", "63.5", "0.069444444 yd"},
		{half, "1/2", "1.27", "12.7", "0.013888889 yd"},
		{quarter, "1/4", "0.635", "6.35", "0.006944444 yd"},
		{-5 * half, "-2 1/2", "-6.35", "-63.5", "-0.069444444 yd"},
		{19 * Yard / 8, "85 1/2", "217.17", "2171.7", "2 3/8 yd"},
		{Yard, "36", "91.44", "914.4", "1 yd"},
		{396_875, "1/64", "0.0396875", "0.396875", "0.000434028 yd"},
		{1, "0.00000004", "0.0000001", "0.000001", "0.000000001 yd"},
		{8_466_667, "0.33333335", "0.8466667", "8.466667", "0.00925926 yd"},
		{MaxLen, "3937.007874", "10000", "100000", "109.361329834 yd"},
	} {
		if c.l.Format(In) != c.in || c.l.Format(Cm) != c.cm || c.l.Format(Mm) != c.mm || c.l.Yards() != c.yd {
			t.Errorf("%d nm: %q %q %q %q; want %q %q %q %q", c.l, c.l.Format(In), c.l.Format(Cm), c.l.Format(Mm), c.l.Yards(), c.in, c.cm, c.mm, c.yd)
		}
	}
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		l          Len
		in, cm, mm string
	}{
		{5 * half, "2 1/2", "6.35", "63.5"},
		{97_881_440, "3.8536", "9.79", "97.88"},
		{Inch / 64, "1/64", "0.04", "0.4"},
		{-97_881_440, "-3.8536", "-9.79", "-97.88"},
		{Inch + 1, "1", "2.54", "25.4"},
		{-1, "0", "0", "0"},
	} {
		if c.l.Show(In) != c.in || c.l.Show(Cm) != c.cm || c.l.Show(Mm) != c.mm {
			t.Errorf("%d nm shows %q %q %q", c.l, c.l.Show(In), c.l.Show(Cm), c.l.Show(Mm))
		}
	}
}

// TestLowest: the lowest length there is has no positive to go with it.
func TestLowest(t *testing.T) {
	l := Len(math.MinInt64)
	if l.Format(Mm) != "-9223372036854.775808" || l.MM() != l.Format(Mm) || !strings.HasPrefix(l.Format(In), "-363124883340.") {
		t.Errorf("%s mm, %s mm, %s in", l.Format(Mm), l.MM(), l.Format(In))
	}
	for _, s := range []string{l.String(), l.Show(In), l.Show(Cm), l.Yards()} {
		if !strings.HasPrefix(s, "-") {
			t.Errorf("%s", s)
		}
	}
}

// anyLen draws odd nanometres as well as what quilters cut.
func anyLen() *rapid.Generator[Len] {
	return rapid.Custom(func(t *rapid.T) Len {
		step := rapid.SampledFrom([]Len{1, Micrometre, Inch / 64, Inch / 8, Yard / 8, Millimetre}).Draw(t, "step")
		return Len(rapid.Int64Range(0, int64(MaxLen/step)).Draw(t, "n")) * step
	})
}

// TestReadsBack is laws (1) and (2) of Parse, for every way of printing.
func TestReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLen().Draw(t, "l")
		other := rapid.SampledFrom([]Unit{In, Cm, Mm}).Draw(t, "other")
		for _, u := range []Unit{In, Cm, Mm} {
			readsBack(t, l, l.Format(u), u)
			readsBack(t, l, l.FormatUnit(u), other)
		}
		readsBack(t, l, l.String(), other)
		readsBack(t, l, l.Yards(), other)
		readsBack(t, l, l.MM(), Mm)
	})
}

func readsBack(t *rapid.T, l Len, s string, bare Unit) {
	if got, err := Parse(s, bare); err != nil || got != l {
		t.Fatalf("%d nm prints %q, which reads as %d, %v", l, s, got, err)
	}
}

// TestMM: the millimetres are a JSON number with at most six places.
func TestMM(t *testing.T) {
	for l, want := range map[Len]string{0: "0", 1: "0.000001", -1: "-0.000001", Inch: "25.4", 8_466_667: "8.466667", -12_700_000: "-12.7", MaxLen: "100000", 1_000_010: "1.00001"} {
		if got := l.MM(); got != want || !json.Valid([]byte(got)) {
			t.Errorf("%d nm is %q mm; want %q", l, got, want)
		}
	}
}

// FuzzParse: nothing panics, and what parses prints and parses to itself.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"2", "2.5", "1/2", "2 1/2", "2-1/2", "½", "2½", "2 ½ in", `3"`, "3″", "1 1/2 yd", "99 m", "1/0", "0.0000005", "6.35 cm", "2 5/4", "1⁄3"} {
		f.Add(s, uint8(0))
	}
	f.Fuzz(func(t *testing.T, s string, u uint8) {
		unit := Unit(u % 3)
		l, err := Parse(s, unit)
		if err != nil {
			return
		}
		if l < 0 || l > MaxLen {
			t.Fatalf("Parse(%q) = %d nm", s, l)
		}
		for _, printed := range []string{l.FormatUnit(unit), l.String(), l.Yards()} {
			if back, err := Parse(printed, unit); err != nil || back != l {
				t.Fatalf("%q is %d nm, prints %q, reads back %d, %v", s, l, printed, back, err)
			}
		}
		if _, n, err := Scan(s, unit); err == nil && n > len(s) {
			t.Fatalf("Scan(%q) took %d bytes of %d", s, n, len(s))
		}
	})
}

// FuzzFormat: any number of nanometres at all, however far from a quilt,
// prints without a panic; millimetres exactly, other units to the same value.
func FuzzFormat(f *testing.F) {
	for _, l := range []int64{0, 1, -1, int64(Inch / 64), -int64(Inch / 64), math.MaxInt64, math.MinInt64, math.MinInt64 + 1, -int64(MaxLen)} {
		f.Add(l)
	}
	f.Fuzz(func(t *testing.T, n int64) {
		l := Len(n)
		mm, ok := new(big.Rat).SetString(l.MM())
		if !ok || mm.Mul(mm, big.NewRat(int64(Millimetre), 1)).Cmp(new(big.Rat).SetInt64(n)) != 0 {
			t.Errorf("%d nm is %q mm", n, l.MM())
		}
		for _, u := range []Unit{In, Cm, Mm} {
			if s := l.Format(u); !strings.Contains(s, "/") && !l.is(s, u.Len()) {
				t.Errorf("%d nm prints %q %v", n, s, u)
			}
			if l.Show(u) == "" || l.FormatUnit(u) == "" {
				t.Errorf("%d nm prints nothing in %v", n, u)
			}
		}
		if l.String() == "" || l.Yards() == "" {
			t.Errorf("%d nm prints nothing", n)
		}
	})
}

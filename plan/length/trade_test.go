package length

import "testing"

// Fractions of a yard in inches, 11 of 11:
// catbirdquilts.wordpress.com/2014/02/07; scissortailquilting.com;
// quiltingboard.com t280955. And what an inch, a yard and the usual widths are
// in millimetres: bagmakingpatterns.com/conversion.php, and calc.
func TestTrade(t *testing.T) {
	for text, want := range map[string]Len{
		"1/8 yd": 9 * Inch / 2, "1/6 yd": 6 * Inch, "1/4 yd": 9 * Inch, "1/3 yd": 12 * Inch, "3/8 yd": 27 * Inch / 2, "1/2 yd": 18 * Inch,
		"5/8 yd": 45 * Inch / 2, "2/3 yd": 24 * Inch, "3/4 yd": 27 * Inch, "7/8 yd": 63 * Inch / 2, "1 yd": 36 * Inch,
		"1 in": 254 * TenthMM, "0.9144 m": Yard, "12.7 cm": 5 * Inch, "1016 mm": 40 * Inch, "1066.8 mm": 42 * Inch, "1117.6 mm": 44 * Inch,
		"1143 mm": 45 * Inch, "304.8 mm": 12 * Inch,
		// A seam is a quarter of an inch: hillsidequilter12 2024/08; highlandstitches 2020/04.
		"6.35 mm": Inch / 4,
	} {
		if got, err := Parse(text, In); err != nil || got != want {
			t.Errorf("%s: %v, %v; want %v", text, got, err, want)
		}
	}
}

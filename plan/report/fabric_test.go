package report

import "testing"

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		all  []int
		want string
	}{
		{nil, ""}, {[]int{4}, "4"}, {[]int{4, 5}, "4, 5"}, {[]int{4, 5, 6}, "4 to 6"},
		{[]int{1, 3, 4, 5, 6, 9, 10, 8}, "1, 3 to 6, 9, 10, 8"},
	} {
		if got := Numbers(c.all); got != c.want {
			t.Errorf("%v: %q, want %q", c.all, got, c.want)
		}
	}
}

package check

import (
	"math"
	"reflect"
	"testing"

	"example.org/matside/plan/cutlist"
	"pgregory.net/rapid"
)

// Whatever numbers of a plan are changed to whatever, the check comes to an end
// and does not panic.
func TestBroken(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := good()
		var numbers []reflect.Value
		collect(reflect.ValueOf(q).Elem(), &numbers)
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			v := numbers[rapid.IntRange(0, len(numbers)-1).Draw(t, "which")]
			v.SetInt(rapid.OneOf(
				rapid.Int64Range(-3, 20),
				rapid.SampledFrom([]int64{-math.MaxInt64, math.MaxInt64, -1 << 62, 1 << 62, 1 << 31}),
				rapid.Map(rapid.Int64Range(-2, 2), func(d int64) int64 { return v.Int() + d }),
			).Draw(t, "value"))
		}
		Check(q)
		Against(q, Asked{Wanted: make([][]int, len(q.List.Lines)), Used: q.Stock})
	})
	if f := Against(good(), Asked{Wanted: [][]int{nil}}); len(f) != 1 || f[0].Kind != Reference {
		t.Errorf("another list's copies: %v", f)
	}
}

// collect is every whole number of a queue, but for its list.
func collect(v reflect.Value, into *[]reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			collect(v.Field(i), into)
		}
	case reflect.Slice:
		for i := range v.Len() {
			collect(v.Index(i), into)
		}
	case reflect.Int, reflect.Int64:
		*into = append(*into, v)
	case reflect.Pointer:
		if v.Type() != reflect.TypeFor[*cutlist.List]() {
			collect(v.Elem(), into)
		}
	}
}

// separable agrees with a search that tries every single cut one by one.
func TestSeparable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 7).Draw(t, "n")
		var boxes []box
		for range n {
			d := rapid.IntRange(0, 5)
			w := rapid.IntRange(1, 3)
			b := box{d.Draw(t, "x"), d.Draw(t, "y"), w.Draw(t, "w"), w.Draw(t, "h")}
			if !b.hitsAny(boxes) {
				boxes = append(boxes, b)
			}
		}
		if got, want := separable(asBoxes(boxes)), freed(boxes); got != want {
			t.Errorf("%v: separable %v, want %v", boxes, got, want)
		}
	})
}

package pack

import (
	"slices"

	"example.org/matside/plan/length"
)

// axis is one side of a box as the mosaic sees it: the places worth cutting
// at, ascending from 0. A length is taken for the last place it reaches, so
// that what fits the axis fits the box.
type axis struct {
	at   []length.Len
	rest [][]int16 // by place, by cut up to half of it: what is left beyond the cut
}

// mostPlaces bounds how finely a side is looked at.
const mostPlaces = 160

// sums are the places that lengths, each as often as one likes, reach within
// a side.
func sums(lengths []length.Len, side length.Len) []length.Len {
	out := []length.Len{0}
	for _, l := range lengths {
		if l <= 0 {
			continue
		}
		for i := 0; i < len(out); i++ {
			if at := out[i] + l; at <= side {
				if k, ok := slices.BinarySearch(out, at); !ok {
					out = slices.Insert(out, k, at)
				}
			}
		}
		if len(out) > 8*mostPlaces {
			break
		}
	}
	return out
}

func newAxis(places []length.Len) *axis {
	slices.Sort(places)
	a := &axis{at: thinned(slices.Compact(places))}
	a.rest = make([][]int16, len(a.at))
	for i, whole := range a.at {
		for k := 1; k < len(a.at) && 2*a.at[k] <= whole; k++ {
			a.rest[i] = append(a.rest[i], int16(a.floor(whole-a.at[k])))
		}
	}
	return a
}

// thinned keeps about mostPlaces of the places, evenly spread, the ends
// always.
func thinned(places []length.Len) []length.Len {
	n := len(places)
	if n <= mostPlaces {
		return places
	}
	var out []length.Len
	for i := range mostPlaces {
		out = append(out, places[i*(n-1)/(mostPlaces-1)])
	}
	return out
}

// floor is the last place that l reaches.
func (a *axis) floor(l length.Len) int {
	i, ok := slices.BinarySearch(a.at, l)
	if !ok {
		i--
	}
	return i
}

// ceil is the first place no less than l.
func (a *axis) ceil(l length.Len) int {
	i, _ := slices.BinarySearch(a.at, l)
	return i
}

package nest

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// A set is one of the strip-packing sets of the textile and nesting
// literature, as collected by the EURO special interest group on cutting and
// packing (ESICUP). Densities are the best known, from the data_literature.csv
// of the open fontanf/packingsolver repository (results of 2024 and 2025).
type set struct {
	name  string
	best  float64 // density, %
	scale float64 // nanometres a unit
}

var sets = []set{
	{"shapes0", 68.79, 1e6},
	{"jakobs1", 89.09, 1e6},
	{"fu", 92.40, 1e6},
	{"dagli", 89.33, 1e6},
	{"blaz1", 85.49, 1e6},
	{"albano", 89.54, 1e4},
	{"shirts", 89.91, 1e6},
}

// read gives the strip's height, its items, and their area in nm².
func (s set) read(t testing.TB) (h length.Len, items []Item, area float64) {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", "nesting", s.name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Height float64 `json:"strip_height"`
		Items  []struct {
			Demand int       `json:"demand"`
			Turns  []float64 `json:"allowed_orientations"`
			Shape  struct {
				Data [][2]float64 `json:"data"`
			} `json:"shape"`
		} `json:"items"`
	}
	if err := json.Unmarshal(raw, &file); err != nil {
		t.Fatal(err)
	}
	for _, it := range file.Items {
		o := make(outline.Outline, 0, len(it.Shape.Data))
		for _, p := range it.Shape.Data[:len(it.Shape.Data)-1] { // the first corner comes again at the end
			o = append(o, outline.Point{X: length.Len(math.Round(p[0] * s.scale)), Y: length.Len(math.Round(p[1] * s.scale))})
		}
		r := ringOf(o)
		if r.area2() < 0 {
			for i, j := 0, len(o)-1; i < j; i, j = i+1, j-1 {
				o[i], o[j] = o[j], o[i]
			}
		}
		turns := make([]int, len(it.Turns))
		for i, d := range it.Turns {
			turns[i] = int(d * 1e6)
		}
		items = append(items, Item{Outline: o, Turns: turns, Count: it.Demand})
		area += float64(it.Demand) * math.Abs(r.area2()) / 2
	}
	return length.Len(math.Round(file.Height * s.scale)), items, area
}

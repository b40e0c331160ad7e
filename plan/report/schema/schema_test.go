package schema_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/report"
	"example.org/matside/plan/report/schema"
	"example.org/matside/testdata/cutlists"
)

// TestMain keeps the random laws quick, unless asked for the long form.
func TestMain(m *testing.M) {
	flag.Parse()
	if os.Getenv("MATSIDE_LONG") != "1" {
		if err := flag.Set("rapid.checks", "4"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

// compiled is the schema as a general validator understands it; it first holds
// the schema itself to the draft's own.
var compiled = func() *jsonschema.Schema {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema.Plan))
	if err != nil {
		panic(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("plan.schema.json", doc); err != nil {
		panic(err)
	}
	return c.MustCompile("plan.schema.json")
}()

// everything is a list whose plan has every key there is.
const everything = `quilt Everything
fabric Ink, 18 x 21, face down
fabric Sand
fabric Rust, 6 x 6
cut from Ink
12 squares 2 1/2 for A
2 rectangles 3 x 12 for border, by hand
cut from Sand
9 half-square triangles 3 finished for C, any grain
2 strips 3
binding 2 1/2 around 30 x 40
cut from Rust
40 hexagons 1 for D`

func planned(t interface{ Fatal(...any) }, text string) *queue.Queue {
	list, err := cutlist.Read("test", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Make(list, plan.Options{Effort: rect.Quick})
}

func encoded(t interface{ Fatal(...any) }, q *queue.Queue) any {
	var b bytes.Buffer
	if err := report.JSON(&b, q); err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(&b)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestPlansFit: the plan of every cut list of testdata fits, and of one that
// has everything.
func TestPlansFit(t *testing.T) {
	texts := map[string]string{"everything": everything}
	entries, err := cutlists.Files.ReadDir(".")
	if err != nil || len(entries) < 3 {
		t.Fatal(len(entries), err)
	}
	for _, e := range entries {
		texts[e.Name()] = string(cutlists.Read(e.Name()))
	}
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		if err := compiled.Validate(encoded(t, planned(t, texts[name]))); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestGeneratedPlansFit does the same with lists made up at random.
func TestGeneratedPlansFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		fmt.Fprintf(&b, "quilt Q\nunits %s\nmargin 0.2\ngap %d\n", rapid.SampledFrom([]string{"in", "cm"}).Draw(t, "units"), rapid.IntRange(0, 1).Draw(t, "gap"))
		for f := range rapid.IntRange(1, 3).Draw(t, "fabrics") {
			fmt.Fprintf(&b, "fabric F%d%s\ncut from F%d\n", f, rapid.SampledFrom([]string{"", ", 10 x 12", ", 3 of 18 x 21, face down", ", shrinks 3.5% x 6%"}).Draw(t, "stock"), f)
			for range rapid.IntRange(1, 4).Draw(t, "lines") {
				fmt.Fprintf(&b, "%d %s\n", rapid.IntRange(1, 30).Draw(t, "count"), rapid.SampledFrom([]string{
					"squares 2.5 for A", "half-square triangles 2 finished", "hexagons 1", "circles 3", "strips 2", "rectangles 2 x 5, by hand", "diamonds 60 2, any grain", "squares 3, fussy",
				}).Draw(t, "piece"))
			}
		}
		if err := compiled.Validate(encoded(t, planned(t, b.String()))); err != nil {
			t.Fatalf("%s\n%v", b.String(), err)
		}
	})
}

// TestWrongPlansDont takes a plan apart: each key left out, and each value
// changed into one of another kind, or one that can't be, is refused.
func TestWrongPlansDont(t *testing.T) {
	doc := encoded(t, planned(t, everything))
	if err := compiled.Validate(doc); err != nil {
		t.Fatal(err)
	}
	tried := 0
	refused := func(where string) {
		t.Helper()
		tried++
		if compiled.Validate(doc) == nil {
			t.Errorf("%s: it still fits", where)
		}
	}
	var walk func(where string, v any, set func(any))
	walk = func(where string, v any, set func(any)) {
		for _, wrong := range wrongs(v) {
			set(wrong)
			refused(fmt.Sprintf("%s = %v", where, wrong))
		}
		set(v)
		switch v := v.(type) {
		case map[string]any:
			for _, k := range slices.Sorted(maps.Keys(v)) {
				old := v[k]
				if k != "label" && !(k == "by_hand" && strings.Contains(where, "lines")) {
					delete(v, k)
					refused("without " + where + "." + k)
					v[k] = old
				}
				walk(where+"."+k, old, func(x any) { v[k] = x })
			}
		case []any:
			for i := range v[:min(len(v), 3)] {
				walk(fmt.Sprintf("%s[%d]", where, i), v[i], func(x any) { v[i] = x })
			}
		}
	}
	walk("plan", doc, func(v any) { doc = v })
	if err := compiled.Validate(doc); err != nil {
		t.Errorf("the plan wasn't put together again: %v", err)
	}
	if tried < 500 {
		t.Errorf("only %d wrong plans were tried", tried)
	}
}

// wrongs are values that can't stand in the place of v.
func wrongs(v any) []any {
	switch v := v.(type) {
	case string:
		return []any{nil, json.Number("7"), []any{}, true}
	case bool:
		return []any{nil, "true", json.Number("1")}
	case json.Number:
		return []any{nil, v.String(), json.Number("-1"), json.Number("1e12"), []any{v}}
	case []any:
		return []any{nil, "x", map[string]any{}, append(slices.Clone(v), "one too many")}
	case map[string]any:
		return []any{nil, "x", []any{v}}
	}
	return nil
}

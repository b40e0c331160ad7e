package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// Trade writes plans of one cut list against each other, a line for each: how
// many loads, and what of each fabric.
func Trade(w io.Writer, front []*queue.Queue) error {
	t := text{q: front[0], unit: front[0].List.Unit}
	t.line("%s: loads against fabric", t.q.List.Quilt)
	t.line("")
	for _, q := range front {
		t.line("  %-10s %s", count(len(q.Loads), "load"), t.takesOf(q))
	}
	t.line("")
	if len(front) == 1 {
		t.line("No plan found takes less fabric, however many loads.")
	} else {
		t.line("`--loads %d` with plan, fabric or cut takes the last of them.", len(front[len(front)-1].Loads))
	}
	_, err := w.Write(t.b.Bytes())
	return err
}

// take is what a plan takes of one fabric: a length to buy, or how far down
// its panels are cut into, together.
type take struct {
	fabric int
	width  length.Len // as bought; 0 where it comes out of what there is
	length length.Len
}

func takesOf(q *queue.Queue) (all []take) {
	for f := range q.List.Fabrics {
		t := take{fabric: f}
		for _, b := range q.Buy {
			if b.Fabric == f {
				t.width, t.length = b.Width, b.Length
			}
		}
		for i := range q.Stock {
			if u := &q.Stock[i]; u.Fabric == f && t.width == 0 {
				t.length += u.Reach()
			}
		}
		if t.length > 0 {
			all = append(all, t)
		}
	}
	return all
}

// takesOf is all that a plan takes in words: what is to be bought as a sum and
// by fabric, then what is cut from stock.
func (t *text) takesOf(q *queue.Queue) string {
	var sum length.Len
	var buy, had, all []string
	for _, k := range takesOf(q) {
		name := q.List.Fabrics[k.fabric].Name
		if k.width > 0 {
			sum += k.length
			buy = append(buy, name+" "+t.sold(k.length))
		} else {
			had = append(had, name+" "+k.length.Show(t.unit))
		}
	}
	if sum > 0 {
		bought := t.sold(sum) + " to buy"
		if len(buy) > 1 {
			bought += ": " + strings.Join(buy, ", ")
		}
		all = append(all, bought)
	}
	if len(had) > 0 {
		all = append(all, "out of what you have: "+strings.Join(had, ", "))
	}
	return strings.Join(all, "; ")
}

type jsonTrade struct {
	Quilt string       `json:"quilt"`
	Front []jsonChoice `json:"front"`
}

type jsonChoice struct {
	Loads  int        `json:"loads"`
	Fabric []jsonTake `json:"fabric"`
}

type jsonTake struct {
	Fabric string `json:"fabric"`
	Bought bool   `json:"bought"`
	Width  mm     `json:"width_mm,omitempty"`
	Length mm     `json:"length_mm"`
}

// TradeJSON writes the same as one JSON object: a width only for what is
// bought, a length that for stock is how far down its panels are cut into.
func TradeJSON(w io.Writer, front []*queue.Queue) error {
	p := jsonTrade{Quilt: front[0].List.Quilt}
	for _, q := range front {
		c := jsonChoice{Loads: len(q.Loads), Fabric: []jsonTake{}}
		for _, k := range takesOf(q) {
			c.Fabric = append(c.Fabric, jsonTake{q.List.Fabrics[k.fabric].Name, k.width > 0, mm(k.width), mm(k.length)})
		}
		p.Front = append(p.Front, c)
	}
	return encode(w, p)
}

// encode writes one JSON object, as plain as JSON can be.
func encode(w io.Writer, what any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(what); err != nil {
		return fmt.Errorf("as JSON: %w", err)
	}
	_, err := w.Write(b.Bytes())
	return err
}

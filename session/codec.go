package session

import (
	"encoding/json"
	"fmt"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// The form of a queue in the log is ours, so that a field renamed in plan
// can't make an old log unreadable. Lengths are whole nanometres; corners run
// x, y, x, y.

type planWire struct {
	Loads  []loadWire   `json:"loads,omitempty"`
	Stock  []panelWire  `json:"stock,omitempty"`
	Buy    []buyWire    `json:"buy,omitempty"`
	Short  []shortWire  `json:"short,omitempty"`
	Fewest *queueFewest `json:"fewest,omitempty"`
}

type queueFewest struct {
	Loads  int  `json:"loads"`
	Proved bool `json:"proved"`
}

type loadWire struct {
	Number int         `json:"n"`
	Layout int         `json:"layout"`
	Cut    length.Len  `json:"cut"`
	Rough  []roughWire `json:"rough"`
	Pieces []pieceWire `json:"pieces"`
}

type roughWire struct {
	Fabric int           `json:"f"`
	Panel  int           `json:"p"`
	Box    [4]length.Len `json:"box"` // x, y, width, height
}

type pieceWire struct {
	Line     int          `json:"l"`
	Copy     int          `json:"c"`
	Rough    int          `json:"r,omitempty"`
	Turn     int          `json:"t,omitempty"`
	Mirrored bool         `json:"m,omitempty"`
	Corners  []length.Len `json:"o"`
}

type panelWire struct {
	Fabric int             `json:"f"`
	Panel  int             `json:"p"`
	Size   [2]length.Len   `json:"size"`
	Rough  [][6]length.Len `json:"rough,omitempty"` // load, rough cut, x, y, width, height
	ByHand [][6]length.Len `json:"hand,omitempty"`  // line, copy, x, y, width, height
}

type buyWire struct {
	Fabric int        `json:"f"`
	Width  length.Len `json:"width"`
	Length length.Len `json:"length"`
}

type shortWire struct {
	Fabric  int        `json:"f"`
	Missing []int      `json:"missing"`
	Length  length.Len `json:"length"`
}

// MarshalJSON writes the compact form.
func (p Planned) MarshalJSON() ([]byte, error) {
	var w planWire
	for i := range p.Loads {
		w.Loads = append(w.Loads, loadToWire(&p.Loads[i]))
	}
	for i := range p.Stock {
		w.Stock = append(w.Stock, panelToWire(&p.Stock[i]))
	}
	for _, b := range p.Buy {
		w.Buy = append(w.Buy, buyWire(b))
	}
	for _, s := range p.Short {
		w.Short = append(w.Short, shortWire(s))
	}
	if p.Fewest != (queue.Fewest{}) {
		w.Fewest = &queueFewest{p.Fewest.Loads, p.Fewest.Proved}
	}
	return json.Marshal(w)
}

// UnmarshalJSON reads it back, equal to the last nanometre.
func (p *Planned) UnmarshalJSON(b []byte) error {
	var w planWire
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	*p = Planned{}
	for i := range w.Loads {
		l, err := loadFromWire(&w.Loads[i])
		if err != nil {
			return err
		}
		p.Loads = append(p.Loads, l)
	}
	for i := range w.Stock {
		p.Stock = append(p.Stock, panelFromWire(&w.Stock[i]))
	}
	for _, b := range w.Buy {
		p.Buy = append(p.Buy, queue.Buy(b))
	}
	for _, s := range w.Short {
		p.Short = append(p.Short, queue.Short(s))
	}
	if w.Fewest != nil {
		p.Fewest = queue.Fewest{Loads: w.Fewest.Loads, Proved: w.Fewest.Proved}
	}
	return nil
}

// MarshalJSON writes the load in the compact form.
func (k KeptLoad) MarshalJSON() ([]byte, error) { return json.Marshal(loadToWire(&k.Load)) }

// UnmarshalJSON reads it back.
func (k *KeptLoad) UnmarshalJSON(b []byte) error {
	var w loadWire
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	l, err := loadFromWire(&w)
	k.Load = l
	return err
}

func loadToWire(l *queue.Load) loadWire {
	w := loadWire{Number: l.Number, Layout: l.Layout, Cut: l.CutLength}
	for _, r := range l.RoughCuts {
		w.Rough = append(w.Rough, roughWire{r.Fabric, r.Panel, [4]length.Len{r.X, r.Y, r.Width, r.Height}})
	}
	for _, p := range l.Pieces {
		corners := make([]length.Len, 0, 2*len(p.Outline))
		for _, c := range p.Outline {
			corners = append(corners, c.X, c.Y)
		}
		w.Pieces = append(w.Pieces, pieceWire{p.Line, p.Copy, p.RoughCut, p.Turn, p.Mirrored, corners})
	}
	return w
}

func loadFromWire(w *loadWire) (queue.Load, error) {
	l := queue.Load{Number: w.Number, Layout: w.Layout, CutLength: w.Cut}
	for _, r := range w.Rough {
		l.RoughCuts = append(l.RoughCuts, queue.RoughCut{Fabric: r.Fabric, Panel: r.Panel,
			X: r.Box[0], Y: r.Box[1], Width: r.Box[2], Height: r.Box[3]})
	}
	for _, p := range w.Pieces {
		if len(p.Corners)%2 != 0 {
			return l, fmt.Errorf("load %d: a corner has no second number", w.Number)
		}
		o := make(outline.Outline, len(p.Corners)/2)
		for i := range o {
			o[i] = outline.Point{X: p.Corners[2*i], Y: p.Corners[2*i+1]}
		}
		l.Pieces = append(l.Pieces, queue.Placement{Line: p.Line, Copy: p.Copy, RoughCut: p.Rough,
			Turn: p.Turn, Mirrored: p.Mirrored, Outline: o})
	}
	return l, nil
}

func panelToWire(u *queue.PanelUse) panelWire {
	w := panelWire{Fabric: u.Fabric, Panel: u.Panel, Size: [2]length.Len{u.Width, u.Height}}
	for _, r := range u.RoughCuts {
		w.Rough = append(w.Rough, [6]length.Len{length.Len(r.Load), length.Len(r.RoughCut), r.X, r.Y, r.Width, r.Height})
	}
	for _, h := range u.ByHand {
		w.ByHand = append(w.ByHand, [6]length.Len{length.Len(h.Line), length.Len(h.Copy), h.X, h.Y, h.Width, h.Height})
	}
	return w
}

func panelFromWire(w *panelWire) queue.PanelUse {
	u := queue.PanelUse{Fabric: w.Fabric, Panel: w.Panel, Width: w.Size[0], Height: w.Size[1]}
	for _, r := range w.Rough {
		u.RoughCuts = append(u.RoughCuts, queue.FromPanel{Load: int(r[0]), RoughCut: int(r[1]), X: r[2], Y: r[3], Width: r[4], Height: r[5]})
	}
	for _, h := range w.ByHand {
		u.ByHand = append(u.ByHand, queue.HandCut{Line: int(h[0]), Copy: int(h[1]), X: h[2], Y: h[3], Width: h[4], Height: h[5]})
	}
	return u
}

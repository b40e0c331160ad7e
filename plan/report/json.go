package report

import (
	"io"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// JSON writes q as one JSON object. Lengths are millimetres as decimal
// numbers with up to six places, so that no nanometre is rounded away.
func JSON(w io.Writer, q *queue.Queue) error { return encode(w, planOf(q)) }

// mm prints a length as millimetres.
type mm length.Len

func (l mm) MarshalJSON() ([]byte, error) { return length.Len(l).AppendMM(nil), nil }

// degrees prints micro-degrees as degrees.
type degrees int

func (d degrees) MarshalJSON() ([]byte, error) {
	// A micro-degree is to a degree what a nanometre is to a millimetre.
	return length.Len(d).AppendMM(nil), nil
}

// corners prints an outline as [[x,y],…].
type corners outline.Outline

func (c corners) MarshalJSON() ([]byte, error) {
	b := []byte{'['}
	for i, p := range c {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '[')
		b = p.X.AppendMM(b)
		b = append(b, ',')
		b = p.Y.AppendMM(b)
		b = append(b, ']')
	}
	return append(b, ']'), nil
}

type jsonPlan struct {
	Quilt  string      `json:"quilt"`
	Mat    jsonMat     `json:"mat"`
	Gap    mm          `json:"gap_mm"`
	Margin mm          `json:"margin_mm"`
	Lines  []jsonLine  `json:"lines"`
	Loads  []jsonLoad  `json:"loads"`
	Stock  []jsonPanel `json:"stock"`
	Buy    []jsonBuy   `json:"buy"`
	Short  []jsonShort `json:"short"`
	Fewest jsonFewest  `json:"fewest_possible"`
}

type jsonMat struct {
	Width  mm      `json:"width_mm"`
	Height mm      `json:"height_mm"`
	Usable jsonBox `json:"usable"`
}

type jsonBox struct {
	X      mm `json:"x_mm"`
	Y      mm `json:"y_mm"`
	Width  mm `json:"width_mm"`
	Height mm `json:"height_mm"`
}

type jsonLine struct {
	Line    int     `json:"line"`
	Fabric  string  `json:"fabric"`
	Shape   string  `json:"shape"`
	Size    string  `json:"size"`
	Label   string  `json:"label,omitempty"`
	Count   int     `json:"count"`
	ByHand  bool    `json:"by_hand,omitempty"`
	Outline corners `json:"outline_mm"`
}

type jsonLoad struct {
	Number    int         `json:"number"`
	Layout    int         `json:"layout"`
	RoughCuts []jsonRough `json:"rough_cuts"`
	Pieces    []jsonPiece `json:"pieces"`
	CutLength mm          `json:"cut_length_mm"`
}

type jsonRough struct {
	Fabric string `json:"fabric"`
	Panel  int    `json:"panel"`
	jsonBox
}

type jsonPiece struct {
	Line     int     `json:"line"`
	Copy     int     `json:"copy"`
	Fabric   string  `json:"fabric"`
	RoughCut int     `json:"rough_cut"`
	Turn     degrees `json:"turn_degrees"`
	Mirrored bool    `json:"mirrored"`
	Outline  corners `json:"outline_mm"`
}

type jsonPanel struct {
	Fabric    string      `json:"fabric"`
	Panel     int         `json:"panel"`
	Width     mm          `json:"width_mm"`
	Height    mm          `json:"height_mm"`
	RoughCuts []jsonFrom  `json:"rough_cuts"`
	ByHand    []jsonByOwn `json:"by_hand"`
}

type jsonFrom struct {
	Load     int `json:"load"`
	RoughCut int `json:"rough_cut"`
	X        mm  `json:"x_mm"`
	Y        mm  `json:"y_mm"`
}

type jsonByOwn struct {
	Line int `json:"line"`
	Copy int `json:"copy"`
	jsonBox
}

type jsonBuy struct {
	Fabric string `json:"fabric"`
	Width  mm     `json:"width_mm"`
	Length mm     `json:"length_mm"`
}

type jsonShort struct {
	Fabric string          `json:"fabric"`
	Pieces int             `json:"pieces"`
	Length mm              `json:"length_mm"`
	Lines  []jsonShortLine `json:"lines"`
}

type jsonShortLine struct {
	Line   int `json:"line"`
	Pieces int `json:"pieces"`
}

type jsonFewest struct {
	Loads  int  `json:"loads"`
	Proved bool `json:"proved"`
}

func planOf(q *queue.Queue) jsonPlan {
	m := q.List.Mat
	p := jsonPlan{
		Quilt: q.List.Quilt,
		Mat: jsonMat{mm(m.Width), mm(m.Height), jsonBox{
			mm((m.Width - m.UsableWidth) / 2), mm((m.Height - m.UsableHeight) / 2),
			mm(m.UsableWidth), mm(m.UsableHeight)}},
		Gap:    mm(q.List.Gap),
		Margin: mm(q.List.Margin),
		Lines:  []jsonLine{}, Loads: []jsonLoad{}, Stock: []jsonPanel{},
		Buy: []jsonBuy{}, Short: []jsonShort{},
		Fewest: jsonFewest{q.Fewest.Loads, q.Fewest.Proved},
	}
	for i := range q.List.Lines {
		p.Lines = append(p.Lines, lineOf(q, i))
	}
	for _, l := range q.Loads {
		p.Loads = append(p.Loads, loadOf(q, l))
	}
	for _, s := range q.Stock {
		p.Stock = append(p.Stock, panelOf(q, s))
	}
	for _, b := range q.Buy {
		p.Buy = append(p.Buy, jsonBuy{q.List.Fabrics[b.Fabric].Name, mm(b.Width), mm(b.Length)})
	}
	for _, s := range q.Short {
		p.Short = append(p.Short, shortOf(q, s))
	}
	return p
}

func lineOf(q *queue.Queue, i int) jsonLine {
	l := q.List.Lines[i]
	return jsonLine{
		Line: l.Number, Fabric: q.List.Fabrics[l.Fabric].Name, Shape: l.Shape, Size: l.Size, Label: l.Label,
		Count: countOf(q, i), ByHand: l.Kind != cutlist.OnMat, Outline: corners(outlineOf(q, i)),
	}
}

// countOf is a line's count; for a binding it is the strips that it takes,
// those placed and those missing.
func countOf(q *queue.Queue, line int) int {
	if q.List.Lines[line].Kind != cutlist.Binding {
		return q.List.Lines[line].Count
	}
	n := 0
	for _, s := range q.Short {
		n += s.Missing[line]
	}
	for _, s := range q.Stock {
		for _, h := range s.ByHand {
			if h.Line == line {
				n++
			}
		}
	}
	return n
}

// outlineOf is a line's outline; a strip's runs across the whole width of the
// first panel of its fabric.
func outlineOf(q *queue.Queue, line int) outline.Outline {
	l := q.List.Lines[line]
	if l.Outline != nil {
		return l.Outline
	}
	width := cutlist.BuyWidth
	for _, s := range q.Stock {
		if s.Fabric == l.Fabric {
			width = s.Width
			break
		}
	}
	return outline.Outline{{X: 0, Y: 0}, {X: width, Y: 0}, {X: width, Y: l.StripWidth}, {X: 0, Y: l.StripWidth}}
}

func loadOf(q *queue.Queue, l queue.Load) jsonLoad {
	j := jsonLoad{Number: l.Number, Layout: l.Layout, RoughCuts: []jsonRough{}, Pieces: []jsonPiece{}, CutLength: mm(l.CutLength)}
	for _, r := range l.RoughCuts {
		j.RoughCuts = append(j.RoughCuts, jsonRough{q.List.Fabrics[r.Fabric].Name, r.Panel,
			jsonBox{mm(r.X), mm(r.Y), mm(r.Width), mm(r.Height)}})
	}
	for _, p := range l.Pieces {
		line := q.List.Lines[p.Line]
		j.Pieces = append(j.Pieces, jsonPiece{line.Number, p.Copy, q.List.Fabrics[line.Fabric].Name,
			p.RoughCut, degrees(p.Turn), p.Mirrored, corners(p.Outline)})
	}
	return j
}

func panelOf(q *queue.Queue, s queue.PanelUse) jsonPanel {
	j := jsonPanel{Fabric: q.List.Fabrics[s.Fabric].Name, Panel: s.Panel, Width: mm(s.Width), Height: mm(s.Height),
		RoughCuts: []jsonFrom{}, ByHand: []jsonByOwn{}}
	for _, r := range s.RoughCuts {
		j.RoughCuts = append(j.RoughCuts, jsonFrom{r.Load, r.RoughCut, mm(r.X), mm(r.Y)})
	}
	for _, h := range s.ByHand {
		j.ByHand = append(j.ByHand, jsonByOwn{q.List.Lines[h.Line].Number, h.Copy,
			jsonBox{mm(h.X), mm(h.Y), mm(h.Width), mm(h.Height)}})
	}
	return j
}

func shortOf(q *queue.Queue, s queue.Short) jsonShort {
	j := jsonShort{Fabric: q.List.Fabrics[s.Fabric].Name, Length: mm(s.Length), Lines: []jsonShortLine{}}
	for i, n := range s.Missing {
		if n > 0 {
			j.Pieces += n
			j.Lines = append(j.Lines, jsonShortLine{q.List.Lines[i].Number, n})
		}
	}
	return j
}

package cutlist

import (
	"fmt"
	"strings"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// List is a cut list that has been read without a mistake.
type List struct {
	Quilt   string
	Unit    length.Unit // the unit its lengths are printed in: the first `units`, else inches
	Seam    length.Len
	Ruler   bool // `allowance ruler`
	Gap     length.Len
	Margin  length.Len
	Mat     Mat
	Fabrics []Fabric
	Lines   []Line // piece lines in the order of the file
}

// Mat is the sticky sheet and the part of it the blade reaches, centred.
type Mat struct{ Width, Height, UsableWidth, UsableHeight length.Len }

// Inside is how much of the mat a piece has when margin of fabric must be left
// round it: the part the blade reaches, or less where the margin is wider than
// the mat's rim, because rough cuts lie on the mat. It may be below zero.
func (m Mat) Inside(margin length.Len) (width, height length.Len) {
	return min(m.UsableWidth, m.Width-2*margin), min(m.UsableHeight, m.Height-2*margin)
}

// Fabric is one fabric statement.
type Fabric struct {
	Name     string
	Line     int     // where it stands in the file, from 1
	Stock    []Panel // one entry for each single panel (`4 of 18 x 21` makes four); none: buy what it takes
	OneWay   bool    // no turning at all
	Sheds    bool
	FaceDown bool
	// ShrinkAcross and ShrinkAlong are in millionths: 3.5 % is 35 000.
	ShrinkAcross, ShrinkAlong int64
	Setting                   string // what she dials in on the machine
}

// Panel is one piece of stock: Width across the grain (selvage to selvage),
// Height along the lengthwise grain.
type Panel struct{ Width, Height length.Len }

// BuyWidth is the usable width of a fabric without stock.
const BuyWidth = 40 * length.Inch

// BuyStep is the step fabric is sold in: an eighth of a yard, or 10 cm.
func BuyStep(u length.Unit) length.Len {
	if u == length.In {
		return length.Yard / 8
	}
	return 10 * length.Centimetre
}

// bindingSpare is how much longer than the quilt's edge its binding is, for
// joining and turning corners.
const bindingSpare = 10 * length.Inch

// Kind says how a line is cut.
type Kind uint8

// On the mat, or by hand in one of three ways.
const (
	OnMat   Kind = iota
	ByHand       // a rectangle cut at the table: Outline is its rectangle
	Strips       // Count strips StripWidth wide across the fabric
	Binding      // as many strips StripWidth wide as Length asks for
)

// Grain says which turns a piece may take.
type Grain uint8

// Quarter turns unless said otherwise. On a one-way fabric the fabric wins:
// no turn at all.
const (
	QuarterTurns Grain = iota
	Lengthwise         // as written: half turns only
	Crosswise          // first number along the lengthwise grain: Outline is already turned; half turns only
	AnyGrain           // any turn
)

// Line is one piece line.
type Line struct {
	Number     int // line in the file, from 1
	Fabric     int // index into List.Fabrics
	Kind       Kind
	Count      int    // pieces or strips; 0 for Binding, whose strips follow from Length
	Shape      string // the shape's plain singular name: "square", "half-square triangle", "strip", "binding", or the name of her own
	Size       string // its cut size as she would say it: "2 1/2", "2 1/2 x 4 1/2"; for showing only
	Label      string // may be empty
	Grain      Grain
	Trimmed    bool
	Fussy      bool
	Outline    outline.Outline // the cut outline seen from the right side, bounding box at 0,0; nil for Strips and Binding
	StripWidth length.Len      // for Strips and Binding
	Length     length.Len      // for Binding: how long its strips must be together
}

// Say is the line as she would say it, with cut sizes: "24 squares 2 1/2",
// "1 strip 3", "binding 2 1/2 around 44 x 52".
// Outlines of her own are called by their names: "6 Leaf".
func (l Line) Say() string {
	_, known := shapes[strings.ReplaceAll(l.Shape, "-", " ")]
	switch {
	case l.Kind == Binding:
		return l.Shape + " " + l.Size
	case !known && l.Kind != Strips:
		return fmt.Sprintf("%d %s", l.Count, l.Shape)
	}
	return count(l.Count, l.Shape) + " " + l.Size
}

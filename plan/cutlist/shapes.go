package cutlist

import (
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
)

// row is how a shape is asked for in a piece line.
type row struct {
	kind     shape.Kind
	name     string // plain singular
	numbers  int    // how many its SIZE has
	measured bool   // takes `side` or `height`
	angled   bool   // takes 45 or 60
	handed   bool   // takes left or right
	example  string // as one writes several of them
}

// plural is its name for several.
func (s row) plural() string { return s.name + "s" }

// said is the shape in a sentence.
func (s row) said() mistake.Shape { return mistake.Shape(s.name) }

// shapes are all rows by their names, written with spaces and in the singular.
var shapes = rowsByName(
	row{kind: shape.Square, name: "square", numbers: 1, example: "squares 2 1/2"},
	row{kind: shape.Rectangle, name: "rectangle", numbers: 2, example: "rectangles 2 1/2 x 4 1/2"},
	row{kind: shape.HalfSquare, name: "half-square triangle", numbers: 1, example: "half-square triangles 2 7/8"},
	row{kind: shape.QuarterSquare, name: "quarter-square triangle", numbers: 1, example: "quarter-square triangles 5 1/4"},
	row{kind: shape.HalfRectangle, name: "half-rectangle triangle", numbers: 2, handed: true, example: "half-rectangle triangles 3 x 5, left"},
	row{kind: shape.Equilateral, name: "equilateral triangle", numbers: 1, measured: true, example: "equilateral triangles 3 1/2"},
	row{kind: shape.Hexagon, name: "hexagon", numbers: 1, measured: true, example: "hexagons 1 1/2"},
	row{kind: shape.HalfHexagon, name: "half hexagon", numbers: 1, measured: true, example: "half hexagons 1 1/2"},
	row{kind: shape.Octagon, name: "octagon", numbers: 1, measured: true, example: "octagons 4 1/2"},
	row{kind: shape.Diamond, name: "diamond", numbers: 1, measured: true, angled: true, example: "diamonds 60 2 1/2"},
	row{kind: shape.Parallelogram, name: "parallelogram", numbers: 2, angled: true, handed: true, example: "parallelograms 45 3 x 2, left"},
	row{kind: shape.Trapezoid, name: "trapezoid", numbers: 3, example: "trapezoids 4 x 2 x 3"},
	row{kind: shape.Trapezoid, name: "tumbler", numbers: 3, example: "tumblers 4 x 2 x 3"},
	row{kind: shape.Trapezoid, name: "wedge", numbers: 3, example: "wedges 4 x 2 x 3"},
	row{kind: shape.Circle, name: "circle", numbers: 1, example: "circles 3"},
	row{kind: shape.QuarterCircle, name: "quarter circle", numbers: 1, example: "quarter circles 3"},
	row{kind: shape.Own, name: "outline", example: "outlines Leaf"},
)

func rowsByName(rows ...row) map[string]row {
	table := map[string]row{}
	for _, s := range rows {
		shapesInOrder = append(shapesInOrder, s)
		table[strings.ReplaceAll(s.name, "-", " ")] = s
	}
	return table
}

// shapesInOrder are the rows in the order of the contract, for suggestions.
var shapesInOrder []row

// names are what the shapes are called, for one piece or for several.
func names(several bool) []string {
	out := []string{"strips"}
	if !several {
		out[0] = "strip"
	}
	for _, s := range shapesInOrder {
		if several {
			out = append(out, s.plural())
		} else {
			out = append(out, s.name)
		}
	}
	return out
}

// otherNames are names that a cut list has others for, in the singular, and
// what to write for them.
var otherNames = map[string]say.Sentence{
	"hst": write("half-square triangles"), "qst": write("quarter-square triangles"), "hrt": write("half-rectangle triangles"),
	"half square": write("half-square triangles"), "quarter square": write("quarter-square triangles"),
	"half rectangle": write("half-rectangle triangles"),
	"triangle":       mistake.WhichTriangle.Say(),
	"piece":          mistake.WhichShape.Say(),
	"border":         write("rectangles 4 x 40, by hand"),
	"sashing":        mistake.OrStrips.Say(),
	"rhombus":        write("diamonds"),
	"rhombuse":       write("diamonds"),
	"trapezium":      write("trapezoids"),
}

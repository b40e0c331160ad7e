package drawing

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"example.org/matside/plan/length"
)

// DXF writes the drawing as DXF R12 (AC1009) in ASCII: a LINE for a single
// cut, a POLYLINE for several in one go, each on the layer of its fabric. DXF
// has y up, so the mat's bottom left corner is 0,0; one unit is a millimetre.
func (d Drawing) DXF(w io.Writer) error {
	x := dxf{height: d.Height}
	x.pair(999, "true size, in millimeters")
	x.header(d)
	layers := d.layers()
	x.tables(layers)
	x.pair(0, "SECTION")
	x.pair(2, "ENTITIES")
	for i, g := range d.Groups {
		x.paths(layers[i].name, g.Paths)
	}
	if d.Frame != nil {
		x.paths(layers[len(layers)-1].name, d.Frame)
	}
	x.pair(0, "ENDSEC")
	x.pair(0, "EOF")
	_, err := w.Write(x.b.Bytes())
	return err
}

// layer is a name and one of the format's numbered colours.
type layer struct {
	name   string
	colour int
}

// layers are those of the groups and, where there is a frame, the mat's last.
func (d Drawing) layers() []layer {
	const white, colours, grey = 7, 6, 8                      // 1 to 6 are red, yellow, green, cyan, blue, magenta
	names := namer{"MAT": true, "0": true, "DEFPOINTS": true} // the last two have a meaning of their own
	var all []layer
	for i, g := range d.Groups {
		colour := white // black on white paper
		if i > 0 {
			colour = (i-1)%colours + 1
		}
		all = append(all, layer{names.name(dxfName(g.Name)), colour})
	}
	if d.Frame != nil {
		all = append(all, layer{"MAT", grey})
	}
	return all
}

// dxfName is a name as R12's layers go: at most 31 of A-Z, 0-9, $, - and _;
// here some room is left for a number behind it.
func dxfName(s string) string {
	const most = 24
	plain := strings.ToUpper(strings.Map(unmarked, norm.NFD.String(s)))
	plain = dashed(plain, func(r rune) bool { return 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' })
	if plain == "" {
		return "FABRIC"
	}
	return strings.TrimSuffix(plain[:min(most, len(plain))], "-")
}

// unmarked drops accents that stand as characters of their own.
func unmarked(r rune) rune {
	if unicode.Is(unicode.Mn, r) {
		return -1
	}
	return r
}

// dxf writes group codes and their values, a line each.
type dxf struct {
	b      bytes.Buffer
	height length.Len
}

func (x *dxf) pair(code int, value string) { fmt.Fprintf(&x.b, "%3d\n%s\n", code, value) }

func (x *dxf) number(code, n int) { x.pair(code, fmt.Sprint(n)) }

// point writes a place on the mat; 0 stands for the third axis.
func (x *dxf) point(code int, px, py length.Len) {
	x.pair(code, px.MM())
	x.pair(code+10, (x.height - py).MM())
	x.pair(code+20, "0")
}

func (x *dxf) header(d Drawing) {
	x.pair(0, "SECTION")
	x.pair(2, "HEADER")
	x.variable("$ACADVER")
	x.pair(1, "AC1009")
	for _, corner := range []struct {
		name string
		x, y length.Len
	}{{"$EXTMIN", 0, d.Height}, {"$EXTMAX", d.Width, 0}} {
		x.variable(corner.name)
		x.point(10, corner.x, corner.y)
	}
	x.variable("$LUNITS") // lengths are shown as decimals
	x.number(70, 2)
	x.pair(0, "ENDSEC")
}

func (x *dxf) variable(name string) { x.pair(9, name) }

func (x *dxf) tables(layers []layer) {
	x.pair(0, "SECTION")
	x.pair(2, "TABLES")
	x.table("LTYPE", 1)
	x.pair(0, "LTYPE")
	x.pair(2, "CONTINUOUS")
	x.number(70, 0)
	x.pair(3, "Solid line")
	x.number(72, 65)
	x.number(73, 0)
	x.pair(40, "0")
	x.pair(0, "ENDTAB")
	x.table("LAYER", len(layers)+1)
	for _, l := range append([]layer{{"0", 7}}, layers...) {
		x.pair(0, "LAYER")
		x.pair(2, l.name)
		x.number(70, 0)
		x.number(62, l.colour)
		x.pair(6, "CONTINUOUS")
	}
	x.pair(0, "ENDTAB")
	x.pair(0, "ENDSEC")
}

func (x *dxf) table(name string, entries int) {
	x.pair(0, "TABLE")
	x.pair(2, name)
	x.number(70, entries)
}

func (x *dxf) paths(layer string, paths []Path) {
	for _, p := range paths {
		if len(p.Points) == 2 && !p.Closed {
			x.pair(0, "LINE")
			x.pair(8, layer)
			x.point(10, p.Points[0].X, p.Points[0].Y)
			x.point(11, p.Points[1].X, p.Points[1].Y)
			continue
		}
		x.polyline(layer, p)
	}
}

func (x *dxf) polyline(layer string, p Path) {
	closed := 0
	if p.Closed {
		closed = 1
	}
	x.pair(0, "POLYLINE")
	x.pair(8, layer)
	x.number(66, 1) // vertices follow
	x.pair(10, "0")
	x.pair(20, "0")
	x.pair(30, "0")
	x.number(70, closed)
	for _, at := range p.Points {
		x.pair(0, "VERTEX")
		x.pair(8, layer)
		x.point(10, at.X, at.Y)
	}
	x.pair(0, "SEQEND")
	x.pair(8, layer)
}

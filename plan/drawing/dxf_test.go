package drawing_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"example.org/matside/plan/drawing"
)

// reader asks ezdxf (MIT licence, general DXF library) what it finds in the
// file named: the version, what its audit complains of, and every straight
// stretch with its layer.
const reader = `
import ezdxf, json, sys
all = []
for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    audit = doc.audit()
    out = {"version": doc.dxfversion, "complaints": [str(e) for e in audit.errors + audit.fixes],
           "layers": sorted(l.dxf.name for l in doc.layers), "stretches": []}
    for e in doc.modelspace():
        if e.dxftype() == "LINE":
            points, closed = [e.dxf.start, e.dxf.end], False
        else:
            assert e.dxftype() == "POLYLINE", e.dxftype()
            points, closed = list(e.points()), e.is_closed
        pairs = list(zip(points, points[1:])) + ([(points[-1], points[0])] if closed else [])
        for a, b in pairs:
            out["stretches"].append([e.dxf.layer, a[0], a[1], b[0], b[1]])
    all.append(out)
json.dump(all, sys.stdout)
`

// python finds one that has a module.
func python(t *testing.T, module string) string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import "+module).Run() == nil {
			return name
		}
	}
	t.Skipf("no Python with %s", module)
	return ""
}

// found is a file as that reader found it.
type found struct {
	Version    string
	Complaints []string
	Layers     []string
	Stretches  [][5]any
}

// TestDXFRead: ezdxf reads each load, finds nothing to complain of, and finds
// the cuts of the drawing turned over, on a layer for each group.
func TestDXFRead(t *testing.T) {
	args := []string{"-c", reader}
	var drawings []drawing.Drawing
	for _, q := range plans()[:3] {
		for _, opt := range []drawing.Options{{}, {Outlines: true, NoFrame: true}} {
			d := drawing.Of(q.List, &q.Loads[0], opt)
			var b bytes.Buffer
			if err := d.DXF(&b); err != nil {
				t.Fatal(err)
			}
			name := filepath.Join(t.TempDir(), "load.dxf")
			if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
				t.Fatal(err)
			}
			args, drawings = append(args, name), append(drawings, d)
		}
	}
	out, err := exec.Command(python(t, "ezdxf"), args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	var all []found
	if err := json.Unmarshal(out, &all); err != nil || len(all) != len(drawings) {
		t.Fatalf("%v\n%s", err, out)
	}
	for i, f := range all {
		compare(t, f, drawings[i])
	}
}

func compare(t *testing.T, f found, d drawing.Drawing) {
	t.Helper()
	if f.Version != "AC1009" || len(f.Complaints) > 0 {
		t.Errorf("%s: version %s, %v", d.Title, f.Version, f.Complaints)
	}
	want := wantStretches(d)
	if len(f.Stretches) != len(want) {
		t.Fatalf("%s: %d stretches, want %d", d.Title, len(f.Stretches), len(want))
	}
	for i, s := range f.Stretches {
		got := segment{s[1].(float64), s[2].(float64), s[3].(float64), s[4].(float64)}
		h := float64(d.Height) / 1e6
		for _, off := range []float64{got.ax - want[i].ax, got.ay - (h - want[i].ay), got.bx - want[i].bx, got.by - (h - want[i].by)} {
			if math.Abs(off) > 1e-9 {
				t.Fatalf("%s: stretch %d is %v, want %v turned over", d.Title, i, got, want[i])
			}
		}
	}
	layers := len(d.Groups) + 1 // and layer 0
	if d.Frame != nil {
		layers++
	}
	// ezdxf adds a layer of its own for dimension points.
	if n := len(f.Layers); n != layers && n != layers+1 {
		t.Errorf("%s: layers %v", d.Title, f.Layers)
	}
}

func wantStretches(d drawing.Drawing) (all []segment) {
	for _, g := range d.Groups {
		for _, p := range g.Paths {
			all = append(all, segments(p.Points, p.Closed)...)
		}
	}
	for _, p := range d.Frame {
		all = append(all, segments(p.Points, p.Closed)...)
	}
	return all
}

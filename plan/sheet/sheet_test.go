package sheet

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutlist/edit"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/testdata/cutlists"
)

// TestMain keeps the random laws quick, unless asked for the long form.
func TestMain(m *testing.M) {
	flag.Parse()
	if os.Getenv("MATSIDE_LONG") == "1" {
		if err := flag.Set("rapid.checks", "5000"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

func read(t interface{ Fatalf(string, ...any) }, text string) *cutlist.List {
	list, err := cutlist.Read("test", []byte(text), nil)
	if err != nil {
		t.Fatalf("%s\n%v", text, err)
	}
	return list
}

func written(t interface{ Fatalf(string, ...any) }, table Table) []byte {
	var b bytes.Buffer
	if err := table.CSV(&b); err != nil {
		t.Fatalf("%v", err)
	}
	return b.Bytes()
}

// TestCutList makes cut lists of tables as people write them.
func TestCutList(t *testing.T) {
	for _, c := range []struct {
		name, table, want string
		opt               Options
	}{
		{"plain", "Count,Shape,Size,Fabric,Label\n24,squares,2 1/2,Ink,A\n8,rectangle,2 1/2 x 4 1/2,Ink,B\n", "quilt Q\nunits in\nfabric Ink\n\ncut from Ink\n24 squares 2 1/2 for A\n8 rectangles 2 1/2 x 4 1/2 for B\n", Options{}},
		{"as a spreadsheet of another country writes it", "\ufeffQty;Cloth;Cut size (cm);For\r\n12;Tiefblau, fein;6,5;A\r\n4;Sand;6,5 x 11,5;B\r\n\r\n2;Tiefblau, fein;8;\r\n",
			"quilt Q\nunits cm\nfabric \"Tiefblau, fein\"\nfabric Sand\n\ncut from \"Tiefblau, fein\"\n12 squares 6.5 for A\n\ncut from Sand\n4 rectangles 6.5 x 11.5 for B\n\ncut from \"Tiefblau, fein\"\n2 squares 8\n", Options{}},
		{"width and height, tabs, finished", "how many\tpatch\twidth (in)\theight (in)\tfinished\tcolour\tnotes\n6\thalf-square triangle\t3\t\tyes\tRust\t\n2.0\t\t3\t46\t\tRust\tby hand\n",
			"quilt Q\nunits in\nfabric Rust\n\ncut from Rust\n6 half-square triangles 3 finished\n2 rectangles 3 x 46, by hand\n", Options{}},
		{"finished sizes by their heading", "count,finished size,fabric\n6,3,Ink\n", "quilt Q\nunits in\nfabric Ink\n\ncut from Ink\n6 squares 3 finished\n", Options{}},
		{"columns as she calls them", "a,b,c\n6,3,Ink\n", "quilt Q\nunits mm\nfabric Ink\n\ncut from Ink\n6 squares 3\n", Options{Unit: length.Mm, Columns: map[string]string{"count": "A", "size": "2", "fabric": "c"}}},
		{"units that change", "count,size,unit,fabric,notes\n6,3,in,Ink,\n5,70,mm,Ink,\"fussy, lengthwise\"\n", "quilt Q\nunits in\nfabric Ink\n\ncut from Ink\n6 squares 3\nunits mm\n5 squares 70, lengthwise, fussy\n", Options{}},
		{"by hand", "count,shape,size,fabric\n,binding,2 1/2 around 44 x 52,Ink\n3,strip,2,Ink\n", "quilt Q\nunits in\nfabric Ink\n\ncut from Ink\nbinding 2 1/2 around 44 x 52\n3 strips 2\n", Options{}},
		{"settings", "count,shape,size,fabric\n,seam,0 3/8,\n,allowance,ruler,\n3,square,2,Ink\n", "quilt Q\nunits in\nfabric Ink\nseam 0 3/8\nallowance ruler\n\ncut from Ink\n3 squares 2\n", Options{}},
		{"cells made harmless", "count,size,fabric\n3,'@2,'=1+1\n", "", Options{}},
		{"harmless names", "count,size,fabric\n3,2,'=SUM(A1)\n", "quilt Q\nunits in\nfabric \"=SUM(A1)\"\n\ncut from \"=SUM(A1)\"\n3 squares 2\n", Options{}},
	} {
		c.opt.Quilt = "Q"
		got, err := CutList([]byte(c.table), c.opt)
		if c.want == "" {
			if err == nil {
				t.Errorf("%s: it is taken as\n%s", c.name, got)
			}
			continue
		}
		if err != nil || got != c.want {
			t.Errorf("%s: %v\n%s\nwant\n%s", c.name, err, got, c.want)
		}
	}
}

// TestWrong: what is wrong is told with its row, all of it, and nothing comes
// of the table.
func TestWrong(t *testing.T) {
	for _, c := range []struct {
		table string
		says  []string
	}{
		{"size,fabric\n3,Ink\n", []string{"no column for count (how many pieces)", `"size", "fabric"`}},
		{"count,fabric\n3,Ink\n", []string{"no column for size, or width and height"}},
		{"x,y\n1,2\n", []string{"count", "size", "for fabric", `"x", "y"`}},
		{"", []string{"it is empty"}},
		{"count,size,fabric\n", []string{"no row below the headings"}},
		{"count,size,fabric\n2,3,\"Ink\n", []string{"no table"}},
		{"count,size,fabric\n2,3,\xff\n", []string{"UTF-8"}},
		{"count,width (in),height (cm),fabric\n2,3,4,Ink\n", []string{"different units"}},
		{"count,size,fabric\n2,3,Ink\n\nx,3,Ink\n2,,Ink\n2,3,\n2,2-Jan,Ink\n-1,3,Ink\n", []string{"row 4: \"x\" is no count", "row 5: the size is missing", "row 6: the fabric is missing", "row 7: \"2-Jan\" is a date", "row 8: \"-1\" is no count"}},
		{"count,shape,size,fabric\n2,squaers,3,Ink\n2,square,30,Ink\n", []string{"row 2: ", "did you mean `squares`?", "row 3: "}},
		{"count,size,fabric\n2,3 # all,Ink\n2,3,\"In\"\"k\"\n2,3,\"I\nnk\"\n2,x,Ink\n", []string{"row 2: the size holds a #", "row 3: the fabric holds a quotation mark", "row 4: the fabric holds a line break", "row 5: "}},
		{"count,size,unit,fabric\n2,3,ells,Ink\n", []string{`row 2: no unit is called "ells"`}},
	} {
		got, err := CutList([]byte(c.table), Options{Quilt: "Q"})
		if err == nil || got != "" {
			t.Errorf("%q is taken as %q", c.table, got)
			continue
		}
		for _, want := range c.says {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%q: %v\ndoesn't say %q", c.table, err, want)
			}
		}
	}
	_, err := CutList([]byte("count,size,fabric\n2,3,Ink"), Options{Quilt: "Q", Columns: map[string]string{"size": "Grösse"}})
	if err == nil || !strings.Contains(err.Error(), `no column is headed "Grösse"`) {
		t.Errorf("a column that isn't there: %v", err)
	}
	var p Problems
	if _, err := CutList([]byte("count,size,fabric\n2,3,Ink\nx,3,Ink"), Options{Quilt: "Q"}); !errors.As(err, &p) || p[0].Row != 3 {
		t.Errorf("%v", err)
	}
}

// TestHarmless is law (1), and that no cell begins as a formula does.
func TestHarmless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.String(), rapid.StringMatching(`'{0,3}[=+@\-\t\r\nab]{0,4}`)).Draw(t, "cell")
		safe := Harmless(s)
		if Meant(safe) != s {
			t.Fatalf("%q comes back as %q", s, Meant(safe))
		}
		if safe != "" && strings.ContainsRune(starts, []rune(safe)[0]) {
			t.Fatalf("%q is run", safe)
		}
	})
}

// anyList draws a cut list in words.
func anyList(t *rapid.T) string {
	name := rapid.OneOf(rapid.StringMatching(`[A-Za-z0-9#:;.,=@+'é雨-]{1,8}( [a-z#=]{1,3})?`), rapid.SampledFrom([]string{"=1+1", "for", "from 3", "2 1/2", "-"}))
	named := func(what string) string {
		return edit.Name(strings.Join(strings.Fields(name.Draw(t, what)), " "))
	}
	lines := []string{"quilt " + named("quilt")}
	if rapid.Bool().Draw(t, "settings") {
		lines = append(lines, "units cm", "seam 3/4", "mat 30 x 30 usable 28 x 28", "margin 0.5")
	}
	for i := range rapid.IntRange(1, 3).Draw(t, "fabrics") {
		f := edit.Name(fmt.Sprintf("%s %d", strings.Join(strings.Fields(name.Draw(t, "fabric")), " "), i))
		lines = append(lines, "fabric "+f, "cut from "+f)
		for range rapid.IntRange(1, 4).Draw(t, "lines") {
			lines = append(lines, rapid.SampledFrom([]string{"units in", "units cm", "units mm", "# a note"}).Draw(t, "before"))
			size := rapid.SampledFrom([]string{"1/2 in", "3/4 in", "2-1/2 in", "2½ in", "1 1/2 in", "38 mm", "3.2 cm"}).Draw(t, "size")
			bare := map[string]string{"in": "1/2", "cm": "3.5", "mm": "31.25"}[unitAt(lines)]
			if rapid.Bool().Draw(t, "bare") {
				size = bare
			}
			line := rapid.SampledFrom([]string{
				"%d squares %s", "%d half-square triangles %s finished", "%d diamonds 60 side %s", "%d hexagons height %s", "%d strips %s",
				"%d rectangles %s x 2 in, by hand", "%d half-rectangle triangles 2 in x %s, left", "%d circles %s",
			}).Draw(t, "shape")
			line = fmt.Sprintf(line, rapid.IntRange(1, 99).Draw(t, "count"), size)
			if rapid.Bool().Draw(t, "labelled") {
				line += ", for " + named("label")
			}
			if rapid.Bool().Draw(t, "grain") && !strings.Contains(line, "strip") && !strings.Contains(line, "by hand") {
				line += ", lengthwise"
			}
			lines = append(lines, line)
		}
		if rapid.Bool().Draw(t, "bound") {
			lines = append(lines, "binding 2 in around 40 in x 50 in")
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

func unitAt(lines []string) string {
	unit := "in"
	for _, l := range lines {
		if rest, ok := strings.CutPrefix(l, "units "); ok {
			unit = rest
		}
	}
	return unit
}

// TestThereAndBack: the table of pieces of any cut list, written and read
// again, is a cut list with the very same pieces.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { thereAndBack(t, anyList(t)) })
}

// TestThereAndBackOfOurs does the same with the cut lists of testdata.
func TestThereAndBackOfOurs(t *testing.T) {
	entries, err := cutlists.Files.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if text := string(cutlists.Read(e.Name())); !strings.Contains(text, "\noutline ") { // which no table carries
			thereAndBack(t, text)
		}
	}
}

func thereAndBack(t interface{ Fatalf(string, ...any) }, text string) {
	before := read(t, text)
	table := written(t, Pieces(text, before))
	made, err := CutList(table, Options{Quilt: "Q"})
	if err != nil {
		t.Fatalf("%s\n%s\n%v", text, table, err)
	}
	after := read(t, made)
	if len(before.Lines) != len(after.Lines) {
		t.Fatalf("%s\n%s\n%d lines, then %d", text, table, len(before.Lines), len(after.Lines))
	}
	for i, a := range before.Lines {
		b := after.Lines[i]
		if before.Fabrics[a.Fabric].Name != after.Fabrics[b.Fabric].Name {
			t.Fatalf("%s\n%s\nline %d is cut from %q, then %q", text, table, a.Number, before.Fabrics[a.Fabric].Name, after.Fabrics[b.Fabric].Name)
		}
		if before.Seam != after.Seam || before.Mat != after.Mat || before.Margin != after.Margin {
			t.Fatalf("%s\n%s\nits settings changed", text, table)
		}
		b.Number, b.Fabric, b.Size = a.Number, a.Fabric, a.Size // the size's words are in the list's first unit
		if !reflect.DeepEqual(a, b) {
			t.Fatalf("%s\n%s\n%+v, then %+v", text, table, a, b)
		}
	}
}

// everything is a list whose plan has each kind of row.
const everything = `quilt Everything
fabric "=Ink", 18 x 21, face down
fabric Sand
fabric Rust, 6 x 6
cut from "=Ink"
12 squares 2 1/2 for A
2 rectangles 3 x 12 for border, by hand
cut from Sand
9 half-square triangles 3 finished for C, any grain
2 strips 1/2
binding 2 1/2 around 30 x 40
cut from Rust
40 hexagons 1 for D`

func everyTable(t *testing.T) (*queue.Queue, map[string]Table) {
	list := read(t, everything)
	q := plan.Make(list, plan.Options{Effort: rect.Quick})
	return q, map[string]Table{"loads": Loads(q), "fabric": Fabric(q), "pieces": Pieces(everything, list)}
}

// TestTables: rows are as long as their heading, and what they count is what
// the plan has.
func TestTables(t *testing.T) {
	q, tables := everyTable(t)
	for name, table := range tables {
		for _, row := range table.Rows {
			if len(row) != len(table.Columns) {
				t.Errorf("%s: %q under %q", name, row, table.Columns)
			}
		}
	}
	sum := func(table Table, column string) (n int) {
		for i, c := range table.Columns {
			if c != column {
				continue
			}
			for _, row := range table.Rows {
				var m int
				_, _ = fmt.Sscan(row[i], &m)
				n += m
			}
		}
		return n
	}
	pieces, missing := 0, 0
	for _, l := range q.Loads {
		pieces += len(l.Pieces)
	}
	for _, s := range q.Short {
		for _, n := range s.Missing {
			missing += n
		}
	}
	if got := sum(tables["loads"], "pieces"); got != pieces || pieces == 0 {
		t.Errorf("the loads have %d pieces, the plan %d", got, pieces)
	}
	if got := sum(tables["fabric"], "pieces missing"); got != missing || missing == 0 {
		t.Errorf("%d are missing, in the plan %d", got, missing)
	}
	if got := sum(tables["pieces"], "count"); got != 12+2+9+2+40 {
		t.Errorf("the pieces are %d", got)
	}
	if row := tables["pieces"].Rows[3]; row[2] != "0 1/2" {
		t.Errorf("half an inch is written %q", row[2])
	}
}

// TestPythonReadsThem: Python's csv module (the standard library's) finds the
// cells that we wrote.
func TestPythonReadsThem(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is missing")
	}
	_, tables := everyTable(t)
	for name, table := range tables {
		run := exec.Command(python, "-c", "import csv,json,sys,io\njson.dump(list(csv.reader(io.TextIOWrapper(sys.stdin.buffer,'utf-8',newline=''))),sys.stdout)")
		run.Stdin = bytes.NewReader(written(t, table))
		out, err := run.Output()
		if err != nil {
			t.Fatal(err)
		}
		var got [][]string
		if err := json.Unmarshal(out, &got); err != nil {
			t.Fatal(err)
		}
		for i, row := range append([][]string{table.Columns}, table.Rows...) {
			for k, cell := range row {
				if want := Harmless(cell); got[i][k] != want {
					t.Errorf("%s, row %d: %q, want %q", name, i+1, got[i][k], want)
				}
			}
		}
	}
}

// FuzzCutList: whatever the bytes, they end in a cut list that reads, or in an
// error; and no row became anything but a piece line.
func FuzzCutList(f *testing.F) {
	f.Add("count,size,fabric\n24,2 1/2,Ink\n")
	f.Add("\ufeffQty;Shape;Cut size (cm);Fabric;For;Notes\r\n12;square;6,5;Ink;A;by hand\r\n")
	f.Add("count\tsize\tunit\tfabric\tfinished\n6\t3 x 5\tin\t'=x\tyes\n,binding\n")
	f.Add("count,shape,size,fabric\n,binding,2 around 3 x 4,\"a \"\" b\"\n1,outline,Leaf,\"x\ny\"\n")
	f.Fuzz(func(t *testing.T, table string) {
		text, err := CutList([]byte(table), Options{Quilt: "Q"})
		if err != nil {
			if text != "" {
				t.Fatalf("an error, and %q", text)
			}
			return
		}
		list := read(t, text)
		rows := 0
		r := csv.NewReader(strings.NewReader(table))
		r.Comma, r.FieldsPerRecord = separator([]byte(table)), -1
		for {
			if _, err := r.Read(); err != nil {
				break
			}
			rows++
		}
		if len(list.Lines) >= rows || list.Quilt != "Q" {
			t.Fatalf("%d rows became\n%s", rows, text)
		}
	})
}

package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/drawing"
	"example.org/matside/plan/queue"
)

// cutterFile is the command that draws loads for a cutter, in one format.
type cutterFile struct {
	format string // as its command and its files are called
	write  func(drawing.Drawing, io.Writer) error
	how    planning
	out    output
	opt    drawing.Options
	load   int
}

func newDrawing(w world, format string) *cobra.Command {
	d := &cutterFile{format: format, write: drawing.Drawing.SVG}
	if format == "dxf" {
		d.write = drawing.Drawing.DXF
	}
	name := strings.ToUpper(format)
	c := &cobra.Command{
		Use:   format + " [FILE]",
		Short: "Draw each load as " + name + " at true size, for the cutter",
		Long: "Draw each load as " + name + " at true size in millimeters: a group for each fabric, each cut line\n" +
			"once, cuts between pieces before those along the waste. The mat's frame is a group\n" +
			"of its own: leave it out or don't cut it. Without FILE it draws the loads still to cut of\n" +
			"the quilt under way, pieces to be cut again too.\n\n" +
			"The folder is made if it isn't there. Measure one piece of the first load before you cut\n" +
			"the rest: what reads a drawing may scale it. The cutter's maker's instructions come first.",
		Example: fmt.Sprintf("  matside %[1]s throw.cutlist -o loads\n  matside %[1]s throw.cutlist --load 3 -o third.%[1]s\n"+
			"  matside %[1]s throw.cutlist --load 3 -o - --no-frame", format),
		Args: fileOrNone,
		RunE: func(c *cobra.Command, args []string) error { return d.run(c.Context(), w, dataFile(c), args) },
	}
	if format == "dxf" {
		c.Long = strings.Replace(c.Long, "a group for each", "R12, a layer for each", 1)
		c.Long = strings.Replace(c.Long, "is a group\n", "is a layer\n", 1)
	}
	d.how.options(c)
	d.out.options(c, "the `FOLDER` for the files, or a file for one load; - is standard output")
	c.Flags().IntVar(&d.load, "load", 0, "draw load `N` alone")
	c.Flags().BoolVar(&d.opt.Outlines, "outlines", false, "a closed outline round every piece; edges that pieces share are cut twice")
	c.Flags().BoolVar(&d.opt.NoFrame, "no-frame", false, "leave out the mat's frame")
	return c
}

// fileOrNone takes one cut list, or none for the quilt under way.
func fileOrNone(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return oneFile(c, args)
}

func (d *cutterFile) run(ctx context.Context, w world, db string, args []string) error {
	if d.out.to == "" {
		return usagef("`matside %s` needs a place for the files: -o FOLDER, or -o - for standard output", d.format)
	}
	loads, err := d.loads(ctx, w, db, args)
	if err != nil {
		return err
	}
	all := loads
	if loads, err = only(loads, d.load); err != nil {
		return err
	}
	if d.single() && len(loads) != 1 {
		return usagef("there are %d loads, and only one fits in one file: say which by --load, or name a folder", len(loads))
	}
	var files []file
	for _, l := range loads {
		f, err := made(d.path(l.load, all), func(to io.Writer) error { return d.write(drawing.Of(l.list, l.load, d.opt), to) })
		if err != nil {
			return err
		}
		files = append(files, f)
	}
	if d.out.to == "-" {
		return send(w, files[0].text)
	}
	return d.keep(w, files)
}

func (d *cutterFile) keep(w world, files []file) error {
	undo := func() {}
	if !d.single() {
		var err error
		if undo, err = d.out.folder(); err != nil {
			return err
		}
	}
	if err := d.out.write(w, files); err != nil {
		undo()
		return err
	}
	tellWritten(w, files, d.out.to)
	return nil
}

// single says whether one file is asked for: by a name that ends as the
// format's files do, or standard output.
func (d *cutterFile) single() bool {
	if d.out.to == "-" {
		return true
	}
	info, err := os.Stat(d.out.to)
	return strings.EqualFold(filepath.Ext(d.out.to), "."+d.format) && (err != nil || !info.IsDir())
}

// path is a load's file: load-03-drawing-2.svg. The drawing's number is the
// one she is shown at the cutter; loads with the same number are cut alike.
func (d *cutterFile) path(l *queue.Load, all []drawn) string {
	if d.single() {
		return d.out.to
	}
	most := 0
	for _, o := range all {
		most = max(most, o.load.Number)
	}
	return filepath.Join(d.out.to, fmt.Sprintf("load-%0*d-drawing-%d.%s", len(fmt.Sprint(most)), l.Number, l.Layout, d.format))
}

// drawn is a load and the list that its lines count in.
type drawn struct {
	list *cutlist.List
	load *queue.Load
}

// loads plans the cut list, or takes the loads to come of the quilt under way.
func (d *cutterFile) loads(ctx context.Context, w world, db string, args []string) (all []drawn, err error) {
	if len(args) == 0 {
		return underWay(w, db)
	}
	s, err := readSource(w, args[0])
	if err != nil {
		return nil, err
	}
	q, err := d.how.whole(ctx, w, s)
	if err != nil {
		return nil, err
	}
	for i := range q.Loads {
		all = append(all, drawn{q.List, &q.Loads[i]})
	}
	if len(all) == 0 {
		return nil, nothingOnTheMat(s.name)
	}
	return all, nil
}

// whole is a plan that was left to finish.
func (p *planning) whole(ctx context.Context, w world, s source) (*queue.Queue, error) {
	q, err := p.make(ctx, w, s)
	if errors.Is(err, errInterrupted) {
		return nil, errNotWritten
	}
	return q, err
}

func nothingOnTheMat(name string) error {
	return problem{
		what: fmt.Sprintf("%s has nothing to cut on the mat", printable(name)),
		hint: "`matside plan` shows what is cut by hand, and what is missing. Nothing was written.",
	}
}

// underWay are the loads still to cut of the quilt worked on last.
func underWay(w world, db string) (all []drawn, err error) {
	state, err := readState(w, db)
	if err != nil {
		return nil, err
	}
	q := state.Latest()
	if q == nil {
		return nil, problem{"no quilt is under way", "Name a cut list; nothing was written.", nil}
	}
	left := q.ToCome()
	for i := range left {
		l := left[i].Load
		l.Number = q.LoadsDone() + i + 1 // as the screen counts: load 2 of 2
		all = append(all, drawn{q.ListOf(&left[i]), &l})
	}
	if len(all) == 0 {
		return nil, problem{fmt.Sprintf("every load of %s is cut", printable(q.Name)), "Name its cut list to draw them all; nothing was written.", nil}
	}
	return all, nil
}

// only picks load number n; 0 is all of them.
func only(loads []drawn, n int) ([]drawn, error) {
	if n == 0 {
		return loads, nil
	}
	var numbers []string
	for _, l := range loads {
		if l.load.Number == n {
			return []drawn{l}, nil
		}
		numbers = append(numbers, fmt.Sprint(l.load.Number))
	}
	hint := "The loads are " + numbers[0] + " to " + numbers[len(numbers)-1] + "; nothing was written."
	if len(numbers) == 1 {
		hint = "The only one is load " + numbers[0] + "; nothing was written."
	}
	return nil, problem{fmt.Sprintf("there is no load %d", n), hint, errNoLoad}
}

// errNoLoad is returned when a load is asked for that isn't there.
var errNoLoad = errors.New("no such load")

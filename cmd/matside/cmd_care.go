package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"example.org/matside/plan/say"
	"example.org/matside/session"
)

// care are the commands that look after what is kept: the quilts, the blade
// and the data file itself.
func care(w world) []*cobra.Command {
	return []*cobra.Command{newShelf(w), newBlade(w), newCheck(w), newBackup(w), newRestore(w), newExport(w), newImport(w)}
}

func newCheck(w world) *cobra.Command {
	var repair bool
	var probe string
	c := &cobra.Command{
		Use: "check", Short: "Look whether the data file is whole; put it right with --repair", Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			if probe != "" {
				return session.Probe(probe)
			}
			path, err := session.Path(dataFile(c), runtime.GOOS, w.getenv)
			if err != nil {
				return err
			}
			if session.IsNew(path) {
				fmt.Fprintf(w.out, "%s: nothing is kept there yet\n", printable(path))
				return nil
			}
			look := session.Check
			if repair {
				look = session.Repair
			}
			report, err := look(path, session.OpenOptions{})
			if err == nil || !report.Sound() {
				writeCheck(w.out, path, report)
			}
			if err == nil && !repair && !report.Sound() {
				err = problem{"the data file is not whole", "`matside check --repair` keeps all that can be read.", session.ErrDamaged}
			}
			return err
		},
	}
	c.Flags().BoolVar(&repair, "repair", false, "keep all that can be read, and the damaged files beside")
	c.Flags().StringVar(&probe, "probe", "", "try one data file in a process of its own")
	_ = c.Flags().MarkHidden("probe")
	return c
}

func writeCheck(w io.Writer, path string, r session.Report) {
	fmt.Fprintf(w, "%s: %s\n", printable(path), count(int(r.Events), "entry", "entries"))
	for _, f := range r.Faults {
		fmt.Fprintf(w, "  not whole: %s\n", printable(f))
	}
	for _, n := range r.Lost {
		fmt.Fprintf(w, "  lost: entry %d\n", n)
	}
	for _, n := range r.Left {
		fmt.Fprintf(w, "  can't follow what is lost: entry %d\n", n)
	}
	if r.Kept != "" {
		fmt.Fprintf(w, "  the damaged files are kept as %s\n", printable(r.Kept))
	}
	if r.Sound() {
		fmt.Fprintln(w, "  all is whole")
	}
}

// withPath is a command that takes one file name besides the data file.
func withPath(w world, use, short string, do func(path, file string) error) *cobra.Command {
	return &cobra.Command{
		Use: use, Short: short,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return usagef("write it as `matside %s`", use)
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			path, err := session.Path(dataFile(c), runtime.GOOS, w.getenv)
			if err != nil {
				return err
			}
			return do(path, args[0])
		},
	}
}

func newBackup(w world) *cobra.Command {
	return withPath(w, "backup FILE", "Copy all that is kept into one file", func(path, file string) error {
		if _, err := os.Lstat(file); !errors.Is(err, fs.ErrNotExist) {
			return problem{fmt.Sprintf("%s is there already", printable(file)), "Choose another name; nothing was written.", err}
		}
		n, err := session.Backup(path, file, session.OpenOptions{})
		if err == nil {
			fmt.Fprintf(w.out, "%s holds all: %s\n", printable(file), count(int(n), "entry", "entries"))
		}
		return err
	})
}

func newRestore(w world) *cobra.Command {
	c := withPath(w, "restore BACKUP", "Go back to a backup; what was there is kept in a backup too", func(path, file string) error {
		_, kept, err := session.Restore(path, file, session.OpenOptions{})
		return replaced(w, kept, err)
	})
	c.Long = c.Short + ".\nThe backups made at each start stand beside the data file."
	return c
}

func newExport(w world) *cobra.Command {
	c := &cobra.Command{
		Use: "export", Short: "Write all that is kept as JSON", Args: noWords,
		RunE: func(c *cobra.Command, _ []string) error {
			path, err := session.Path(dataFile(c), runtime.GOOS, w.getenv)
			if err != nil {
				return err
			}
			return session.Export(path, w.out, session.OpenOptions{})
		},
	}
	c.Flags().Bool("json", false, "as JSON, which it always is")
	return c
}

func newImport(w world) *cobra.Command {
	return withPath(w, "import FILE", "Take back what export wrote; what was there is kept in a backup", func(path, file string) error {
		r := w.in
		if file != "-" {
			f, err := os.Open(file)
			if err != nil {
				return unreadable(file, err, say.Nothing)
			}
			defer f.Close()
			r = f
		}
		_, kept, err := session.Import(path, r, session.OpenOptions{})
		return replaced(w, kept, err)
	})
}

func replaced(w world, kept string, err error) error {
	if err != nil {
		return err
	}
	fmt.Fprintln(w.out, strings.TrimSpace("It is in its place. "+keptAs(kept)))
	return nil
}

func keptAs(kept string) string {
	if kept == "" {
		return ""
	}
	return "What was there before is kept as " + printable(kept)
}

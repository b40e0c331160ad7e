package main

import (
	"fmt"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"strings"
	"time"

	"github.com/cpuguy83/go-md2man/v2/md2man"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// newMan is for whoever packs matside: it is not in the list of commands.
func newMan(w world) *cobra.Command {
	var out output
	c := &cobra.Command{
		Use: "man", Short: "Write the man pages into a folder", Args: noWords, Hidden: true,
		RunE: func(c *cobra.Command, _ []string) error {
			if out.to == "" || out.to == "-" {
				return usagef("`matside man` needs a folder: -o FOLDER")
			}
			files := manPages(c.Root(), out.to, builtAt())
			undo, err := out.folder()
			if err != nil {
				return err
			}
			if err := out.write(w, files); err != nil {
				undo()
				return err
			}
			tellWritten(w, files, out.to)
			return nil
		},
	}
	out.options(c, "the `FOLDER` for the pages")
	return c
}

// builtAt is the time of the commit this was built from, so that one commit
// makes the same pages on every run; the zero time where it isn't known.
func builtAt() time.Time {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return time.Time{}
	}
	at, err := time.Parse(time.RFC3339, setting(info, "vcs.time"))
	if err != nil {
		return time.Time{}
	}
	return at
}

// manPages are a page for each command, in section 1, and one for each help
// topic, in section 7. Their text is that of the command's help.
func manPages(root *cobra.Command, folder string, at time.Time) []file {
	var files []file
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		if !c.IsAvailableCommand() || c.IsAdditionalHelpTopicCommand() || c.Name() == "help" {
			return
		}
		name := manName(c)
		files = append(files, file{filepath.Join(folder, name+".1"), roff(name, 1, at, commandPage(c))})
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(root)
	for _, t := range topics() {
		name := root.Name() + "-" + t.name
		page := section("NAME", name+" - "+t.title) + section("DESCRIPTION", t.text) + section("SEE ALSO", "**matside(1)**")
		files = append(files, file{filepath.Join(folder, name+".7"), roff(name, 7, at, page)})
	}
	return files
}

// roff turns a page in Markdown into what man reads.
func roff(name string, section int, at time.Time, page string) []byte {
	head := fmt.Sprintf("%% %q %q %q %q %q\n\n", strings.ToUpper(name), strconv.Itoa(section), at.Format(time.DateOnly), "matside", "matside")
	return md2man.Render([]byte(head + page))
}

func section(title, text string) string {
	return "# " + title + "\n" + strings.TrimRight(text, "\n") + "\n\n"
}

// manName is a command's page: matside-mats-wash.
func manName(c *cobra.Command) string { return strings.ReplaceAll(c.CommandPath(), " ", "-") }

// commandPage is a command's help, in Markdown.
func commandPage(c *cobra.Command) string {
	page := section("NAME", manName(c)+" - "+c.Short) + section("SYNOPSIS", "**"+c.UseLine()+"**")
	if c.Long != "" {
		page += section("DESCRIPTION", escaped(c.Long))
	}
	page += optionsPage(c)
	if c.Example != "" {
		page += section("EXAMPLES", "    "+strings.ReplaceAll(strings.TrimSpace(c.Example), "\n  ", "\n    "))
	}
	return page + section("EXIT STATUS", escaped(strings.TrimSpace(exits))) + section("SEE ALSO", seeAlso(c))
}

func optionsPage(c *cobra.Command) string {
	var page strings.Builder
	list := func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		name := "**--" + f.Name + "**"
		if f.Shorthand != "" {
			name = "**-" + f.Shorthand + "**, " + name
		}
		value, usage := pflag.UnquoteUsage(f)
		if value != "" {
			name += " *" + value + "*"
		}
		fmt.Fprintf(&page, "%s\n: %s\n\n", name, escaped(usage))
	}
	c.NonInheritedFlags().VisitAll(list)
	c.InheritedFlags().VisitAll(list)
	return section("OPTIONS", page.String())
}

// seeAlso names the pages of a command's parent, its own commands and, for
// matside itself, the help topics.
func seeAlso(c *cobra.Command) string {
	var pages []string
	if c.HasParent() {
		pages = append(pages, "**"+manName(c.Parent())+"(1)**")
	}
	for _, sub := range c.Commands() {
		switch {
		case sub.IsAdditionalHelpTopicCommand():
			pages = append(pages, "**"+manName(sub)+"(7)**")
		case sub.IsAvailableCommand() && sub.Name() != "help":
			pages = append(pages, "**"+manName(sub)+"(1)**")
		}
	}
	return strings.Join(pages, ", ")
}

// escaped keeps what Markdown would take for a sign of its own.
func escaped(text string) string {
	return strings.NewReplacer("*", "\\*", "_", "\\_", "<", "\\<", "[", "\\[").Replace(text)
}

package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

const about = `matside plans the mat loads of a cut list and walks you through each of them:
fabric, press, load, cut, peel. It remembers every piece cut, and says when
the mat is due for washing.

The makers' instructions for cutter, blade, mat, iron and adhesive come first,
always.`

const exits = `
It ends with 0 when done, 1 when the cut list or the data is at fault,
2 when the command line is wrong, 130 when it was interrupted.
`

// run does one command line and returns the exit code.
func run(ctx context.Context, w world, args []string) int {
	out := &answers{Writer: w.out}
	w.out = out
	root := newRoot(w)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if out.err != nil {
		err = out.err
	}
	return tell(w.err, err)
}

func newRoot(w world) *cobra.Command {
	root := &cobra.Command{
		Use:           "matside",
		Short:         "Keep it open beside the cutter",
		Long:          about,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          known,
		RunE:          func(c *cobra.Command, _ []string) error { return resume(w, c, screens(w, false), "matside") },
	}
	root.SetIn(w.in)
	root.SetOut(w.out)
	root.SetErr(w.err)
	root.SetUsageTemplate(usage(root) + exits)
	root.SetFlagErrorFunc(optionError)
	root.PersistentFlags().String("db", "", "the data file (else MATSIDE_DB, else its usual place)")
	settingsOptions(root)
	root.CompletionOptions.DisableDefaultCmd = true
	root.SuggestionsMinimumDistance = 2
	root.AddCommand(newDemo(w), newPlan(w), newFabric(w), newCut(w), newStatus(w), newMats(w))
	root.AddCommand(outputs(w)...)
	root.AddCommand(care(w)...)
	root.AddCommand(newExamples(w), newVersion(w), newCompletion(w), newMan(w))
	for _, t := range topics() {
		root.AddCommand(topicHelp(t))
	}
	root.InitDefaultHelpCmd()
	refuseUnknownTopics(root)
	complete(root)
	sortIntoGroups(root)
	return root
}

// usage is Cobra's, with the help topics named as she asks for them.
func usage(root *cobra.Command) string {
	return strings.NewReplacer("Additional help topics:", "To read, by `matside help TOPIC`:",
		"{{rpad .CommandPath .CommandPathPadding}}", "{{rpad .Name .NamePadding }}").Replace(root.UsageTemplate())
}

// known refuses words that are no command, and suggests one that is.
func known(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	text := fmt.Sprintf("there is no command %q", printable(args[0]))
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		text += fmt.Sprintf("; did you mean `matside %s`?", near[0])
	}
	return usageError{errors.New(text)}
}

// oneFile asks for exactly one cut list.
func oneFile(c *cobra.Command, args []string) error {
	switch len(args) {
	case 1:
		return nil
	case 0:
		return usagef("`matside %s` needs the name of a cut list; - reads standard input", c.Name())
	default:
		return usagef("`matside %s` takes one cut list, not %d", c.Name(), len(args))
	}
}

// oneFileOrNone takes a cut list, or none.
func oneFileOrNone(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return oneFile(c, args)
}

// noWords refuses words after a command that takes none.
func noWords(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		return usagef("`matside %s` takes no %q", c.Name(), printable(args[0]))
	}
	return nil
}

// groups are the headings of the list of commands, in the order of an evening.
var groups = []struct {
	title    string
	commands []string
}{
	{"Beside the cutter:", []string{"demo", "cut", "status", "mats", "blade", "shelf"}},
	{"Plans, drawings and paper:", []string{"plan", "fabric", "svg", "dxf", "pdf", "csv"}},
	{"Your record:", []string{"backup", "restore", "check", "export", "import"}},
	{"About matside:", []string{"examples", "help", "completion", "version"}},
}

// sortIntoGroups puts each command under its heading, and the headings' words
// in order.
func sortIntoGroups(root *cobra.Command) {
	all := map[string]*cobra.Command{}
	for _, c := range root.Commands() {
		all[c.Name()] = c
	}
	for _, g := range groups {
		root.AddGroup(&cobra.Group{ID: g.title, Title: g.title})
		for _, name := range g.commands {
			if c := all[name]; c != nil {
				c.GroupID = g.title
				root.RemoveCommand(c)
				root.AddCommand(c) // the list goes by the order they came in
			}
		}
	}
}

func init() { cobra.EnableCommandSorting = false }

package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// shells are those that Cobra writes completions for.
var shells = []struct {
	name  string
	write func(root *cobra.Command, to io.Writer) error
}{
	{"bash", func(root *cobra.Command, to io.Writer) error { return root.GenBashCompletionV2(to, true) }},
	{"zsh", func(root *cobra.Command, to io.Writer) error { return root.GenZshCompletion(to) }},
	{"fish", func(root *cobra.Command, to io.Writer) error { return root.GenFishCompletion(to, true) }},
	{"powershell", func(root *cobra.Command, to io.Writer) error { return root.GenPowerShellCompletionWithDesc(to) }},
}

func newCompletion(w world) *cobra.Command {
	c := &cobra.Command{
		Use: "completion SHELL", Short: "Write completions for bash, zsh, fish or powershell",
		Long: "Write what a shell needs to complete matside's commands, options and file names.",
		Example: "  matside completion bash > ~/.local/share/bash-completion/completions/matside\n" +
			"  matside completion fish > ~/.config/fish/completions/matside.fish",
		RunE: func(c *cobra.Command, args []string) error {
			for _, s := range shells {
				if len(args) == 1 && args[0] == s.name {
					return s.write(c.Root(), w.out)
				}
			}
			return usagef("`matside completion` needs one of bash, zsh, fish, powershell")
		},
	}
	for _, s := range shells {
		c.ValidArgs = append(c.ValidArgs, s.name)
	}
	return c
}

// complete lets every command that takes a cut list complete its name, and
// help its topics.
func complete(c *cobra.Command) {
	if c.Name() == "help" {
		completeTopics(c)
	}
	if c.ValidArgsFunction == nil && c.ValidArgs == nil {
		c.ValidArgsFunction = cobra.NoFileCompletions
		if strings.Contains(c.Use, "FILE") {
			c.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				return []string{"cutlist"}, cobra.ShellCompDirectiveFilterFileExt
			}
		}
	}
	for _, sub := range c.Commands() {
		complete(sub)
	}
}

// completeTopics lets `matside help` complete the topics too.
func completeTopics(help *cobra.Command) {
	commands := help.ValidArgsFunction
	help.ValidArgsFunction = func(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
		words, how := commands(c, args, typed)
		for _, t := range topics() {
			if len(args) == 0 && strings.HasPrefix(t.name, typed) {
				words = append(words, t.name+"\t"+t.title)
			}
		}
		return words, how
	}
}

package main

import (
	"embed"
	"strings"

	"github.com/spf13/cobra"
)

// pages are the help topics, in Markdown: `matside help TOPIC` prints one, and
// the man pages are made of the same text.
//
//go:embed topics/*.md
var pages embed.FS

// topicNames are the help topics, in the order she needs them.
var topicNames = []string{"cutlist", "sizes", "evening", "screen", "washing", "drawings", "record", "cautions"}

// topic is one page of help that is no command.
type topic struct{ name, title, text string }

func topics() []topic {
	all := make([]topic, len(topicNames))
	for i, name := range topicNames {
		page, err := pages.ReadFile("topics/" + name + ".md")
		if err != nil {
			panic(err) // it is built in
		}
		title, text, _ := strings.Cut(string(page), "\n\n")
		all[i] = topic{name, strings.TrimPrefix(title, "# "), text}
	}
	return all
}

// topicHelp makes a topic a command without anything to run, which Cobra lists
// apart and prints as help.
func topicHelp(t topic) *cobra.Command {
	return &cobra.Command{Use: t.name, Short: t.title, Long: onScreen(t.text)}
}

// refuseUnknownTopics makes `matside help` end as any wrong command line does
// where there is nothing of that name; Cobra's own ends with 0.
func refuseUnknownTopics(root *cobra.Command) {
	for _, c := range root.Commands() {
		if c.Name() != "help" {
			continue
		}
		c.Short, c.Long, c.Run = "Help with a command or a topic", "", nil
		c.RunE = func(_ *cobra.Command, args []string) error {
			about, left, err := root.Find(args)
			if err != nil || len(left) > 0 {
				return usagef("there is no help with %q", printable(strings.Join(args, " ")))
			}
			return about.Help()
		}
	}
}

// onScreen is a page as it reads in a terminal: headings stand in capitals.
func onScreen(page string) string {
	lines := strings.Split(strings.TrimRight(page, "\n"), "\n")
	for i, line := range lines {
		if heading, ok := strings.CutPrefix(line, "## "); ok {
			lines[i] = strings.ToUpper(heading)
		}
	}
	return strings.Join(lines, "\n")
}

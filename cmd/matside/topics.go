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

// Untold starts Bubble Tea without the package early, to show what early is for.
package main

import (
	tea "github.com/charmbracelet/bubbletea"
)

type picture struct{}

func (picture) Init() tea.Cmd                         { return nil }
func (p picture) Update(tea.Msg) (tea.Model, tea.Cmd) { return p, nil }
func (picture) View() string                          { return "first picture" }

func main() { _, _ = tea.NewProgram(picture{}).Run() }

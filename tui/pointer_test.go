package tui

import (
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"example.org/matside/session"
)

// click presses and lets go the left button at x, y.
func (d *desk) click(x, y int) {
	d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft})
	d.after(500 * ms)
}

// zone is a cell of the zone with a name.
func (d *desk) zone(name string) (x, y int) {
	d.t.Helper()
	c := d.f.draw()
	for y := range c.H {
		for x := range c.W {
			if c.Hit(x, y) == name {
				return x, y
			}
		}
	}
	d.t.Fatalf("nothing to click for %q:\n%s", name, d.f.View())
	return 0, 0
}

func (d *desk) clickOn(name string) { d.click(d.zone(name)) }

func TestAClickAnywhereGoesOn(t *testing.T) {
	for _, size := range sizes {
		d := newDesk(t, size[0], size[1])
		d.click(size[0]-3, size[1]/2)
		if d.q().Step != session.Press {
			t.Errorf("%v: a click in the big area went to %v", size, d.q().Step)
		}
		for range 4 { // two fast double clicks
			d.click(size[0]-3, size[1]/2)
			d.clock = d.clock.Add(-420 * ms)
		}
		d.after(2 * time.Second)
		if d.q().Step != session.Lay {
			t.Errorf("%v: fast clicks went to %v", size, d.q().Step)
		}
		d.clickOn("back")
		if d.q().Step != session.Press {
			t.Errorf("%v: the label of Backspace went to %v", size, d.q().Step)
		}
		d.clickOn("leave")
		if !d.quit {
			t.Errorf("%v: the label of q does not leave", size)
		}
	}
}

func TestWhatIsDraggedOffIsNoClick(t *testing.T) {
	d := newDesk(t, 80, 24)
	x, y := d.zone("leave")
	d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	d.send(tea.MouseMsg{X: 40, Y: 8, Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft})
	d.send(tea.MouseMsg{X: 40, Y: 8, Action: tea.MouseActionPress, Button: tea.MouseButtonRight})
	d.send(tea.MouseMsg{X: 40, Y: 8, Action: tea.MouseActionRelease, Button: tea.MouseButtonRight})
	d.after(time.Second)
	if d.quit || d.q().Step != session.Fabric {
		t.Errorf("quit %v, at %v", d.quit, d.q().Step)
	}
}

// Labelled keys are as large as they can be: never under 6 by 2 cells, and 6
// by 3 where the window allows it (WCAG 2.2, 2.5.8 and 2.5.5, at 8 x 16 dots
// a cell).
func TestKeysAreLargeTargets(t *testing.T) {
	for _, size := range sizes {
		d := newDesk(t, size[0], size[1])
		rows := 2
		if size[1] >= 30 {
			rows = 3
		}
		c := d.f.draw()
		for _, name := range []string{"on", "back", "help", "leave"} {
			w, h := map[int]bool{}, map[int]bool{}
			for y := c.H - rows; y < c.H; y++ {
				for x := range c.W {
					if c.Hit(x, y) == name {
						w[x], h[y] = true, true
					}
				}
			}
			if len(w) < 6 || len(h) < rows {
				t.Errorf("%v: %s is a target of %d x %d cells", size, name, len(w), len(h))
			}
		}
	}
}

func TestPickingOnThePicture(t *testing.T) {
	peel := []string{"enter", "enter", "enter", "enter"}
	d := newDesk(t, 120, 40)
	d.key(peel...)
	d.key("x")
	d.sees("Choose a piece first")
	d.key("right")
	d.sees("A row 1, piece 1: 1 square 2 1/2, Plum")
	d.key("x", "down", "x", "right", "x", "x")
	d.sees("2 pieces crossed out on the picture.", "Enter 2 spoiled")
	d.key("enter")
	if got := spoiledOf(t, d); !reflect.DeepEqual(got, []int{0, 4}) {
		t.Errorf("spoiled %v, want those picked", got)
	}
	d = newDesk(t, 80, 24)
	d.key(peel...)
	d.clickOn("piece 3")
	d.clickOn("piece 6")
	d.sees("2 pieces crossed out")
	d.clickOn("piece 3")
	d.sees("1 piece crossed out")
	d.key("backspace")
	if strings.Contains(ansi.Strip(d.f.View()), "crossed out") || d.q().Step != session.Peel {
		t.Error("Backspace does not take the crosses off first")
	}
	d.clickOn("piece 5")
	d.key("2") // a count typed gives the crosses up
	d.sees("2 pieces spoiled")
	d.key("enter")
	if got := spoiledOf(t, d); !reflect.DeepEqual(got, []int{6, 7}) {
		t.Errorf("spoiled %v, want the last two", got)
	}
}

func TestTheCursorNamesPieces(t *testing.T) {
	d := newDesk(t, 120, 40)
	for range 7 {
		d.key("enter")
	}
	d.key("right", "down")
	d.sees("B row 2, piece 1: 1 half-square triangle 2 7/8, Oat, for", "wing")
	d.clickOn("piece 0")
	d.sees("A row 1, piece 1")
	if d.q().Step != session.Lay {
		t.Errorf("looking at a piece went to %v", d.q().Step)
	}
}

func TestRowsAreClicked(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("o")
	d.clickOn(cardZone(1))
	d.sees("> 2 Plum and Oat")
	d.send(tea.MouseMsg{X: 10, Y: 6, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelUp})
	d.sees("> 1 Plum")
	if n := len(d.book.done); n != 0 {
		t.Errorf("%d actions were written", n)
	}
}

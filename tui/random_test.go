package tui

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/session"
)

// Random sequences of keys, clicks, pastes and resizes: 300 in the usual
// tests, 10 000 with MATSIDE_LONG=1. A failure prints its seed;
// MATSIDE_SEED=n runs that sequence alone.
func TestRandomSequences(t *testing.T) {
	n := uint64(300)
	if os.Getenv("MATSIDE_LONG") == "1" {
		n = 10_000
	}
	if text := os.Getenv("MATSIDE_SEED"); text != "" {
		var seed uint64
		if _, err := fmt.Sscan(text, &seed); err != nil {
			t.Fatal(err)
		}
		sequence(t, seed, map[string]int{})
		return
	}
	seen := map[string]int{}
	for seed := range n {
		sequence(t, seed, seen)
	}
	t.Log("events by screen:", seen)
	for _, s := range []screen{walk{}, whichMat{}, wetMat{}, help{}, finished{}, pausing{}, overview{}, mats{}, days{}, shelf{}, sure{}, naming{}, working{},
		first{}, picking{}, picker{}, trouble{}, sheet{}, saveAs{}, writing{}, clash{}, planned{}, changed{}, choosing{}} {
		if seen[fmt.Sprintf("%T", s)] == 0 && n >= 10_000 {
			t.Errorf("no sequence came to %T", s)
		}
	}
}

// randomSizes are the windows the sequences begin in: the five, and one that
// is too small.
var randomSizes = append(slices.Clone(sizes), [2]int{40, 10})

// randomKeys are what is pressed: those that go on more often than others.
var randomKeys = strings.Fields(`enter enter enter enter space backspace esc tab up down left right home end pgup pgdown
	a b c d e f g h j k l m n o p r s t u v w x y 0 1 2 3 4 6 9 + - ? enter enter`)

// randomDesk is where a sequence begins: at the step with nothing beside the
// notebook, at the step with cut lists beside it, or on the first page; half
// of them at a screen further in, as the golden frames go there.
func randomDesk(t *testing.T, r *rand.Rand, w, h int) (*desk, *table) {
	t.Helper()
	further := r.IntN(2) == 0
	kind := r.IntN(3)
	if kind == 2 {
		if g := listFrames[r.IntN(len(listFrames))]; further {
			return listDesk(t, "", g.name, g.keys, w, h)
		}
		return atTable(t, w, h)
	}
	d := newDesk(t, w, h)
	if g := golden[r.IntN(len(golden))]; further {
		d.key(strings.Fields(g.keys)...)
		if g.after != nil {
			g.after(d)
		}
	}
	if kind == 0 {
		return d, nil
	}
	tab := newTable()
	tab.Files[lampList] = lampText
	tab.Where[d.f.quilt] = lampList
	d.f.desk, d.f.demo = tab, false
	d.run(d.f.follow())
	return d, tab
}

// The cut list of the quilt in hand, as the file has it.
const (
	lampList = "/home/ada/quilts/lamp-room.cutlist"
	lampText = "quilt Lamp Room\n"
)

// randomEdit writes what others might into the cut lists.
func randomEdit(tab *table, r *rand.Rand) string {
	texts := []string{lampText, "quilt Lamp Room\nfabric Ink\ncut from Ink\n4 squares 3\n", "quilt Lamp Room\nfabric Ink\ncut from Ink\n4 squaers 3\n", ""}
	text := texts[r.IntN(len(texts))]
	for path := range tab.Files {
		if strings.Contains(path, "lamp") {
			tab.Files[path] = text
		}
	}
	return fmt.Sprintf("the file is %q", text)
}

// sequence is one random evening. Whatever comes, in whatever rhythm: no
// panic, the frame fits its window, no piece is written down that no press of
// hers or click confirmed, and two keys lead out.
func sequence(t *testing.T, seed uint64, seen map[string]int) {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 6))
	size := randomSizes[r.IntN(len(randomSizes))]
	var log []string
	fail := func(why string, d *desk) {
		t.Fatalf("seed %d (MATSIDE_SEED=%d runs it again): %s\nafter %s\n%s", seed, seed, why, strings.Join(log, ", "), d.f.View())
	}
	d, tab := randomDesk(t, r, size[0], size[1])
	if d.f.quilt != 0 && r.IntN(3) == 0 {
		d.second("Porch Swing")
	}
	confirmed := recorded(d, tab) // presses that may confirm
	for range 1 + r.IntN(40) {
		does, confirms := randomEvent(d, r)
		if tab != nil && r.IntN(12) == 0 {
			does = randomEdit(tab, r)
		}
		log = append(log, does)
		seen[fmt.Sprintf("%T", d.f.screen)]++
		confirmed += confirms
		d.book.fail = max(r.IntN(12)-10, 0)
		if d.busy = r.IntN(4) == 0; !d.busy {
			d.release()
		}
		d.after(time.Duration(r.IntN(900)) * ms)
		if recorded(d, tab) > confirmed {
			fail("a step was written down that nobody confirmed", d)
		}
		if d.f.crash != nil {
			fail(d.f.crash.Error(), d)
		}
		fits(t, d)
		if d.quit {
			return
		}
	}
	d.book.fail = 0
	d.after(2 * time.Second)
	if s, ok := d.f.screen.(typist); ok && s.typing(d.f.view()) {
		d.key("ctrl+c")
	} else {
		d.key("q")
	}
	d.release() // of a save that leaving waits for; one that failed is shown instead
	if !d.quit {
		d.key("ctrl+c")
	}
	if !d.quit {
		fail("no way out in two keys", d)
	}
}

// recorded is how many steps were written down as done.
func recorded(d *desk, tab *table) int {
	all := d.book.done
	if tab != nil && tab.demo != nil {
		all = slices.Concat(all, tab.demo.done)
	}
	n := 0
	for _, a := range all {
		if _, ok := a.(session.GoOn); ok {
			n++
		}
	}
	return n
}

// randomEvent makes something happen, and returns what, and how many presses
// it was that may confirm a step.
func randomEvent(d *desk, r *rand.Rand) (does string, confirms int) {
	switch kind := r.IntN(12); kind {
	case 0:
		w, h := r.IntN(220), r.IntN(70)
		d.send(tea.WindowSizeMsg{Width: w, Height: h})
		return fmt.Sprintf("%dx%d", w, h), 0
	case 1:
		text := []rune(strings.Repeat("q\n\r \x1b[2J漢ż½", r.IntN(3)) + "y")
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: text, Paste: true})
		return "paste", 0
	case 2, 3:
		x, y := r.IntN(max(d.f.w, 1)+4)-2, r.IntN(max(d.f.h, 1)+4)-2
		d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
		d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft})
		return fmt.Sprintf("click %d,%d", x, y), 1
	case 4:
		button := []tea.MouseButton{tea.MouseButtonWheelUp, tea.MouseButtonWheelDown, tea.MouseButtonRight, tea.MouseButtonNone}[r.IntN(4)]
		d.send(tea.MouseMsg{X: r.IntN(200), Y: r.IntN(60), Action: tea.MouseAction(r.IntN(3)), Button: button})
		return "mouse", 0
	case 5:
		runes := []rune("wu?l13 ż漢oxsd")
		text := []rune{runes[r.IntN(len(runes))], runes[r.IntN(len(runes))], runes[r.IntN(len(runes))]}
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: text})
		return string(text), strings.Count(string(text), " ")
	}
	key := randomKeys[r.IntN(len(randomKeys))]
	d.send(keyMsg(key))
	if key == "enter" || key == "space" {
		return key, 1
	}
	return key, 0
}

// Evening runs the screens on an invented quilt, for the tests in a
// pseudo-terminal. Its argument makes something go wrong.
package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"syscall"
	"time"

	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui"
	"example.org/matside/tui/guard"
	"example.org/matside/tui/internal/fixture"
)

// book goes wrong where it is told to, and says on standard error what was
// written down in the end.
type book struct {
	*session.Ledger
	wrong string
}

func (b book) Do(id session.QuiltID, a session.Action) (session.State, error) {
	switch b.wrong {
	case "slow":
		time.Sleep(time.Second)
	case "panic in a command":
		panic("in a command")
	}
	return b.Ledger.Do(id, a)
}

func main() {
	guard.StandBy()
	wrong := os.Args[1]
	b := book{session.New(session.OpenOptions{Planner: fixture.OneByOne}), wrong}
	list, q := fixture.LampRoom()
	id, _, err := b.Start(session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q})
	if err != nil {
		panic(err)
	}
	calls := 0
	left := func(*session.State, *session.Quilt) (time.Duration, bool) {
		if calls++; wrong == "panic in View" && calls > 2 {
			panic("in View")
		}
		return time.Hour, true
	}
	open := func(context.Context, func(say.Sentence)) (tui.Opened, error) {
		return tui.Opened{Book: b, Quilt: id}, nil
	}
	now := func() time.Time {
		if wrong == "panic in Update" && bytes.Contains(debug.Stack(), []byte("(*frame).key(")) {
			panic("in Update")
		}
		return time.Now()
	}
	ends := map[string]func(){
		"panic in a goroutine": func() { panic("in a goroutine") },
		"killed":               func() { _ = syscall.Kill(os.Getpid(), syscall.SIGKILL) },
	}
	if end := ends[wrong]; end != nil {
		time.AfterFunc(2*time.Second, end)
	}
	release := guard.Terminal(os.Stdout)
	err = tui.Run(context.Background(), open, tui.Options{Advice: tui.Advice{Left: left}, Now: now})
	release()
	st := b.State()
	fmt.Fprintf(os.Stderr, "step %v, crash %v, interrupted %v\n", st.Quilt(id).Step, errors.Is(err, tui.ErrCrash), errors.Is(err, tui.ErrInterrupted))
}

package main

import (
	"fmt"
	"io"
	"sync"
	"time"

	"example.org/matside/plan/say"
)

// patience is how long planning may take before a word of it is shown.
const patience = time.Second

// progress is a line on standard error while planning takes long: what is
// being done, and for how many seconds. The zero value shows nothing.
type progress struct {
	to    io.Writer
	mu    sync.Mutex
	step  string
	drawn bool
	stop  chan struct{}
	gone  chan struct{}
}

// showProgress begins to watch, where errors go to a terminal.
func showProgress(w world) *progress {
	p := &progress{}
	if !isTerminal(w.err) {
		return p
	}
	tick := time.NewTicker(patience)
	p.watch(w.err, tick.C)
	return p
}

// watch draws the line at every tick, until end.
func (p *progress) watch(to io.Writer, ticks <-chan time.Time) {
	p.to, p.stop, p.gone = to, make(chan struct{}), make(chan struct{})
	start := time.Now()
	go func() {
		defer close(p.gone)
		for {
			select {
			case <-p.stop:
				return
			case now := <-ticks:
				p.draw(now.Sub(start))
			}
		}
	}()
}

// clearLine goes to the start of the line and wipes it.
const clearLine = "\r\x1b[K"

func (p *progress) draw(since time.Duration) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.drawn = true
	fmt.Fprintf(p.to, "%smatside: %s, %d s (Ctrl+C: the best so far)", clearLine, p.step, int(since.Seconds()+0.5))
}

// say notes what is being done.
func (p *progress) say(step say.Sentence) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.step = step.String()
}

// end stops the watching and wipes the line.
func (p *progress) end() {
	if p.stop == nil {
		return
	}
	close(p.stop)
	<-p.gone
	if p.drawn {
		fmt.Fprint(p.to, clearLine)
	}
}

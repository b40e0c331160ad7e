package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/matside/plan"
	"example.org/matside/plan/say"
)

// lines hands over each piece that is written.
type lines chan string

func (l lines) Write(b []byte) (int, error) {
	l <- string(b)
	return len(b), nil
}

// A line is drawn at each tick, over the one before, and wiped at the end.
func TestProgress(t *testing.T) {
	out, ticks := make(lines, 1), make(chan time.Time)
	var p progress
	p.watch(out, ticks)
	for seconds, step := range []say.Sentence{plan.Packing.Say(), plan.Fitting.Say()} {
		p.say(step)
		ticks <- time.Now().Add(time.Duration(seconds+2) * time.Second)
		got := <-out // drawn, before the next step is said
		if want := fmt.Sprintf("%smatside: %s, %d s (Ctrl+C: the best so far)", clearLine, step, seconds+2); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if line := strings.TrimPrefix(got, clearLine); len(line) >= 80 {
			t.Errorf("%q is too wide for a window of 80", line)
		}
	}
	p.end()
	if got := <-out; got != clearLine {
		t.Errorf("at the end %q", got)
	}
}

// Nothing is drawn where planning was quick, or where errors go to no terminal.
func TestNoProgress(t *testing.T) {
	var out bytes.Buffer
	var p progress
	p.watch(&out, make(chan time.Time))
	p.say(plan.Packing.Say())
	p.end()
	q := showProgress(world{err: &out})
	q.say(plan.Packing.Say())
	q.end()
	if out.Len() > 0 {
		t.Errorf("%q", &out)
	}
}

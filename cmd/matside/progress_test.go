package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// A line is drawn at each tick, over the one before, and wiped at the end.
func TestProgress(t *testing.T) {
	var out bytes.Buffer
	ticks := make(chan time.Time)
	var p progress
	p.watch(&out, ticks)
	p.say("packing the loads")
	ticks <- time.Now().Add(2 * time.Second)
	p.say("fitting rough cuts to the fabric")
	ticks <- time.Now().Add(3 * time.Second)
	p.end()
	want := clearLine + "matside: packing the loads, 2 s (Ctrl+C: the best so far)" +
		clearLine + "matside: fitting rough cuts to the fabric, 3 s (Ctrl+C: the best so far)" + clearLine
	if got := out.String(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	for _, line := range strings.Split(out.String(), clearLine) {
		if len(line) >= 80 {
			t.Errorf("%q is too wide for a window of 80", line)
		}
	}
}

// Nothing is drawn where planning was quick, or where errors go to no terminal.
func TestNoProgress(t *testing.T) {
	var out bytes.Buffer
	var p progress
	p.watch(&out, make(chan time.Time))
	p.say("packing the loads")
	p.end()
	q := showProgress(world{err: &out})
	q.say("packing the loads")
	q.end()
	if out.Len() > 0 {
		t.Errorf("%q", &out)
	}
}

package plain

import (
	"bufio"
	"context"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/matside/session"
)

// reader takes answers from lines. One buffer reads them all.
type reader struct {
	ctx   context.Context
	lines chan string
}

// newReader reads lines until the input ends; then, and when ctx is done,
// every question is answered by errLeft.
func newReader(ctx context.Context, in io.Reader) *reader {
	r := &reader{ctx, make(chan string)}
	go func() {
		defer close(r.lines)
		const longest = 4096 // an answer is a number; the rest of a longer line is read over
		buf := bufio.NewReaderSize(in, longest)
		for {
			part, more, err := buf.ReadLine()
			line := string(part)
			for more && err == nil {
				_, more, err = buf.ReadLine()
			}
			if err != nil {
				return
			}
			select {
			case r.lines <- line:
			case <-ctx.Done():
				return
			}
		}
	}()
	return r
}

// line waits for a line; an alarm that comes meanwhile is told.
func (r *reader) line(t *talk) (string, error) {
	for {
		var alarm <-chan time.Time
		if d := t.alarms().Next(t.Now()); d > 0 {
			alarm = time.After(d)
		}
		select {
		case line, ok := <-r.lines:
			if !ok {
				return "", errLeft
			}
			return strings.TrimSpace(line), nil
		case <-alarm:
			t.ring()
		case <-r.ctx.Done():
			return "", errLeft
		}
	}
}

func (r *reader) choose(t *talk, q question) (int, error) {
	for {
		t.choices(q)
		line, err := r.line(t)
		if err != nil {
			return 0, err
		}
		if line == "" {
			return 0, nil
		}
		if n, err := strconv.Atoi(line); err == nil && n >= 1 && n <= len(q.choices) {
			return n - 1, nil
		}
		t.say(t.words.PlainPick(len(q.choices)))
	}
}

func (r *reader) number(t *talk, least, most int) (int, error) {
	for {
		t.say(t.words.FromTo(least, most))
		line, err := r.line(t)
		if err != nil {
			return 0, err
		}
		n, err := strconv.Atoi(line)
		if line == "" {
			n, err = 0, nil
		}
		if err == nil && n >= least && n <= most {
			return n, nil
		}
	}
}

func (r *reader) text(t *talk) (string, error) { return r.line(t) }

// text: a demo gives no names.
func (s *itself) text(*talk) (string, error) { return "", errLeft }

// short are the questions whose answers are few words: they stand in a line.
var short = []string{"step", "peel", "over", "paused", "more"}

// choices says the answers there are, each with its number: in one line, or
// in a line each where they are many, or have numbers or commas of their own.
func (t *talk) choices(q question) {
	parts := make([]string, len(q.choices))
	const many = 6
	apart := len(q.choices) > many
	for i, c := range q.choices {
		parts[i] = strconv.Itoa(i+1) + " " + c
		apart = apart || strings.Contains(c, ", ") || c != "" && c[0] >= '0' && c[0] <= '9'
	}
	if !apart || slices.Contains(short, q.about) {
		t.say(t.words.PlainChoices(strings.Join(parts, ", ")))
		return
	}
	t.say(t.words.PlainPick(len(parts)))
	for i, c := range q.choices {
		t.say("  " + numbered(i+1, c))
	}
}

func numbered(n int, says string) string { return strconv.Itoa(n) + ": " + says }

// itself answers every question for a demo nobody watches: one piece of the
// first load is spoiled, the mat is washed when it is due and once anyway.
type itself struct {
	ctx     context.Context
	spoiled bool
	washed  bool
}

func (s *itself) choose(t *talk, q question) (int, error) {
	if s.ctx.Err() != nil || q.about == "failed" {
		return 0, errLeft
	}
	n := 0
	state, quilt := t.quilt()
	switch {
	case q.about == "peel" && !s.spoiled:
		s.spoiled = true
		n = 5 // some are spoiled
	case q.about == "step" && quilt.Step == session.Fabric && s.due(state, quilt):
		s.washed = true
		n = 2
	}
	t.choices(q)
	t.say("> " + strconv.Itoa(n+1))
	return n, nil
}

// due says whether the mat is to be washed now: also before the last load,
// so that the demo shows it.
func (s *itself) due(state *session.State, q *session.Quilt) bool {
	m := state.Mat(q.Mat)
	if m == nil || m.Since == 0 {
		return false
	}
	return state.Due(q.Mat).Left <= 0 || !s.washed && q.LoadsLeft() == 1
}

func (s *itself) number(t *talk, least, most int) (int, error) {
	n := max(least, min(most, 1))
	t.say(t.words.FromTo(least, most))
	t.say("> " + strconv.Itoa(n))
	return n, nil
}

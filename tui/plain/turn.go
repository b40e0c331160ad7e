package plain

import (
	"context"
	"errors"

	"example.org/matside/session"
	"example.org/matside/tui/given"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/words"
)

// turn asks what came of the step and writes it down. errLeft ends the
// evening.
func (t *talk) turn() error {
	_, q := t.quilt()
	about := "step"
	options := []option{
		{t.words.Done(int(q.Step)), func() error { return t.goOn(session.GoOn{Lifted: t.lifted, Ragged: t.ragged}) }},
		{t.words.KeyBack(), func() error { return t.do(session.Back{}) }},
		{t.words.KeyWash(), t.wash},
		{t.words.PlainAgain(), func() error { return nil }},
		{t.words.KeyLeave(), func() error { return errLeft }},
	}
	if q.Step == session.Peel {
		about = "peel"
		options = append(options,
			option{t.words.PlainSomeSpoiled(), t.someSpoiled},
			option{t.words.KeyLifted(t.lifted), func() error { return t.note(&t.lifted, t.words.Lifted()) }},
			option{t.words.KeyRagged(t.ragged), func() error { return t.note(&t.ragged, t.words.Ragged()) }},
			option{t.words.PlainByPlace(), t.byPlace})
	}
	options = append(options, option{t.words.PlainMore(true), t.more})
	t.ring()
	return t.pick(about, append(options, t.newsOption()...))
}

// over is when all is cut: she may still go back, or to another quilt.
func (t *talk) over() error {
	_, q := t.quilt()
	options := []option{{t.words.KeyLeave(), func() error { return errLeft }}}
	if q.Last.Seq != 0 {
		options = append(options, option{t.words.KeyBack(), func() error { return t.do(session.Back{}) }})
	}
	options = append(options, option{t.words.KeyWash(), t.wash}, option{t.words.PlainMore(true), t.more})
	return t.pick("over", append(options, t.newsOption()...))
}

// option is an answer and what comes of it.
type option struct {
	says string
	do   func() error
}

// pick asks for one of the options and does it.
func (t *talk) pick(about string, options []option) error {
	says := make([]string, len(options))
	for i, o := range options {
		says[i] = o.says
	}
	n, err := t.from.choose(t, question{about, says})
	if err != nil {
		return err
	}
	return options[n].do()
}

// note notes what the mat or the blade did, or that it was not so.
func (t *talk) note(what *bool, says string) error {
	if *what = !*what; *what {
		t.say(says)
	} else {
		t.say(t.words.PlainNotSo())
	}
	return nil
}

func (t *talk) someSpoiled() error {
	_, q := t.quilt()
	spoiled, err := t.spoiled(q)
	if err != nil {
		return err
	}
	return t.goOn(session.GoOn{Spoiled: spoiled, Lifted: t.lifted, Ragged: t.ragged})
}

// spoiled asks how many pieces were spoiled, and of which lines where there
// are several.
func (t *talk) spoiled(q *session.Quilt) ([]int, error) {
	load := q.InHand()
	t.say(t.words.PlainHowMany())
	n, err := t.from.number(t, 0, len(load.Pieces))
	if err != nil {
		return nil, err
	}
	asked := guide.Ask(&load.Load, n)
	list := q.ListOf(load)
	letters := matpic.Letters(list)
	for !asked.Told() {
		stack := asked.Stacks[0]
		line := list.Lines[stack.Line]
		t.say(t.words.SpoiledOf(asked.Left))
		t.say(t.words.Stack(letters[stack.Line], t.words.Pieces(line, len(stack.Pieces)), list.Fabrics[line.Fabric].Name, line.Label))
		least, most := asked.Bounds()
		if n, err = t.from.number(t, least, most); err != nil {
			return nil, err
		}
		asked = asked.Tell(n)
	}
	return asked.Pieces, nil
}

// goOn ends the step; a mat still wet is asked about first.
func (t *talk) goOn(a session.GoOn) error {
	err := t.do(a)
	var wet *session.WetMat
	if !errors.As(err, &wet) {
		return err
	}
	t.say(t.words.StillDrying(wet.Mat, t.words.Clock(wet.Until)))
	t.say(t.words.WetHoldsBadly())
	choices := []string{t.words.DryNow(), t.words.KeyBack()}
	if wet.Other != "" {
		choices = append(choices, t.words.UseOther(wet.Other))
	}
	n, err := t.from.choose(t, question{"wet", choices})
	switch {
	case err != nil:
		return err
	case n == 0:
		a.Anyway = true
		return t.do(a)
	case n == 2:
		return t.do(session.UseMat{Mat: wet.Other})
	}
	return nil
}

// wash asks which mat, where there are several.
func (t *talk) wash() error {
	state, q := t.quilt()
	var mats, names []string
	for _, m := range state.MatsThere() {
		names = append(names, m.Name)
		mats = append(mats, t.words.MatLine(m.Name, m.Since))
	}
	n := 0
	if len(mats) > 1 {
		t.say(t.words.WhichWash())
		var err error
		if n, err = t.from.choose(t, question{"mat", mats}); err != nil {
			return err
		}
	}
	if q.Mat == names[n] && q.Step > session.Lay && q.InHand() != nil {
		t.say(t.words.FabricOnIt(names[n]))
		return nil
	}
	return t.do(session.Wash{Mat: names[n]})
}

// do writes an action down; what fails is told and can be tried again.
func (t *talk) do(a session.Action) error {
	return t.doFor(t.id, a)
}

// doFor is do for another quilt.
func (t *talk) doFor(id session.QuiltID, a session.Action) error {
	for {
		t.watchPlanner()
		_, err := t.book.Do(id, a)
		var refused *session.Refused
		var wet *session.WetMat
		switch {
		case err == nil:
			if _, on := a.(session.GoOn); on {
				t.lifted, t.ragged = false, false
			}
			t.said(a)
			return nil
		case errors.As(err, &wet):
			return err
		case errors.As(err, &refused):
			t.say(words.Full(t.words.Error(err)))
			return nil
		}
		t.say(guide.NotSaved(t.words, err))
		n, err := t.from.choose(t, question{"failed", []string{t.words.KeyRetry(), t.words.KeyLeave()}})
		if err != nil || n == 1 {
			return errLeft
		}
	}
}

// watchPlanner has the steps told of what is planned for the next action,
// where that takes long.
func (t *talk) watchPlanner() {
	if t.Planner == nil {
		return
	}
	t.Planner.Watch(t.telling())
	if t.ctx.Err() != nil {
		t.Planner.Hurry()
	}
}

// plansBy goes on with a planner, which is hurried once she has to leave.
func (t *talk) plansBy(p given.Planner) {
	t.Planner = p
	if p != nil {
		context.AfterFunc(t.ctx, p.Hurry)
	}
}

// said says what was written down.
func (t *talk) said(a session.Action) {
	switch a := a.(type) {
	case session.Wash:
		t.say(t.words.WashedMat(a.Mat))
	case session.TakeBackMat:
		t.say(t.words.WashTakenBack(a.Mat))
	case session.Back:
		t.say(t.words.PlainBack())
	case session.Replan:
		t.say(t.words.ChangeTaken())
	case session.GoOn:
		if len(a.Spoiled) > 0 {
			t.say(t.words.Spoiled(len(a.Spoiled)))
			_, q := t.quilt()
			if back := guide.Again(t.words, q); back != "" {
				t.say(back)
			}
		}
	}
}

package plain

import (
	"errors"
	"unicode"
	"unicode/utf8"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
)

// turn asks what came of the step and writes it down. errLeft ends the
// evening.
func (t *talk) turn() error {
	_, q := t.quilt()
	about, done := "step", t.words.Done(int(q.Step))
	choices := []string{done, t.words.KeyBack(), t.words.KeyWash(), t.words.PlainAgain(), t.words.KeyLeave()}
	if q.Step == session.Peel {
		about = "peel"
		choices = append(choices, t.words.PlainSomeSpoiled())
	}
	n, err := t.from.choose(t, question{about, choices})
	if err != nil {
		return err
	}
	switch n {
	case 0:
		return t.goOn(session.GoOn{})
	case 1:
		return t.do(session.Back{})
	case 2:
		return t.wash()
	case 4:
		return errLeft
	case 5:
		spoiled, err := t.spoiled(q)
		if err != nil {
			return err
		}
		return t.goOn(session.GoOn{Spoiled: spoiled})
	}
	return nil
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
	for _, m := range state.Mats {
		if !m.Retired {
			names = append(names, m.Name)
			mats = append(mats, t.words.MatLine(m.Name, m.Since))
		}
	}
	n := 0
	if len(mats) > 1 {
		t.say(t.words.WhichWash())
		var err error
		if n, err = t.from.choose(t, question{"mat", mats}); err != nil {
			return err
		}
	}
	if q.Mat == names[n] && q.Step > session.Lay {
		t.say(t.words.FabricOnIt(names[n]))
		return nil
	}
	return t.do(session.Wash{Mat: names[n]})
}

// do writes an action down; what fails is told and can be tried again.
func (t *talk) do(a session.Action) error {
	for {
		_, err := t.book.Do(t.id, a)
		var refused *session.Refused
		var wet *session.WetMat
		switch {
		case err == nil:
			t.said(a)
			return nil
		case errors.As(err, &wet):
			return err
		case errors.As(err, &refused), errors.Is(err, session.ErrNothingBack):
			t.say(capital(err.Error()) + ".")
			return nil
		}
		t.say(t.words.SaveFailed(err.Error()))
		n, err := t.from.choose(t, question{"failed", []string{t.words.KeyRetry(), t.words.KeyLeave()}})
		if err != nil || n == 1 {
			return errLeft
		}
	}
}

// said says what was written down.
func (t *talk) said(a session.Action) {
	switch a := a.(type) {
	case session.Wash:
		t.say(t.words.WashedMat(a.Mat))
	case session.Back:
		t.say(t.words.PlainBack())
	case session.GoOn:
		if len(a.Spoiled) > 0 {
			t.say(t.words.Spoiled(len(a.Spoiled)))
		}
	}
}

func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

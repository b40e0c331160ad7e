package plain

import (
	"slices"
	"strings"
	"time"

	"example.org/matside/plan/length"
	"example.org/matside/session"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/words"
)

// more is all that is not the step itself: what the other screens show and
// do, in words.
func (t *talk) more() error {
	return t.pick("more", []option{
		{t.words.KeyBackToStep(), func() error { return nil }},
		{t.words.KeyLoads(), t.loads},
		{t.words.KeyMats(), t.mats},
		{t.words.KeyPause(), func() error { return t.do(session.Pause{}) }},
		{t.words.KeyDays(), t.days},
		{t.words.KeyShelf(), t.shelf},
	})
}

// paused waits until she goes on.
func (t *talk) paused() error {
	t.say("")
	t.say(t.words.PlainPaused())
	return t.pick("paused", []option{
		{t.words.KeyResume(), func() error { return t.do(session.Resume{}) }},
		{t.words.KeyLeave(), func() error { return errLeft }},
	})
}

// loads tells all loads, and what can be done with one of them.
func (t *talk) loads() error {
	_, q := t.quilt()
	for i := range q.Loads {
		t.say(t.loadLine(q, i))
	}
	t.say(t.words.PlainWhichLoad())
	n, err := t.from.number(t, 0, len(q.Loads))
	if err != nil || n == 0 {
		return err
	}
	return t.load(q, n-1)
}

// loadLine is a load in a line.
func (t *talk) loadLine(q *session.Quilt, i int) string {
	l := &q.Loads[i]
	var fabrics []string
	for _, r := range l.RoughCuts {
		if name := q.ListOf(l).Fabrics[r.Fabric].Name; !slices.Contains(fabrics, name) {
			fabrics = append(fabrics, name)
		}
	}
	parts := []string{t.words.And(fabrics), t.words.PiecesShort(len(l.Pieces))}
	if state := t.loadState(q, l); state != "" {
		parts = append(parts, state)
	}
	return words.Capital(t.words.LoadOf(i+1, len(q.Loads))) + ": " + strings.Join(parts, ", ") + "."
}

func (t *talk) loadState(q *session.Quilt, l *session.Load) string {
	switch {
	case l.Done && len(l.Spoiled) > 0:
		return t.words.StateSpoiled(len(l.Spoiled))
	case l.Done:
		return t.words.StateDone()
	case l.ID == q.Current:
		return t.words.StateNow()
	case l.Skipped:
		return t.words.StatePutOff()
	case l.Recut:
		return t.words.Recut()
	}
	return ""
}

// load tells one load's picture and moves it.
func (t *talk) load(q *session.Quilt, i int) error {
	l := &q.Loads[i]
	for _, row := range matpic.Tell(t.words, q.ListOf(l), &l.Load) {
		t.say(row)
	}
	done := q.LoadsDone()
	act := func(a session.Action) func() error {
		return func() error {
			switch {
			case l.Done:
				t.say(t.words.LoadIsDone())
			case l.ID == q.Current && q.Step > session.Fabric:
				t.say(t.words.LoadIsBegun())
			default:
				return t.do(a)
			}
			return nil
		}
	}
	return t.pick("load", []option{
		{t.words.KeyBackToStep(), func() error { return nil }},
		{t.words.KeyNext(), act(session.Move{Load: l.ID, To: 0})},
		{t.words.KeyEarlier(), act(session.Move{Load: l.ID, To: i - done - 1})},
		{t.words.KeyLater(), act(session.Move{Load: l.ID, To: i - done + 1})},
		{t.words.KeyPutOff(), act(session.Skip{Load: l.ID})},
		{t.words.KeyJoin(), func() error { return t.do(session.JoinRecuts{}) }},
	})
}

// mats tells every mat, and what can be done with one of them.
func (t *talk) mats() error {
	state, q := t.quilt()
	var mats []session.Mat
	for _, m := range state.Mats {
		if !m.Retired {
			mats = append(mats, m)
		}
	}
	t.say(t.words.PlainCaution(t.words.AdhesiveCare()))
	options := []option{{t.words.KeyBackToStep(), func() error { return nil }}}
	for _, m := range mats {
		t.matInFull(state, q, m)
		options = append(options, option{t.words.Mat(m.Name), func() error { return t.oneMat(m) }})
	}
	if turns := state.WorkTogether(t.id, t.Now()); turns.Second >= time.Minute {
		t.say(t.words.SecondMat(turns.Second, len(mats) > 1))
	}
	blade := state.AdviseBlade()
	t.say(t.words.BladeCut(t.words.Long(blade.Length, unitOf(q))))
	if blade.Change {
		t.say(t.words.ChangeBladeTime())
	}
	t.say(t.words.MayFray(blade.Next.Low, blade.Next.Mid, blade.Next.High))
	name := t.words.MatNumber(len(state.Mats) + 1)
	return t.pick("mats", append(options,
		option{t.words.KeyAddMat(), func() error { return t.do(session.AddMat{Mat: name}) }},
		option{t.words.KeyBlade(), func() error {
			return t.sure(t.words.SureBlade(), t.words.ChangeBladeCare(), func() error { return t.do(session.ChangeBlade{}) })
		}}))
}

// matInFull tells how a mat stands, its wear curve in words.
func (t *talk) matInFull(state *session.State, q *session.Quilt, m session.Mat) {
	name := t.words.Mat(m.Name)
	if q.Mat == m.Name {
		name += ", " + t.words.InUse()
	}
	due, a := state.Due(m.Name), state.Advise(m.Name)
	t.say(words.Capital(name) + ": " + t.words.SinceWash(m.Since) + ", " + t.words.WashesAndLoads(m.Washes, m.Loads) + ".")
	switch {
	case t.Now().Before(m.DryAt):
		t.say("  " + words.Capital(t.words.Drying(t.words.Clock(m.DryAt))) + ".")
	case due.Left <= 0:
		t.say("  " + t.words.WashDue())
	}
	if a.Lifted {
		t.say("  " + t.words.LiftedSince())
	} else {
		t.say("  " + t.words.DueAfter(due.After, due.Own, due.Guess))
	}
	if a.NewMat {
		t.say("  " + t.words.NewMatTime())
	}
	t.say("  " + t.words.MayLift(a.Next.Low, a.Next.Mid, a.Next.High))
}

// oneMat is all that can be done with a mat.
func (t *talk) oneMat(m session.Mat) error {
	state, q := t.quilt()
	after := state.Due(m.Name).After
	dry := func(a session.Action) func() error {
		return func() error {
			if q.Mat == m.Name && q.Step > session.Lay && q.InHand() != nil {
				t.say(t.words.FabricOnIt(m.Name))
				return nil
			}
			return t.do(a)
		}
	}
	do := func(a session.Action) func() error { return func() error { return t.do(a) } }
	unless := func(no bool, reason string, f func() error) func() error {
		if !no {
			return f
		}
		return func() error { t.say(reason); return nil }
	}
	return t.pick("mat", []option{
		{t.words.KeyBackToStep(), func() error { return nil }},
		{t.words.KeyWash(), dry(session.Wash{Mat: m.Name})},
		{t.words.KeyRefresh(), dry(session.Refresh{Mat: m.Name})},
		{t.words.KeyTakeBackMat(), unless(m.Last == 0, t.words.NothingBackMat(m.Name), do(session.TakeBackMat{Mat: m.Name}))},
		{t.words.KeyDueLater(), do(session.SetDue{Mat: m.Name, Loads: after + 1})},
		{t.words.KeyDueSooner(), unless(after <= 1, t.words.DueAtLeastOne(), do(session.SetDue{Mat: m.Name, Loads: after - 1}))},
		{t.words.KeyDueAdvised(), do(session.SetDue{Mat: m.Name})},
		{t.words.KeyUseMat(), unless(q.Mat == m.Name, t.words.MatInUse(m.Name), do(session.UseMat{Mat: m.Name}))},
		{t.words.KeyRename(), func() error {
			return t.named(t.words.Mat(m.Name), func(name string) error { return t.do(session.RenameMat{Mat: m.Name, To: name}) })
		}},
		{t.words.KeyRetire(), func() error {
			return t.sure(t.words.SureRetire(m.Name), t.words.RetireMeans(), do(session.RetireMat{Mat: m.Name}))
		}},
	})
}

// sure asks in words before what can't be taken back; Enter alone is no.
func (t *talk) sure(says, more string, yes func() error) error {
	t.say(says)
	t.say(more)
	return t.pick("sure", []option{{t.words.No(), func() error { return nil }}, {t.words.Yes(), yes}})
}

// named asks for a name; Enter alone leaves it as it is.
func (t *talk) named(what string, do func(name string) error) error {
	t.say(t.words.NewNameOf(what))
	t.say(t.words.PlainNameHow())
	name, err := t.from.text(t)
	if err != nil || name == "" {
		return err
	}
	return do(name)
}

// days tells the evenings behind, and her usual minutes for each step.
func (t *talk) days() error {
	state, _ := t.quilt()
	if len(state.Days) == 0 {
		t.say(t.words.NoDaysYet())
		return nil
	}
	t.say(t.words.PiecesAnEvening() + ":")
	for _, d := range state.Days {
		t.say("  " + t.words.Day(d.Date) + ": " + t.words.GoodAndSpoiled(d.Pieces, d.Spoiled) + ".")
	}
	t.say(t.words.MinutesAStep() + ":")
	for i, s := range state.Pace().Step {
		t.say("  " + t.words.Step(i) + ": " + t.words.UsualTime(s.Low, s.Mid, s.High, s.Guess) + ".")
	}
	return nil
}

// shelf tells all quilts, and what can be done with one of them.
func (t *talk) shelf() error {
	state, _ := t.quilt()
	cards := state.Shelf(t.Now())
	options := []option{{t.words.KeyBackToStep(), func() error { return nil }}}
	for _, card := range cards {
		line := card.Name + ": " + t.words.Standing(int(card.Standing)) + ", " + t.words.PiecesOf(card.Pieces.Done, card.Pieces.Asked)
		if card.Standing != session.Done {
			line += ", " + t.words.LoadsLeft(card.LoadsLeft)
		}
		t.say(line + ".")
		options = append(options, option{card.Name, func() error { return t.oneQuilt(card) }})
	}
	return t.pick("shelf", options)
}

func (t *talk) oneQuilt(card session.Card) error {
	over := card.Standing == session.Done
	unlessOver := func(f func() error) func() error {
		if !over {
			return f
		}
		return func() error { t.say(t.words.IsAllCut(card.Name)); return nil }
	}
	do := func(a session.Action) func() error { return func() error { return t.doFor(card.ID, a) } }
	aside := option{t.words.KeyAside(), unlessOver(do(session.PutAside{}))}
	if card.Standing == session.Aside {
		aside = option{t.words.KeyTakeUp(), do(session.TakeUp{})}
	}
	options := []option{
		{t.words.KeyBackToStep(), func() error { return nil }},
		{t.words.KeyCutQuilt(), unlessOver(func() error { return t.sitDownTo(card.ID) })},
		aside,
		{t.words.KeyRename(), func() error {
			return t.named(card.Name, func(name string) error { return t.doFor(card.ID, session.Rename{Name: name}) })
		}},
		{t.words.KeyFinish(), unlessOver(func() error {
			return t.sure(t.words.SureFinish(card.Name), t.words.FinishMeans(), do(session.Finish{}))
		})},
	}
	if card.ID != t.id { // the one in hand stays in hand
		options = append(options, option{t.words.KeyRemove(), func() error {
			return t.sure(t.words.SureRemove(card.Name), t.words.RemoveMeans(), do(session.Remove{}))
		}})
	}
	return t.pick("quilt", options)
}

// sitDownTo goes on with another quilt.
func (t *talk) sitDownTo(id session.QuiltID) error {
	if id == t.id {
		return nil
	}
	if err := t.do(session.Leave{}); err != nil {
		return err
	}
	t.id = id
	return t.do(session.SitDown{})
}

// put asks what to do when the quilt in hand has been put aside.
func (t *talk) put() error {
	return t.pick("aside", []option{
		{t.words.KeyTakeUp(), func() error { return t.do(session.TakeUp{}) }},
		{t.words.KeyShelf(), t.shelf},
		{t.words.KeyLeave(), func() error { return errLeft }},
	})
}

// unitOf is the unit a quilt's list is written in; one that was finished long
// ago is known without its list.
func unitOf(q *session.Quilt) length.Unit {
	if list := q.List(); list != nil {
		return list.Unit
	}
	return length.In
}

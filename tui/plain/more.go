package plain

import (
	"strings"
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/words"
)

// more is all that is not the step itself: what the other screens show and
// do, in words. Each only where it means something just now.
func (t *talk) more() error {
	_, q := t.quilt()
	options := []option{t.back()}
	if q != nil {
		options = append(options, option{t.words.KeyLoads(), t.loads})
	}
	options = append(options, option{t.words.KeyMats(), t.mats})
	if q != nil && q.InHand() != nil {
		options = append(options, option{t.words.KeyPause(), func() error { return t.do(session.Pause{}) }})
	}
	return t.pick("more", append(options,
		option{t.words.KeyDays(), t.days},
		option{t.words.KeyShelf(), t.shelf},
		option{t.words.KeySettings(), t.sets}))
}

// back goes back to what she was asked before.
func (t *talk) back() option {
	says := t.words.KeyBackToStep()
	if _, q := t.quilt(); q == nil || q.InHand() == nil {
		says = t.words.KeyBack()
	}
	return option{says, func() error { return nil }}
}

// paused waits until she goes on.
func (t *talk) paused() error {
	t.say("")
	t.say(t.words.PlainPaused())
	options := []option{
		{t.words.KeyResume(), func() error { return t.do(session.Resume{}) }},
		{t.words.KeyLeave(), func() error { return errLeft }},
		{t.words.KeyWash(), t.wash},
		{t.words.PlainMore(true), t.more},
	}
	return t.pick("paused", append(options, t.newsOption()...))
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
	state, _ := t.quilt()
	l, p := &q.Loads[i], state.Pace()
	parts := []string{t.words.And(guide.Fabrics(q, l)), t.words.PiecesShort(len(l.Pieces)), t.words.MinutesShort(guide.Minutes(p, l))}
	if says := guide.State(t.words, q, l); says != "" {
		parts = append(parts, says)
	}
	return words.Capital(t.words.LoadOf(i+1, len(q.Loads))) + ": " + strings.Join(parts, ", ") + "."
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
		t.back(),
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
	mats := state.MatsThere()
	t.say(t.words.PlainCaution(t.words.AdhesiveCare()))
	options := []option{t.back()}
	for _, m := range mats {
		t.matInFull(state, q, m)
		options = append(options, option{t.words.Mat(m.Name), func() error { return t.oneMat(m) }})
	}
	if q != nil && q.InHand() != nil {
		if turns := state.WorkTogether(t.id, t.Now()); turns.Second >= time.Minute {
			t.say(t.words.SecondMat(turns.Second, len(mats) > 1))
		}
	}
	blade := state.AdviseBlade()
	t.say(t.words.BladeCut(t.words.Long(blade.Length, t.unit())))
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
	if q != nil && q.Mat == m.Name {
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
			if q != nil && q.Mat == m.Name && q.Step > session.Lay && q.InHand() != nil {
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
	options := []option{
		t.back(),
		{t.words.KeyWash(), dry(session.Wash{Mat: m.Name})},
		{t.words.KeyRefresh(), dry(session.Refresh{Mat: m.Name})},
		{t.words.KeyTakeBackMat(), unless(m.Last == 0, t.words.NothingBackMat(m.Name), do(session.TakeBackMat{Mat: m.Name}))},
		{t.words.KeyDueLater(), do(session.SetDue{Mat: m.Name, Loads: after + 1})},
		{t.words.KeyDueSooner(), unless(after <= 1, t.words.DueAtLeastOne(), do(session.SetDue{Mat: m.Name, Loads: after - 1}))},
		{t.words.KeyDueAdvised(), do(session.SetDue{Mat: m.Name})},
	}
	if q != nil {
		options = append(options, option{t.words.KeyUseMat(), unless(q.Mat == m.Name, t.words.MatInUse(m.Name), do(session.UseMat{Mat: m.Name}))})
	}
	return t.pick("mat", append(options, []option{
		{t.words.KeyRename(), func() error {
			return t.named(t.words.Mat(m.Name), func(name string) error { return t.do(session.RenameMat{Mat: m.Name, To: name}) })
		}},
		{t.words.KeyRetire(), func() error {
			return t.sure(t.words.SureRetire(m.Name), t.words.RetireMeans(), do(session.RetireMat{Mat: m.Name}))
		}},
	}...))
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
	spoiled := guide.SpoiledIn(state)
	if len(spoiled) == 0 {
		t.say(t.words.TotalSpoiled(0))
		return nil
	}
	t.say(t.words.SpoiledByFabric() + ":")
	for _, c := range spoiled {
		t.say("  " + c.Name + ": " + t.words.Plain(c.N) + ".")
	}
	t.say(t.words.SpoiledByPlace() + ":")
	for i, row := range guide.SpoiledAt(state) {
		t.say("  " + t.words.Row(i+1, t.words.Plain(row[0])+", "+t.words.Plain(row[1])+", "+t.words.Plain(row[2])))
	}
	return nil
}

// shelf tells all quilts, and what can be done with one of them.
func (t *talk) shelf() error {
	state, _ := t.quilt()
	cards := state.Shelf(t.Now())
	options := []option{t.back()}
	for _, card := range cards {
		t.say(card.Name + ": " + t.words.Standing(int(card.Standing)) + ", " + guide.Card(t.words, card, false) + ".")
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
		t.back(),
		{t.words.KeyCutQuilt(), unlessOver(func() error { return t.sitDownTo(card.ID) })},
		aside,
		{t.words.KeyRename(), func() error {
			return t.named(card.Name, func(name string) error { return t.doFor(card.ID, session.Rename{Name: name}) })
		}},
		{t.words.KeyFinish(), unlessOver(func() error {
			return t.sure(t.words.SureFinish(card.Name), t.words.FinishMeans(), do(session.Finish{}))
		})},
		{t.words.KeyRemove(), func() error {
			return t.sure(t.words.SureRemove(card.Name), t.words.RemoveMeans(), do(session.Remove{}))
		}},
	}
	return t.pick("quilt", options)
}

// sitDownTo goes on with another quilt, or again with the one in hand.
func (t *talk) sitDownTo(id session.QuiltID) error {
	if t.id != 0 && t.id != id {
		if err := t.do(session.Leave{}); err != nil {
			return err
		}
	}
	t.id = id
	return t.do(session.SitDown{})
}

// put asks what to do when the quilt in hand has been put aside, or removed.
func (t *talk) put() error {
	_, q := t.quilt()
	var options []option
	if q.Standing == session.Aside {
		options = append(options, option{t.words.KeyTakeUp(), func() error { return t.do(session.TakeUp{}) }})
	}
	options = append(options, option{t.words.KeyShelf(), t.shelf}, option{t.words.KeyLeave(), func() error { return errLeft }})
	if t.Desk != nil {
		options = append(options, t.ways()...)
	}
	return t.pick("aside", append(options, option{t.words.PlainMore(false), t.more}))
}

// sets changes her settings, each to its next value, until she goes back.
func (t *talk) sets() error {
	for {
		choices := guide.Choices(t.words, t.Settings)
		says := []string{t.back().says}
		for _, c := range choices {
			says = append(says, c.Says+": "+c.Value)
		}
		n, err := t.from.choose(t, question{"settings", says})
		if err != nil || n == 0 {
			return err
		}
		t.Settings = choices[n-1].Step(1)
		t.words = words.In(t.Settings.Language)
		if t.Keep != nil {
			if err := t.Keep(t.Settings); err != nil {
				t.say(t.words.SettingsNotKept(t.words.Error(err)))
			}
		}
	}
}

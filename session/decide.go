package session

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session/reason"
)

// Decide says what event an action becomes. It is pure, but for what the
// planner does. A nil Content without an error: it is so already. An action
// that can't be done just now is a *Refused, or a *WetMat.
func Decide(s *State, id QuiltID, a Action, now time.Time, plan Planner) (Content, error) {
	switch a := a.(type) {
	case Start:
		return s.decideStart(&a)
	case AddMat, Wash, Refresh, SetDue, RenameMat, RetireMat, TakeBackMat:
		return s.decideMat(id, a)
	case ChangeBlade:
		return BladeChanged{}, nil
	case SetHabits:
		return s.decideHabits(a.Habits)
	}
	q := s.Quilt(id)
	if q == nil {
		return nil, ErrNoQuilt
	}
	switch a := a.(type) {
	case GoOn:
		return s.goOn(q, &a, now, plan)
	case Back:
		if q.Last.Seq == 0 {
			return nil, ErrNothingBack
		}
		return Undone{q.Last.Seq}, nil
	case Move:
		return q.move(a.Load, a.To, false)
	case Skip:
		return q.move(a.Load, len(q.ToCome())-1, true)
	case JoinRecuts:
		return q.join(plan)
	case Replan:
		return q.replan(&a, plan)
	case UseMat:
		return s.useMat(q, a.Mat)
	}
	return q.decideShelf(a)
}

func (s *State) decideStart(a *Start) (Content, error) {
	if a.List == nil || a.Queue == nil {
		return nil, fmt.Errorf("session: start needs a cut list and its plan")
	}
	name, mat := cmp.Or(a.Name, a.List.Quilt), cmp.Or(a.Mat, s.LastMat())
	if s.Mat(mat) == nil {
		return nil, refuse(reason.NoMat, mat)
	}
	q := a.Queue
	return Started{Name: name, Text: a.Text, List: a.List, Mat: mat,
		Plan: Planned{numbered(q.Loads, 1), q.Stock, q.Buy, q.Short, q.Fewest}}, nil
}

// LastMat is the mat used last, or the first there is.
func (s *State) LastMat() string {
	best := ""
	var at time.Time
	for _, q := range s.Quilts {
		if m := s.Mat(q.Mat); m != nil && !m.Retired && !q.Touched.Before(at) {
			best, at = q.Mat, q.Touched
		}
	}
	for _, m := range s.Mats {
		if best == "" && !m.Retired {
			best = m.Name
		}
	}
	return best
}

// numbered gives planned loads the numbers from first on.
func numbered(loads []queue.Load, first int) []queue.Load {
	out := slices.Clone(loads)
	for i := range out {
		out[i].Number = first + i
	}
	return out
}

// renumbered moves the load numbers of planned uses to first and on.
func renumbered(uses []queue.PanelUse, first int) []queue.PanelUse {
	out := slices.Clone(uses)
	for i := range out {
		out[i].RoughCuts = slices.Clone(out[i].RoughCuts)
		for j := range out[i].RoughCuts {
			out[i].RoughCuts[j].Load += first - 1
		}
	}
	return out
}

func (s *State) goOn(q *Quilt, a *GoOn, now time.Time, plan Planner) (Content, error) {
	l := q.InHand()
	switch {
	case l == nil:
		return nil, refuse(reason.AllDone)
	case q.Standing == Aside:
		return nil, refuse(reason.SetAside, q.Name)
	case q.Step == Peel:
		return s.peel(q, l, a, plan)
	case q.Step == Lay && !a.Anyway:
		if m := s.Mat(q.Mat); m != nil && now.Before(m.DryAt) {
			return nil, &WetMat{m.Name, m.DryAt, s.dryMat(now)}
		}
	}
	return StepDone{l.ID, q.Step}, nil
}

// dryMat names a mat that is dry.
func (s *State) dryMat(now time.Time) string {
	for _, m := range s.MatsThere() {
		if !now.Before(m.DryAt) {
			return m.Name
		}
	}
	return ""
}

func (s *State) peel(q *Quilt, l *Load, a *GoOn, plan Planner) (Content, error) {
	spoiled := slices.Clone(a.Spoiled)
	slices.Sort(spoiled)
	if !proper(spoiled, len(l.Pieces)) {
		return nil, refuse(reason.OnlySoMany, q.Place(), len(l.Pieces))
	}
	p := Peeled{Load: l.ID, Mat: q.Mat, Spoiled: spoiled, Lifted: a.Lifted, Ragged: a.Ragged,
		Weight: weigh(q.ListOf(l), &l.Load), CutLength: l.CutLength}
	if len(spoiled) == 0 {
		return p, nil
	}
	var wanted []Copy
	for _, i := range spoiled {
		if c, ok := l.counts(i); ok {
			wanted = append(wanted, c)
		}
	}
	if len(wanted) == 0 {
		return p, nil // none of them is asked for any more
	}
	recut, err := q.planRecut(wanted, l.ID, !a.Apart, plan)
	p.Recut = recut
	return p, err
}

func (q *Quilt) move(load, to int, skip bool) (Content, error) {
	l := q.Load(load)
	switch {
	case l == nil || l.Done:
		return nil, refuse(reason.LoadDone)
	case q.begun(l):
		return nil, refuse(reason.FabricCut)
	}
	first := q.firstFree() - q.LoadsDone()
	to = max(first, min(to, len(q.ToCome())-1))
	if q.ToCome()[to].ID == load && l.Skipped == skip {
		if skip {
			return nil, refuse(reason.LastLoad)
		}
		return nil, nil
	}
	return Moved{load, to, skip}, nil
}

func (s *State) useMat(q *Quilt, name string) (Content, error) {
	m := s.Mat(name)
	switch {
	case m == nil || m.Retired:
		return nil, refuse(reason.NoMat, name)
	case q.Mat == name:
		return nil, nil
	case q.Step > Lay:
		return nil, refuse(reason.FabricOn, q.Mat)
	}
	return MatUsed{name}, nil
}

func (q *Quilt) decideShelf(a Action) (Content, error) {
	switch a := a.(type) {
	case SitDown:
		return Opened{}, nil
	case Leave:
		return Left{}, nil
	case Pause:
		if q.Paused {
			return nil, nil
		}
		return Paused{}, nil
	case Resume:
		if !q.Paused {
			return nil, nil
		}
		return Resumed{}, nil
	case Rename:
		name, err := aName(a.Name)
		return Renamed{name}, err
	case PutAside:
		return SetAside{}, nil
	case TakeUp:
		if q.Standing == UnderWay {
			return nil, nil
		}
		return TakenUp{}, nil
	case Finish:
		return Finished{}, nil
	case Remove:
		return Removed{}, nil
	}
	return nil, fmt.Errorf("session: no such action: %T", a)
}

// aName cleans a name she typed: no control characters, not too long.
func aName(s string) (string, error) {
	s = strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if r < ' ' || r >= 0x7f && r < 0xa0 {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, ""))), " ")
	if s == "" {
		return "", refuse(reason.NameNeeded)
	}
	if utf8.RuneCountInString(s) > 60 {
		return "", refuse(reason.NameTooLong)
	}
	return s, nil
}

// weigh is what a load counts for in wear, in thousandths. Our guess, no
// source: a plain load that covers the usable mat counts 1, an empty one would
// count half, and what sheds counts twice for the part it covers.
func weigh(list *cutlist.List, l *queue.Load) int {
	usable := squareMicrons(list.Mat.UsableWidth, list.Mat.UsableHeight)
	if usable == 0 {
		return 1000
	}
	var covered int64
	for _, r := range l.RoughCuts {
		part := squareMicrons(r.Width, r.Height)
		if r.Fabric >= 0 && r.Fabric < len(list.Fabrics) && list.Fabrics[r.Fabric].Sheds {
			part *= 2
		}
		covered += part
	}
	return 500 + int(500*min(covered/1000, 2*usable/1000)/max(usable/1000, 1))
}

// squareMicrons is exact enough for a weight, and stays inside int64.
func squareMicrons(w, h length.Len) int64 {
	return int64(w/length.Micrometre) * int64(h/length.Micrometre)
}

func (s *State) decideMat(id QuiltID, a Action) (Content, error) {
	if add, ok := a.(AddMat); ok {
		return s.addMat(&add)
	}
	m, err := s.meant(id, matNamed(a))
	if err != nil {
		return nil, err
	}
	switch a := a.(type) {
	case Wash:
		return MatWashed{m.Name, s.Habits.dry()}, nil
	case Refresh:
		return MatRefreshed{m.Name}, nil
	case SetDue:
		if a.Loads < 0 || a.Loads > 1000 {
			return nil, refuse(reason.DueFrom)
		}
		return MatDue{m.Name, a.Loads}, nil
	case RenameMat:
		to, err := aName(a.To)
		if err == nil {
			err = s.nameFree(to, m)
		}
		return MatRenamed{m.Name, to}, err
	case RetireMat:
		return s.retire(m)
	}
	if m.Last == 0 {
		return nil, refuse(reason.NothingOfMat, m.Name)
	}
	return Undone{m.Last}, nil
}

// matNamed is the mat an action names, or "".
func matNamed(a Action) string {
	switch a := a.(type) {
	case Wash:
		return a.Mat
	case Refresh:
		return a.Mat
	case SetDue:
		return a.Mat
	case RenameMat:
		return a.Mat
	case RetireMat:
		return a.Mat
	case TakeBackMat:
		return a.Mat
	}
	return ""
}

// meant finds the mat named, or the one in use when none is.
func (s *State) meant(id QuiltID, name string) (*Mat, error) {
	if q := s.Quilt(id); name == "" && q != nil {
		name = q.Mat
	}
	name = cmp.Or(name, s.LastMat())
	if m := s.Mat(name); m != nil && !m.Retired {
		return m, nil
	}
	for i := range s.Mats {
		if m := &s.Mats[i]; !m.Retired && strings.EqualFold(m.Name, name) {
			return m, nil
		}
	}
	return nil, refuse(reason.NoMat, name)
}

func (s *State) addMat(a *AddMat) (Content, error) {
	name, err := aName(a.Mat)
	switch {
	case err != nil:
		return nil, err
	case a.Loads < 0 || a.Loads > 1000:
		return nil, refuse(reason.LoadsFrom)
	case a.Size.Width < 0 || a.Size.Height < 0 || a.Size.Width > length.MaxLen || a.Size.Height > length.MaxLen:
		return nil, refuse(reason.MatTooLarge)
	}
	return MatAdded{name, a.Size.Width, a.Size.Height, a.Loads}, s.nameFree(name, nil)
}

// nameFree refuses a name that a mat other than but has, in any case, or had:
// what is known of a mat goes by its name.
func (s *State) nameFree(name string, but *Mat) error {
	for i := range s.Mats {
		switch m := &s.Mats[i]; {
		case m == but || !strings.EqualFold(m.Name, name):
		case m.Retired:
			return refuse(reason.MatGone, m.Name)
		default:
			return refuse(reason.MatThere, m.Name)
		}
	}
	return nil
}

func (s *State) retire(m *Mat) (Content, error) {
	for _, q := range s.Quilts {
		if q.Mat == m.Name && q.Standing == UnderWay {
			return nil, refuse(reason.MatInUse, q.Name, m.Name)
		}
	}
	return MatRetired{m.Name}, nil
}

func (s *State) decideHabits(h Habits) (Content, error) {
	const day = 24 * 60
	if h.Dry < 0 || h.Dry > day || h.Wash < 0 || h.Wash > day || h.Pause < 0 || h.Pause > day || h.PauseAfter < -1 || h.PauseAfter > day {
		return nil, refuse(reason.MinutesFrom, day)
	}
	if h == s.Habits {
		return nil, nil
	}
	return HabitsSet{h}, nil
}

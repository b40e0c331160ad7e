package words

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
	"example.org/matside/session/reason"
)

// breath is how many words a sentence has at most that she acts on: she reads
// it from two steps away, or has it read to her.
const breath = 12

// acted are the methods whose sentences she acts on, or answers.
var acted = regexp.MustCompile(`^(CutOne|CutMany|TakeOne|TakeMany|ItIsCutAlready|CutAcross|CutAlong|AcrossFirst|FromPanel|KeepWayUp|RotaryCare|Press|PressMany|DryAndCool|IronCare|` +
	`LayOne|LayMany|LargeLay|Place|PlaceOne|RightSideUp|FaceUp|FaceDown|Smooth|MayBeOff|RollerCare|CutDrawing|LargeDrawing|Setting|SettingOf|SettingToSuit|` +
	`BladeSeated|Mirrored|StartAndLeave|Meanwhile|BladeCare|Peel|LargePeel|WasteFirst|Stack|AnySpoiled|OrPick|CursorHow|NoPiece|SpoiledOf|FromTo|` +
	`WashDue|WashHow|AdhesiveCare|LiftedSince|DueAfter|TooSmall|FabricOnIt|WhichWash|LoadIsBegun|MoreFabric|ToSewing|RestHands|RestHow|LargeRest|` +
	`PauseFor|NewMatTime|ChangeBladeTime|ChangeBladeCare|ComeBack|YesOrNo|NameHow|NameNeeded|FormAsk|FormHint|FormOption|FirstMistake|` +
	`UnfinishedFirst|FabricIsUsed|CutByHandNote|SaveAs|SaveHint|WhatToDo|NewsNotice|PlanBuy|PlanShort|Plain(Hello|Choices|Pick|HowMany|FileName|Now|WhichLoad|NameHow)|` +
	`Sure.*|Way.*|Row(Add|Fin).*|Done|Key.*)$`)

// long are the kinds that tell more than fits in a breath and ask nothing of
// her, or list what she may choose from.
var long = []*say.Kind{
	mistake.TooManyPieces, mistake.NothingUsable, mistake.TooLarge, mistake.TooLargeInMargin, mistake.StripsPlain, mistake.BindingPlain,
	mistake.BehindFabric, mistake.KindOf(shape.ErrLongSideFirst), mistake.KindOf(shape.ErrCollapsed),
	reason.BusySince, reason.JournalAnew, reason.JournalMissing, reason.DataAnew, reason.DataMissing, reason.BroughtUp,
}

// spoken is a sentence as it is read aloud, and who says it.
type spoken struct {
	by, text string
	acts     bool
	words    int // in its longest breath; what is typed counts as one
}

func heard(by, text string, acts bool) spoken {
	s := spoken{by: by, text: text, acts: acts}
	for _, part := range ends.Split(ticks.ReplaceAllString(text, "X"), -1) {
		s.words = max(s.words, len(strings.Fields(part)))
	}
	return s
}

// everything is all that a language can say, with one and several of each.
func everything(w Words) (all []spoken) {
	for name, says := range said(w) {
		for _, text := range slices.Compact(says) {
			all = append(all, heard(name, text, acted.MatchString(name)))
		}
	}
	for _, q := range questions {
		all = append(all, heard("FormAsk "+q, w.FormAsk(q, "Plum"), true), heard("FormHint "+q, w.FormHint(q, "square"), true))
	}
	for _, k := range everyKind() {
		facts := make([]any, len(verb.FindAllString(k.English(), -1)))
		for i := range facts {
			facts[i] = []string{"Plum", "Oat", "Rye", "Fig", "Tea", "Elm"}[i]
		}
		all = append(all, heard("kind", w.Say(k.Say(facts...)), !slices.Contains(long, k)))
	}
	slices.SortFunc(all, func(a, b spoken) int { return strings.Compare(a.by+a.text, b.by+b.text) })
	return all
}

// Every sentence in both languages. With -v they are listed, to be read aloud
// one after the other; a * marks those she acts on.
func TestReadAloud(t *testing.T) {
	for _, w := range []Words{English{}, German{}} {
		all := everything(w)
		for _, s := range all {
			mark := " "
			if s.acts {
				mark = "*"
			}
			if testing.Verbose() {
				t.Logf("%T %2d%s %s: %s", w, s.words, mark, s.by, s.text)
			}
			if s.acts && s.words > breath {
				t.Errorf("%T %s: %d words: %s", w, s.by, s.words, s.text)
			}
			if strings.Contains(s.text, "..") || strings.Contains(s.text, "?.") || strings.Contains(s.text, "  ") && s.by != "Stack" && s.by != "PieceAt" {
				t.Errorf("%T %s: it does not end or space as it should: %q", w, s.by, s.text)
			}
		}
		if len(all) < 700 {
			t.Errorf("%T: only %d sentences", w, len(all))
		}
	}
	for name := range said(English{}) {
		if strings.HasPrefix(name, "Key") && !acted.MatchString(name) {
			t.Errorf("%s is not known as acted on", name)
		}
	}
}

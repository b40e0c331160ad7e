package words

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
)

// English is what US quilters say.
type English struct{}

func itoa(n int) string { return strconv.Itoa(n) }

// Length writes a length without its unit, as a ruler shows it.
func (English) Length(l length.Len, u length.Unit) string { return l.Show(u) }

// Size writes a width across and a height along the lengthwise grain.
func (e English) Size(w, h length.Len, u length.Unit) string {
	return e.Length(w, u) + " x " + e.Length(h, u)
}

// Pieces writes n pieces of a line: "24 squares 2 1/2".
func (English) Pieces(line cutlist.Line, n int) string {
	return strings.TrimRight(count(n, line.Shape, line.Shape+"s")+" "+line.Size, " ")
}

// And joins names.
func (English) And(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// Step names a step, as the trail shows it.
func (English) Step(n int) string { return []string{"fabric", "press", "load", "cut", "peel"}[n] }

// Large names a step in capitals.
func (e English) Large(n int) string { return strings.ToUpper(e.Step(n)) }

// LargeLay and the next few are what to do, in capitals, a line each.
func (English) LargeLay(mat string) []string { return []string{"LAY ON", "MAT " + mat} }
func (English) LargeDrawing(n int) []string  { return []string{fmt.Sprintf("DRAWING %d", n)} }
func (English) LargePeel(n int) string       { return fmt.Sprintf("PEEL %d", n) }
func (English) LargeRest() []string          { return []string{"REST", "YOUR HANDS"} }
func (English) LargePause() string           { return "PAUSE" }
func (English) LargeCutOver() string         { return "CUT OVER?" }

// Done is what Enter says at a step.
func (English) Done(n int) string {
	return []string{"it is cut to size", "flat, dry and cool", "it lies flat", "the cutter has stopped", "all good"}[n]
}

// CutOne and the next few are the fabric step.
func (English) CutOne(fabric, size string) string { return "Cut " + fabric + " " + size + "." }
func (English) CutMany(n int) string              { return "Cut " + count(n, "rough piece", "rough pieces") + ":" }

// TakeOne and the next few are what was cut free with an earlier load's.
func (English) TakeOne(fabric, size string) string { return "Take " + fabric + " " + size + "." }
func (English) TakeMany(n int) string              { return "Take " + count(n, "rough piece", "rough pieces") + ":" }
func (English) CutAlready() string                 { return "cut already" }
func (English) ItIsCutAlready() string             { return "It is cut already." }
func (English) FromPanel(panel, of int) string {
	return fmt.Sprintf("It comes from panel %d of %d.", panel, of)
}
func (English) Panel(panel int) string           { return fmt.Sprintf("panel %d", panel) }
func (English) Rough(fabric, size string) string { return fabric + " " + size }
func (English) AcrossFirst() string              { return "First number across, second along the grain." }
func (English) KeepWayUp(fabrics string) string {
	return "Keep the print's way up: " + fabrics + "."
}

// CutAcross and CutAlong are straight cuts at the table, in order: one, or
// some that are alike.
func (English) CutAcross(first, last int, at string) string {
	if last > first {
		return fmt.Sprintf("Cuts %d to %d: across, each %s below the top edge.", first, last, at)
	}
	return fmt.Sprintf("Cut %d: across, %s below the top edge.", first, at)
}
func (English) CutAlong(first, last int, at string) string {
	if last > first {
		return fmt.Sprintf("Cuts %d to %d: along, each %s from the left edge.", first, last, at)
	}
	return fmt.Sprintf("Cut %d: along, %s from the left edge.", first, at)
}
func (English) PanelLegend(fabric string, panel int, size string) string {
	return fmt.Sprintf("%s, panel %d, %s", fabric, panel, size)
}
func (English) PageOf(n, of int) string { return fmt.Sprintf("part %d of %d: n shows the next", n, of) }
func (English) KeyNextRough() string    { return "the next fabric" }
func (English) KeyLastRough() string    { return "the one before" }
func (English) RotaryCare() string {
	return "The rotary cutter is sharp: close it whenever you put it down."
}

// Press and the next few are the press step.
func (English) Press(fabrics string) string { return "Press " + fabrics + " flat." }
func (English) PressMany(n int) string      { return fmt.Sprintf("Press all %d rough pieces flat.", n) }
func (English) DryAndCool() string          { return "It must be dry. Let it cool." }
func (English) IronCare() string {
	return "The iron is hot: back on its rest, away from the mat. Its maker's instructions come first."
}

// LayOne and the next few are the load step.
func (English) LayOne(fabric, mat string) string { return "Lay " + fabric + " on mat " + mat + "." }
func (English) LayMany(n int, mat string) string {
	return fmt.Sprintf("Lay %d rough pieces on mat %s.", n, mat)
}
func (English) Place(left, top string) string {
	return "Left edge on the " + left + " line, top on the " + top + "."
}
func (English) PlaceOne(fabric, left, top string) string {
	return fabric + ": left edge " + left + ", top " + top + "."
}
func (English) RightSideUp() string            { return "Right side up, grain up the mat." }
func (English) FaceUp(fabrics string) string   { return "Right side up, grain up: " + fabrics + "." }
func (English) FaceDown(fabrics string) string { return "Right side DOWN, grain up: " + fabrics + "." }
func (English) Smooth() string                 { return "Smooth from the middle outward." }
func (English) MayBeOff(margin length.Len, u length.Unit) string {
	return "You may be off by " + margin.FormatUnit(u) + "."
}
func (English) RollerCare() string {
	return "Fingers away from blade and rollers. The maker's instructions come first."
}

// CutDrawing and the next few are the cut step.
func (English) CutDrawing(n int) string       { return fmt.Sprintf("Cut drawing %d.", n) }
func (English) Setting(setting string) string { return "Set the cutter to " + setting + "." }
func (English) SettingOf(fabric, setting string) string {
	return "Set the cutter to " + setting + " for " + fabric + "."
}
func (English) SettingToSuit(fabric string) string { return "Set the cutter to suit " + fabric + "." }
func (English) BladeSeated() string                { return "Is the blade in, and seated?" }
func (English) Mirrored() string                   { return "Don't mirror it: that is done already." }
func (English) StartAndLeave() string              { return "Start it. Leave it alone until it stops." }
func (e English) CutTakes(d time.Duration) string {
	return "It should take about " + e.Time(d) + "."
}
func (English) Meanwhile(fabrics string) string {
	return "Meanwhile: press " + fabrics + " for the next load."
}
func (English) BladeCare() string {
	return "The blade is sharp: hands off while it moves. The maker's instructions come first."
}

// Peel and the next few are the peel step.
func (English) Peel(n int) string  { return "Peel off " + count(n, "piece", "pieces") + "." }
func (English) WasteFirst() string { return "Waste first, then the pieces." }
func (English) Stack(letter rune, pieces, fabric, label string) string {
	if label == "" || label == string(letter) {
		return fmt.Sprintf("%c  %s, %s", letter, pieces, fabric)
	}
	return fmt.Sprintf("%c  %s, %s, for %s", letter, pieces, fabric, label)
}
func (English) AnySpoiled() string { return "Any spoiled? Type how many." }
func (English) OrPick() string     { return "Or pick them on the picture: Right, then x." }
func (English) Picked(n int) string {
	return count(n, "piece", "pieces") + " crossed out on the picture."
}
func (English) KeyPick() string          { return "to the next piece on the picture" }
func (English) KeyPickBack() string      { return "to the piece before" }
func (English) KeyPickUp() string        { return "to the row above" }
func (English) KeyPickDown() string      { return "to the row below" }
func (English) KeyCross(off bool) string { return toggle(off, "this one is spoiled") }
func (English) KeyPickNone() string      { return "none of them" }
func (English) CursorHow(peel bool) string {
	if peel {
		return "Left, Right, Up, Down: the others. x: spoiled or not."
	}
	return "Left, Right, Up, Down: the others."
}
func (English) NoPiece() string { return "Choose a piece first: Left and Right go to them." }
func (English) PieceAt(row, place int, piece, fabric string, letter rune, label string) string {
	text := fmt.Sprintf("%c  row %d, piece %d: %s, %s", letter, row, place, piece, fabric)
	if label != "" && label != string(letter) {
		text += ", for " + label
	}
	return text
}
func (English) Spoiled(n int) string {
	return count(n, "piece", "pieces") + " spoiled, to be cut again."
}
func (English) LargeSpoiled(n string) string { return n + " SPOILED" }
func (English) SpoiledOf(left int) string {
	return fmt.Sprintf("%d spoiled. How many are these?", left)
}
func (English) FromTo(least, most int) string {
	return fmt.Sprintf("Type a number, %d to %d.", least, most)
}
func (English) OnlySoMany(n int) string {
	return "There " + isOrAre(n) + " only " + count(n, "piece", "pieces") + " on the mat."
}
func (English) OnlyOfThem(n int) string {
	return fmt.Sprintf("There %s only %d of them.", isOrAre(n), n)
}
func (English) AtLeast(n int) string { return fmt.Sprintf("At least %d must be among these.", n) }

func isOrAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// LoadOf and the next few say where she is.
func (English) LoadOf(n, of int) string { return fmt.Sprintf("load %d of %d", n, of) }
func (English) PiecesOf(n, of int) string {
	return fmt.Sprintf("%d of %s", n, count(of, "piece", "pieces"))
}
func (English) LoadCaption() string { return "load" }
func (English) ToGoCaption() string { return "pieces to go" }
func (English) TimeCaption(guess bool) string {
	if guess {
		return "left, a guess"
	}
	return "left, about"
}

// TimeLeft says how long it takes yet, rounded to five minutes above ten.
func (e English) TimeLeft(d time.Duration, guess bool) string {
	text := "about " + e.Time(d) + " left"
	if guess {
		text += " (a guess)"
	}
	return text
}

// Time writes a stretch of time: "1 h 10 min".
func (English) Time(d time.Duration) string {
	h, m := hoursAndMinutes(d)
	switch {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	}
	return fmt.Sprintf("%d h %d min", h, m)
}

// LargeTime writes it as hours and minutes on a clock.
func (English) LargeTime(d time.Duration) string {
	h, m := hoursAndMinutes(d)
	return fmt.Sprintf("%d:%02d", h, m)
}

func hoursAndMinutes(d time.Duration) (h, m int) {
	m = int((d + time.Minute/2) / time.Minute)
	if m > 10 {
		m = (m + 2) / 5 * 5
	}
	if d > 0 {
		m = max(m, 1)
	}
	return m / 60, m % 60
}

// Recut marks a load of pieces cut again.
func (English) Recut() string { return "cut again" }

// DemoNotice stands on every screen of the demo.
func (English) DemoNotice() string { return "demo: nothing here is kept" }

// Mat and the next few say how the mat stands.
func (English) Mat(name string) string  { return "mat " + name }
func (English) SinceWash(n int) string  { return count(n, "load", "loads") + " since its wash" }
func (English) BeforeWash(n int) string { return fmt.Sprintf("%d more before it is due", n) }

// SinceAndDue says both in a narrow window.
func (English) SinceAndDue(n, left int) string {
	return fmt.Sprintf("%d since its wash, due in %d", n, left)
}
func (English) WashDue() string            { return "WASH DUE" }
func (English) Drying(until string) string { return "drying until about " + until }
func (English) WashedMat(mat string) string {
	return "Mat " + mat + " is washed."
}
func (English) WashHow() string {
	return "Lukewarm water, a drop of dish soap, a soft brush. Air-dry, sticky side free."
}
func (English) AdhesiveCare() string {
	return "Adhesive may touch the warranty: the maker's instructions come first. Spray by an open window, away from flame and cutter."
}

// Name is the program's.
func (English) Name() string { return "matside" }

// Caution marks what can hurt.
func (English) Caution(what string) string { return "! " + what }

// Legend names the fabrics of the letters.
func (English) Legend(parts []string) string { return strings.Join(parts, ", ") }

// TimeLeftShort is TimeLeft for a narrow window.
func (e English) TimeLeftShort(d time.Duration, guess bool) string {
	if guess {
		return e.Time(d) + "? left"
	}
	return e.Time(d) + " left"
}

// Clock writes a time of day.
func (English) Clock(t time.Time) string { return t.Format("3:04 pm") }

// TooSmall stands alone in a window that is too small.
func (English) TooSmall(needW, needH, w, h int) string {
	return fmt.Sprintf("Make this window larger: matside needs %d by %d, this is %d by %d. q leaves.", needW, needH, w, h)
}

// The keys, in a word or two each.
func (English) KeyBack() string             { return "back" }
func (English) KeyLeave() string            { return "leave" }
func (English) KeySleep() string            { return "to the command line for a while" }
func (English) KeyHelp() string             { return "keys" }
func (English) KeyLook(now string) string   { return "other colors (now " + now + ")" }
func (English) KeyWash() string             { return "mat washed" }
func (English) KeyUnwash(mat string) string { return "not washed" }
func (English) KeyErase() string            { return "erase" }
func (English) KeyCount() string            { return "how many are spoiled" }
func (English) KeyMore() string             { return "one more spoiled" }
func (English) KeyFewer() string            { return "one fewer spoiled" }
func (English) KeyRetry() string            { return "try again" }
func (English) EnterOrSpace() string        { return "Enter or space" }
func (English) EveryKey() string            { return "every key" }

// TakeCount is what Enter says when a count is typed.
func (English) TakeCount(n int) string { return fmt.Sprintf("%d spoiled", n) }

// Why a key is refused.
func (English) NothingBack() string {
	return "This is where the quilt began: there is nothing to take back."
}
func (English) LongNumber() string { return "That is more pieces than a mat holds." }
func (English) FabricOnIt(mat string) string {
	return "There is fabric on mat " + mat + ": peel it first."
}
func (English) WashTakenBack(mat string) string { return "The wash of mat " + mat + " is taken back." }

// Which mat was washed, and mats that are wet.
func (English) WhichWash() string { return "Which mat was washed?" }
func (English) MatLine(name string, since int) string {
	return "mat " + name + ", " + count(since, "load", "loads") + " since its wash"
}
func (English) DryNow() string             { return "it is dry, go on" }
func (English) UseOther(mat string) string { return "use mat " + mat }
func (English) WetHoldsBadly() string      { return "A wet mat does not hold the fabric." }
func (English) StillDrying(mat, until string) string {
	return "Mat " + mat + " is drying until about " + until + "."
}

// The last page.
func (English) AllCut(quilt string) string { return quilt + " is all cut." }
func (English) Totals(pieces, loads int) string {
	return count(pieces, "good piece", "good pieces") + " in " + count(loads, "load", "loads") + "."
}
func (English) TotalSpoiled(n int) string {
	if n == 0 {
		return "None was spoiled."
	}
	return count(n, "piece was", "pieces were") + " spoiled and cut again."
}
func (English) StillShort(n int) string {
	return "There is too little fabric for " + count(n, "piece", "pieces") + "."
}
func (English) ByHandYet(n int) string {
	return "The list has " + count(n, "line", "lines") + " to cut by hand."
}
func (English) ToSewing() string { return "Switch the cutter off and close the rotary cutter." }

// The first page when nothing is under way.
func (English) NoneUnderWay() string { return "No quilt is under way." }
func (English) WaysOn() []string {
	return []string{
		"No quilt is under way. Three ways on:", "",
		"matside demo", "try it on a made-up quilt; nothing is kept", "",
		"matside cut FILE", "cut the quilt of a cut list", "",
		"matside help", "how to write a cut list",
	}
}

// Saving and the next few say what happens to what she pressed.
func (English) Saving() string               { return "saving …" }
func (English) NotYetSaved() string          { return "One moment: still saving." }
func (English) LeavingSoon() string          { return "leaving: waiting for the last save …" }
func (English) SaveFailed(why string) string { return "NOT SAVED: " + why }

// Work that takes a while.
func (English) OpeningFile() string { return "Getting your quilts ready." }
func (English) OneMoment() string   { return "One moment. q leaves at once." }
func (English) LargeWait() string   { return "WAIT" }
func (English) KeyStop() string     { return "stop" }
func (English) SettingsNotKept(why string) string {
	return "The settings could not be kept: " + why + "."
}

// What ought to be over.
func (English) CutOver() string   { return "The cutter ought to be done." }
func (English) RestHands() string { return "Time to rest your hands." }
func (English) RestHow() string   { return "p begins a pause. Enter goes on as before." }

// A pause.
func (English) KeyPause() string  { return "pause" }
func (English) KeyResume() string { return "go on cutting" }
func (e English) PauseSince(from time.Time) string {
	return "Your pause began at " + e.Clock(from) + "."
}
func (e English) PauseFor(d time.Duration) string { return "About " + e.Time(d) + " does hands good." }
func (English) PauseFree() string                 { return "It counts as no work. Take as long as you like." }

// The plain lines.
func (English) PlainHello(quilt string) string {
	return "matside in plain lines: " + quilt + ". Type the number of an answer; Enter alone is 1."
}
func (English) PlainChoices(choices string) string { return "Now: " + choices + "." }
func (English) PlainPick(n int) string             { return fmt.Sprintf("Type a number from 1 to %d.", n) }
func (English) PlainAgain() string                 { return "say it again" }
func (English) PlainAnySpoiled() string            { return "Any spoiled? Then choose that answer." }
func (English) PlainSomeSpoiled() string           { return "some are spoiled" }
func (English) PlainHowMany() string               { return "How many are spoiled?" }
func (English) PlainBack() string                  { return "One step back." }
func (English) PlainLeft() string                  { return "Left. Everything is saved." }
func (English) PlainCaution(what string) string    { return "Caution: " + what }
func (English) Row(n int, what string) string {
	return fmt.Sprintf("Row %d, from the left: %s.", n, what)
}
func (English) RowPieces(pieces, fabric string, letter rune) string {
	return fmt.Sprintf("%s of %s, line %c", pieces, fabric, letter)
}

// What is noted at the peel step.
func (English) KeyLifted(on bool) string { return toggle(on, "fabric lifted off the mat") }
func (English) KeyRagged(on bool) string { return toggle(on, "an edge was ragged") }
func (English) Lifted() string           { return "Noted: fabric lifted." }
func (English) Ragged() string           { return "Noted: an edge was ragged." }

func toggle(on bool, what string) string {
	if on {
		return "not so: " + what
	}
	return what
}

// When fabric ran out.
func (English) CutSoFar(quilt string) string { return quilt + " is cut as far as the fabric goes." }
func (English) MoreFabric() string {
	return "Add fabric to the cut list, then cut it again: only these are planned."
}

// The overview of all loads.
func (English) KeyLoads() string      { return "all loads" }
func (English) AllLoads() string      { return "all loads" }
func (English) KeyBackToStep() string { return "back to the step" }
func (English) KeyUp() string         { return "up" }
func (English) KeyDown() string       { return "down" }
func (English) KeyNext() string       { return "cut this one next" }
func (English) KeyEarlier() string    { return "earlier" }
func (English) KeyLater() string      { return "later" }
func (English) KeyPutOff() string     { return "put off to the end" }
func (English) KeyJoin() string       { return "cut spoiled pieces in fewer loads" }
func (English) LoadIsDone() string    { return "That load is done." }
func (English) LoadIsBegun() string {
	return "Its fabric is cut already: finish it, or go back to its fabric step."
}
func (English) PiecesShort(n int) string  { return count(n, "piece", "pieces") }
func (English) StateDone() string         { return "done" }
func (English) StateSpoiled(n int) string { return itoa(n) + " spoiled" }
func (English) StateNow() string          { return "now" }
func (English) StatePutOff() string       { return "put off" }

// The mats.
func (English) KeyMats() string        { return "the mats" }
func (English) AllMats() string        { return "the mats" }
func (English) KeyRefresh() string     { return "adhesive sprayed on" }
func (English) KeyTakeBackMat() string { return "take that back" }
func (English) KeyDueLater() string    { return "wash one load later" }
func (English) KeyDueSooner() string   { return "wash one load sooner" }
func (English) KeyDueAdvised() string  { return "wash as advised" }
func (English) KeyUseMat() string      { return "use this mat" }
func (English) KeyAddMat() string      { return "a new mat" }
func (English) NothingBackMat(m string) string {
	return "There is nothing of mat " + m + " to take back."
}
func (English) DueAtLeastOne() string    { return "A mat is washed after one load at the soonest." }
func (English) MatInUse(m string) string { return "Mat " + m + " is in use already." }
func (English) InUse() string            { return "in use" }
func (English) WashesAndLoads(washes, loads int) string {
	return count(washes, "wash", "washes") + " and " + count(loads, "load", "loads") + " in all"
}
func (English) DueAfter(loads int, own, guess bool) string {
	text := "Wash due after " + count(loads, "load", "loads")
	switch {
	case own:
		return text + ", as you set it."
	case guess:
		return text + ": a guess, nothing is learned yet."
	}
	return text + ", from how it has held so far."
}

// MatNumber names the nth mat.
func (English) MatNumber(n int) string {
	names := []string{"One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten"}
	if n <= len(names) {
		return names[n-1]
	}
	return itoa(n)
}

// The days behind.
func (English) KeyDays() string         { return "the days behind" }
func (English) KeyNextPart() string     { return "the next part" }
func (English) DaysBehind() string      { return "the days behind" }
func (English) NoDaysYet() string       { return "Nothing has been peeled yet." }
func (English) DaysWillShow() string    { return "Pieces, minutes and spoiled ones will stand here." }
func (English) PiecesAnEvening() string { return "Pieces an evening" }
func (English) MinutesAStep() string    { return "Minutes a step" }
func (English) SpoiledByFabric() string { return "Spoiled, by fabric" }
func (English) SpoiledByPlace() string  { return "Spoiled, by place on the mat" }
func (English) Plain(n int) string      { return itoa(n) }

// Day writes a day kept as 2026-03-07: "Sat, Mar 7".
func (English) Day(date string) string {
	t, err := time.Parse("2006-01-02", date)
	if err != nil {
		return date
	}
	return t.Format("Mon, Jan 2")
}
func (English) GoodAndSpoiled(good, spoiled int) string {
	if spoiled == 0 {
		return itoa(good)
	}
	return fmt.Sprintf("%d, %d spoiled", good, spoiled)
}

// UsualTime is what a step takes, and between what half of the times lie.
func (e English) UsualTime(low, mid, high time.Duration, guess bool) string {
	if guess {
		return e.Minutes(mid) + " min, a guess"
	}
	return e.Minutes(mid) + " min, mostly " + e.Minutes(low) + " to " + e.Minutes(high)
}

// Minutes writes minutes, with tenths where they are few.
func (English) Minutes(d time.Duration) string {
	if d < 10*time.Minute {
		return strings.TrimSuffix(strconv.FormatFloat(d.Minutes(), 'f', 1, 64), ".0")
	}
	return itoa(int(d.Minutes() + 0.5))
}

// The shelf.
func (English) KeyShelf() string    { return "the shelf" }
func (English) TheShelf() string    { return "the shelf" }
func (English) ShelfEmpty() string  { return "The shelf is empty." }
func (English) KeyCutQuilt() string { return "cut this one" }
func (English) KeyAside() string    { return "set it aside" }
func (English) KeyTakeUp() string   { return "take it up again" }
func (English) KeyRename() string   { return "another name" }
func (English) KeyFinish() string   { return "call it finished" }
func (English) KeyRemove() string   { return "take it off the shelf" }
func (English) Standing(n int) string {
	return []string{"under way", "set aside", "all cut", "removed"}[n]
}
func (English) LoadsLeft(n int) string         { return count(n, "load", "loads") + " to go" }
func (English) IsAllCut(quilt string) string   { return quilt + " is all cut." }
func (English) SureFinish(quilt string) string { return "Is " + quilt + " finished?" }
func (English) FinishMeans() string            { return "Its loads still to come won't be cut." }
func (English) SureRemove(quilt string) string { return "Take " + quilt + " off the shelf for good?" }
func (English) RemoveMeans() string            { return "A backup is made first." }
func (English) LargeSure() string              { return "SURE?" }
func (English) YesOrNo() string                { return "y is yes, Enter is no." }
func (English) Yes() string                    { return "yes" }
func (English) No() string                     { return "no, leave it" }
func (English) NewNameOf(what string) string   { return "A new name for " + what + ":" }
func (English) NameHow() string                { return "Type it, then press Enter." }
func (English) NameNeeded() string             { return "A name needs a letter at least." }
func (English) KeyTakeName() string            { return "take this name" }

// More of the mats and the blade.
func (English) KeyRetire() string           { return "this mat is thrown away" }
func (English) SureRetire(m string) string  { return "Is mat " + m + " thrown away?" }
func (English) RetireMeans() string         { return "What is known of its wear is kept." }
func (English) KeyBlade() string            { return "a new blade is in" }
func (English) SureBlade() string           { return "Is a new blade in the cutter?" }
func (English) CurveTitle() string          { return "Chance that fabric has lifted, by loads since the wash" }
func (English) LiftedSince() string         { return "Fabric has lifted since its wash: wash it." }
func (English) BladeCut(long string) string { return "The blade has cut " + long + "." }
func (English) MinutesShort(d time.Duration) string {
	return itoa(int((d+time.Minute/2)/time.Minute)) + " min"
}

// Long writes a long way: in yards, or in metres.
func (English) Long(l length.Len, u length.Unit) string {
	if u == length.In {
		return count(int((l+length.Yard/2)/length.Yard), "yard", "yards")
	}
	return itoa(int((l+50*length.Centimetre)/(100*length.Centimetre))) + " m"
}

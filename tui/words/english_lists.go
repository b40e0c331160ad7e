package words

import (
	"fmt"
	"strings"
	"time"

	"example.org/matside/plan/length"
)

// The first page: three ways on.
func (English) FirstTitle() string  { return "welcome" }
func (English) LargeHello() string  { return "HELLO" }
func (English) WayDemo() string     { return "Try it" }
func (English) WayDemoHow() string  { return "A made-up quilt. Nothing of it is kept." }
func (English) WayOpen() string     { return "Open a cut list" }
func (English) WayOpenHow() string  { return "One that is written already." }
func (English) WayWrite() string    { return "Write one here" }
func (English) WayWriteHow() string { return "Your fabric, then your pieces, one at a time." }
func (English) WayResume() string   { return "Go on writing" }
func (English) WayResumeHow(quilt string) string {
	if quilt == "" {
		return "Your cut list is as you left it."
	}
	return quilt + ": as you left it."
}
func (English) KeyStartNew() string           { return "start a new one instead" }
func (English) KeyChoose() string             { return "this one" }
func (English) KeySettings() string           { return "settings" }
func (English) OpeningDemo() string           { return "Getting the demo ready." }
func (English) NotHere() string               { return "That can't be done from here." }
func (English) WentWrong() string             { return "That did not work." }
func (English) KeyOpenInForm() string         { return "put it right here" }
func (English) MistakesIn(file string) string { return "There are mistakes in " + file + "." }

// The file picker.
func (English) PickTitle() string          { return "open a cut list" }
func (English) PickFolder(p string) string { return "In " + p }
func (English) FolderAbove() string        { return "the folder above" }
func (English) FolderName(n string) string { return n + "/" }
func (English) NoCutLists() string         { return "There is no cut list in this folder." }
func (English) FolderFailed(why string) string {
	return "This folder can't be read: " + why + "."
}
func (English) OthersHidden(n int) string {
	return count(n, "other file", "other files") + " not shown."
}
func (English) KeyAllFiles() string   { return "all files" }
func (English) KeyOnlyLists() string  { return "cut lists only" }
func (English) KeyAbove() string      { return "folder above" }
func (English) KeyOpenFolder() string { return "open this folder" }
func (English) KeyCutThis() string    { return "cut this one" }
func (English) KeyWriteIn() string    { return "change it" }
func (English) NoFolderAbove() string { return "There is no folder above this one." }
func (English) NoFileHere() string    { return "Go to a cut list first." }
func (English) ReadingFile() string   { return "Reading the cut list." }

// FormAsk is a question of the form, FormHint how to answer it.
func (English) FormAsk(question, about string) string {
	switch question {
	case "quilt":
		return "What are you making?"
	case "fabric":
		return "What do you call the fabric?"
	case "have":
		return "What do you have of " + about + "?"
	case "stock":
		return "How much of " + about + " is there?"
	case "about fabric":
		return "Is anything special about " + about + "?"
	case "shrinks":
		return "How much does " + about + " shrink?"
	case "cutter setting":
		return "What do you set the cutter to for " + about + "?"
	case "shape":
		return "Which shape, from " + about + "?"
	case "count":
		return "How many?"
	case "size", "strip size", "binding size":
		return "What size?"
	case "outline":
		return "Which of your outlines?"
	case "finished":
		return "Is that the finished size, or the cut size?"
	case "hand":
		return "Left or right?"
	case "label":
		return "What are they for?"
	case "about piece":
		return "Is anything special about these pieces?"
	case "setting":
		return "What do you want to set?"
	}
	return "How should this line read?"
}

// FormHint says how a question is answered; about is a shape, where it
// matters.
func (English) FormHint(question, about string) string {
	switch question {
	case "quilt":
		return "Any name: you will know it by this."
	case "fabric":
		return "The name you know it by: Ink, blue dots."
	case "have":
		return "Sizes can be changed next."
	case "stock":
		return "Across, x, along the grain: 42 in x 2 yd. Several: 4 of 18 x 21, 42 x 36."
	case "about fabric", "about piece":
		return "Mark what is true. Enter when done."
	case "shrinks":
		return "Across x along, as washed: 3% x 5%."
	case "cutter setting":
		return "As the machine says it: woven cotton."
	case "count":
		return "A whole number. Up and Down step it."
	case "size":
		return sizeHint(about)
	case "strip size":
		return "How wide each strip is. It runs across the fabric."
	case "binding size":
		return "Strip width, around, the quilt's size: 2 1/2 around 44 x 52."
	case "finished":
		return "Finished: without its seams, as it is in the quilt."
	case "hand":
		return "Seen from the right side of the fabric."
	case "label":
		return "A block, a letter, a border. Enter alone for none."
	case "line":
		return "As it stands in the cut list."
	}
	return ""
}

// sizeHint says what the numbers of a shape's size are.
func sizeHint(shape string) string {
	switch shape {
	case "square":
		return "Its side: 2 1/2."
	case "rectangle":
		return "Across, x, along the grain: 2 1/2 x 4 1/2."
	case "half-square triangle":
		return "Its short side: 3."
	case "quarter-square triangle":
		return "Its long side: 5 1/4."
	case "half-rectangle triangle":
		return "Its two short sides: 3 x 5."
	case "equilateral triangle", "half hexagon", "octagon":
		return "Its height: height 3. Or its side: side 3."
	case "hexagon", "diamond":
		return "Its side: 1 1/2. Or its height: height 3."
	case "parallelogram":
		return "Base x height: 3 x 2."
	case "trapezoid", "tumbler", "wedge":
		return "Long side x short side x height: 4 x 2 x 3."
	case "circle":
		return "Straight across: 3."
	case "quarter circle":
		return "From its corner to its curve: 3."
	}
	return "As 2 1/2, or 2 1/2 x 4 1/2."
}

// FormOption names one of the choices of a question; they are words of the
// cut list, or ours.
func (English) FormOption(option string) string {
	switch option {
	case "yardage":
		return "yardage, off the bolt"
	case "fat quarters":
		return "fat quarters"
	case "other pieces":
		return "other pieces"
	case "nothing yet":
		return "nothing yet: tell me how much to buy"
	case "finished":
		return "finished: seams are added"
	case "cut":
		return "cut: just as I wrote"
	case "one-way":
		return "its print has a right way up"
	case "sheds":
		return "it sheds lint and threads"
	case "face down":
		return "it lies right side down on the mat"
	case "shrinks":
		return "it shrinks: I wash it first"
	case "cutter setting":
		return "the cutter has a setting for it"
	case "lengthwise":
		return "as written, along the grain"
	case "crosswise":
		return "the first number along the grain"
	case "any grain":
		return "turned any way, whatever the grain"
	case "trimmed":
		return "sharp tips cut back"
	case "fussy":
		return "centered on a motif by hand"
	case "by hand":
		return "cut at the table, by hand"
	case "seam":
		return "the seam allowance"
	case "allowance":
		return "cut sizes as books print them"
	case "units":
		return "inches or centimeters"
	case "mat":
		return "the size of the mat"
	case "gap":
		return "space between pieces"
	case "margin":
		return "fabric left around pieces"
	case "strip":
		return "strip, cut by hand"
	case "binding":
		return "binding, cut by hand"
	case "outline":
		return "an outline of your own"
	}
	if shape, ok := strings.CutSuffix(option, " 45"); ok {
		return shape + ", 45 degrees"
	}
	if shape, ok := strings.CutSuffix(option, " 60"); ok {
		return shape + ", 60 degrees"
	}
	return option
}

// The sheet of the form.
func (English) FormTitle() string           { return "a cut list" }
func (English) FormStep(n, of int) string   { return fmt.Sprintf("question %d of %d", n, of) }
func (English) RowAddQuilt() string         { return "+ what you are making" }
func (English) RowAddFabric() string        { return "+ a fabric" }
func (English) RowAddPiece(f string) string { return "+ pieces from " + f }
func (English) RowAddSetting() string       { return "+ seam, mat, units …" }
func (English) RowFinish() string           { return "Save it and see the plan" }
func (English) RowUnfinished() string       { return "unfinished" }
func (English) KeyChange() string           { return "change it" }
func (English) KeyAdd() string              { return "add" }
func (English) KeyGoOnWith() string         { return "go on with it" }
func (English) KeySeePlan() string          { return "save, see the plan" }
func (English) KeyTakeOff() string          { return "take it off the list" }
func (English) KeyUndo() string             { return "undo" }
func (English) KeyNextQuestion() string     { return "next" }
func (English) KeyMark() string             { return "mark" }
func (English) NothingToUndo() string       { return "Nothing has been changed yet." }
func (English) NotALine() string            { return "That is no line of the list." }
func (English) FabricIsUsed(f string) string {
	return "Pieces are cut from " + f + ": take those off first."
}
func (English) FirstMistake(what string) string { return "Put this right first: " + stop(what) }
func (English) UnfinishedFirst() string {
	return "Something is half answered: finish it or take it off."
}
func (English) CutByHandNote() string { return "Too large for the mat: cut it by hand." }

// Odd explains a finished size: "3 finished: cut 3 7/8 by the book, 3.8536
// exactly." book is "" where books say the same.
func (English) Odd(finished, exact, book string, ruler bool) string {
	switch {
	case book == "" || book == exact:
		return finished + " finished: cut " + exact + "."
	case ruler:
		return finished + " finished: cut " + exact + ", by the book."
	}
	return finished + " finished: cut " + book + " by the book, " + exact + " exactly."
}

// Saving a cut list.
func (English) SaveTitle() string              { return "save the cut list" }
func (English) SaveAs() string                 { return "Save it where?" }
func (English) SaveHint() string               { return "Change the name if you like. Enter saves it." }
func (English) KeySave() string                { return "save it" }
func (English) SavedAs(path string) string     { return "Saved as " + path + "." }
func (English) FileThere(p string) string      { return p + " is there already." }
func (English) FileChanged(p string) string    { return p + " has changed since you opened it." }
func (English) WhatToDo() string               { return "What should happen to yours?" }
func (English) KeySaveOther() string           { return "save mine under another name" }
func (English) KeySaveOver() string            { return "save mine over it" }
func (English) KeyTakeTheirs() string          { return "drop mine, take the file" }
func (English) ListNotSaved(why string) string { return "NOT SAVED: " + why + "." }

// The plan of a list just written.
func (English) PlanTitle(quilt string) string { return "the plan of " + quilt }
func (English) Planning() string              { return "Planning the loads." }
func (English) LargeLoads(n int) string       { return strings.ToUpper(count(n, "load", "loads")) }
func (English) PlanPieces(pieces, loads int) string {
	return count(pieces, "piece", "pieces") + " in " + count(loads, "load", "loads") + " of the mat."
}
func (English) PlanProved() string { return "Fewer loads can't be done." }
func (English) PlanAtLeast(n int) string {
	return "Fewer than " + count(n, "load", "loads") + " can't be done."
}
func (English) PlanBuy(fabric, width, length string) string {
	return "Buy " + length + " of " + fabric + ", " + width + " wide."
}
func (English) PlanEnough(fabric string) string { return fabric + ": there is enough." }
func (English) PlanShort(fabric string, pieces int, length string) string {
	says := fabric + " is short: "
	if pieces > 0 {
		says += count(pieces, "piece", "pieces") + " missing, "
	}
	if length == "" {
		return says + "no length of it would do."
	}
	return says + "buy " + length + " more."
}
func (English) PlanNothing() string     { return "Nothing of it goes on the mat." }
func (English) KeyStartCutting() string { return "start cutting" }
func (English) KeyBackToForm() string   { return "back to the form" }

// Yards says how much fabric to buy.
func (English) Yards(l length.Len, u length.Unit) string {
	if u == length.In {
		return l.Yards()
	}
	return l.FormatUnit(u)
}

// SizeUnit is a size with its unit behind it.
func (e English) SizeUnit(l length.Len, u length.Unit) string {
	return e.Length(l, u) + " " + u.String()
}

// SizeText writes the size of a line as the reader gives it.
func (English) SizeText(size string) string { return size }

// A cut list that was changed while its quilt is under way.
func (English) KeyNews() string        { return "the list has changed" }
func (English) NewsNotice() string     { return "The cut list has changed: v shows how." }
func (English) NewsTitle() string      { return "the cut list has changed" }
func (English) NewsLead() string       { return "Since you began, the cut list has changed:" }
func (English) NewsKeeps() string      { return "What is cut stays cut. Only the rest is planned again." }
func (English) NewsNothing() string    { return "Nothing changes in what is cut." }
func (English) KeyTakeChange() string  { return "take the change" }
func (English) ChangeTaken() string    { return "The change is taken." }
func (English) KeyNotNow() string      { return "not now" }
func (English) ReadingChange() string  { return "Reading what has changed." }
func (English) GoesOnAsBefore() string { return "Nothing of it is taken: all goes on as before." }
func (English) NewsMore(pieces, fabric string, fresh bool) string {
	if fresh {
		return "New: " + pieces + " of " + fabric + "."
	}
	return more(pieces) + " of " + fabric + "."
}

// more puts "more" behind a count: "6 more squares 2 1/2".
func more(pieces string) string {
	n, what, _ := strings.Cut(pieces, " ")
	return n + " more " + what
}
func (English) NewsFewer(pieces, fabric string) string {
	n, what, _ := strings.Cut(pieces, " ")
	return n + " fewer " + what + " of " + fabric + "."
}
func (English) NewsOther(before, after, fabric string) string {
	return after + " of " + fabric + ", instead of " + before + "."
}
func (English) NewsFabric(f string) string      { return "New fabric: " + f + "." }
func (English) NewsFabricGone(f string) string  { return f + " is no longer on the list." }
func (English) NewsFabricOther(f string) string { return f + " is described differently." }
func (English) NewsMat() string                 { return "The mat, the margin or the gap has changed." }
func (English) NewsLoads(by int) string {
	switch {
	case by > 0:
		return count(by, "load", "loads") + " more."
	case by < 0:
		return count(-by, "load", "loads") + " fewer."
	}
	return "As many loads as before."
}

// Key names a key as it is written on the keyboard.
func (English) Key(name string) string { return name }

// The large words of a wet mat and of the last page.
func (English) LargeWet() string    { return "WET" }
func (English) LargeAllCut() string { return "ALL CUT" }
func (English) LargeShort() string  { return "SHORT" }

// What the plain lines say besides.
func (English) PlainMore(cutting bool) string {
	if cutting {
		return "more: loads, mats, pause, days, quilts, settings"
	}
	return "more: mats, days, quilts, settings"
}
func (English) PlainByPlace() string { return "say which ones, by their place" }
func (English) PlainChange() string  { return "change a cut list" }
func (English) PlainNumbers(from, to int) string {
	if from == to {
		return "number " + itoa(from)
	}
	return "numbers " + itoa(from) + " to " + itoa(to)
}
func (English) PlainWhichPieces() string { return "Type the numbers of spoiled ones: 3, or 3 4 9." }
func (English) PlainWhichEnd() string {
	return "A number again takes it back. Enter alone: that is all. 0: none."
}
func (English) PlainPiece(off bool, row, place int, what string) string {
	says := "Spoiled"
	if off {
		says = "Not spoiled"
	}
	return fmt.Sprintf("%s: row %d, piece %d, %s.", says, row, place, what)
}
func (English) PlainFileName(listed bool) string {
	if listed {
		return "Type its number, or the name of a file. Enter alone goes back."
	}
	return "Type the name of its file. Enter alone goes back."
}
func (English) PlainNotKept() string { return "Left. Nothing of the demo is kept." }
func (English) PlainNow(what string) string {
	return "Now: " + what + ". Enter alone keeps it."
}
func (English) PlainNotSo() string     { return "Noted: it was not so." }
func (English) PlainPaused() string    { return "You are having a pause." }
func (English) PlainWhichLoad() string { return "Which load? 0 goes back." }
func (English) PlainZero() string      { return "0 goes back." }
func (English) PlainNameHow() string   { return "Type it. Enter alone leaves it as it is." }

// The settings.
func (English) SettingsTitle() string   { return "settings" }
func (English) SettingsHow() string     { return "In use at once, and kept for next time." }
func (English) KeyNextValue() string    { return "change it" }
func (English) KeyLastValue() string    { return "change it back" }
func (English) SettingUnits() string    { return "Lengths in" }
func (English) SettingLetters() string  { return "Large letters" }
func (English) SettingLook() string     { return "Colors" }
func (English) SettingSound() string    { return "Ring the bell" }
func (English) SettingNotify() string   { return "Send a notification" }
func (English) SettingPause() string    { return "Say when to pause" }
func (English) SettingKeys() string     { return "Two hits count as one" }
func (English) SettingStill() string    { return "Keep the screen still" }
func (English) SettingLanguage() string { return "Language" }
func (English) OnOff(on bool) string {
	if on {
		return "yes"
	}
	return "no"
}
func (English) UnitsName(u string) string {
	switch u {
	case "in":
		return "inches"
	case "cm":
		return "centimeters"
	}
	return "as the cut list says"
}
func (English) LettersName(l string) string {
	switch l {
	case "large":
		return "always"
	case "small":
		return "never"
	}
	return "where there is room"
}
func (English) LookName(l string) string {
	if l == "" {
		return "as your window says"
	}
	return l
}
func (English) PauseName(minutes int) string {
	switch {
	case minutes < 0:
		return "never"
	case minutes == 0:
		return "by how you work"
	}
	return "after " + count(minutes, "minute", "minutes")
}
func (English) KeysName(gap time.Duration) string {
	return fmt.Sprintf("within %.2f seconds", gap.Seconds())
}
func (English) LanguageName(l string) string {
	switch l {
	case "en":
		return "English"
	case "de":
		return "Deutsch"
	}
	return "as your computer says"
}

// BrokenSettings tells what is wrong with the file of the settings.
func (English) BrokenSettings(path, what string) string {
	return "Part of your settings is not understood (" + path + ", " + what + "). The usual is in use for it."
}

package words

import (
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
)

// Words is a language: every sentence that is said, and how numbers, lengths
// and times are written in it. What each says is told where the English says it.
type Words interface {
	// What was said below the screens (say.go).
	Say(s say.Sentence) string
	Error(err error) string
	// The steps, the mats, the shelf and the days (english.go).
	Length(l length.Len, u length.Unit) string
	Size(w, h length.Len, u length.Unit) string
	Pieces(line cutlist.Line, n int) string
	And(names []string) string
	Step(n int) string
	Large(n int) string
	LargeLay(mat string) []string
	LargeDrawing(n int) []string
	LargePeel(n int) string
	LargeRest() []string
	LargePause() string
	LargeCutOver() string
	Done(n int) string
	CutOne(fabric, size string) string
	CutMany(n int) string
	TakeOne(fabric, size string) string
	TakeMany(n int) string
	CutAlready() string
	ItIsCutAlready() string
	FromPanel(panel, of int) string
	Panel(panel int) string
	Rough(fabric, size string) string
	AcrossFirst() string
	KeepWayUp(fabrics string) string
	CutAcross(first, last int, at string) string
	CutAlong(first, last int, at string) string
	PanelLegend(fabric string, panel int, size string) string
	PageOf(n, of int) string
	KeyNextRough() string
	KeyLastRough() string
	RotaryCare() string
	Press(fabrics string) string
	PressMany(n int) string
	DryAndCool() string
	IronCare() string
	LayOne(fabric, mat string) string
	LayMany(n int, mat string) string
	Place(left, top string) string
	PlaceOne(fabric, left, top string) string
	RightSideUp() string
	FaceUp(fabrics string) string
	FaceDown(fabrics string) string
	Smooth() string
	MayBeOff(margin length.Len, u length.Unit) string
	RollerCare() string
	CutDrawing(n int) string
	Setting(setting string) string
	SettingOf(fabric, setting string) string
	SettingToSuit(fabric string) string
	BladeSeated() string
	Mirrored() string
	StartAndLeave() string
	CutTakes(d time.Duration) string
	Meanwhile(fabrics string) string
	BladeCare() string
	Peel(n int) string
	WasteFirst() string
	Stack(letter rune, pieces, fabric, label string) string
	AnySpoiled() string
	OrPick() string
	Picked(n int) string
	KeyPick() string
	KeyPickBack() string
	KeyPickUp() string
	KeyPickDown() string
	KeyCross(off bool) string
	KeyPickNone() string
	CursorHow(peel bool) string
	NoPiece() string
	PieceAt(row, place int, piece, fabric string, letter rune, label string) string
	Spoiled(n int) string
	LargeSpoiled(n string) string
	SpoiledOf(left int) string
	FromTo(least, most int) string
	OnlySoMany(n int) string
	OnlyOfThem(n int) string
	AtLeast(n int) string
	LoadOf(n, of int) string
	PiecesOf(n, of int) string
	LoadCaption() string
	ToGoCaption() string
	TimeCaption(guess bool) string
	TimeLeft(d time.Duration, guess bool) string
	Time(d time.Duration) string
	LargeTime(d time.Duration) string
	Recut() string
	DemoNotice() string
	Mat(name string) string
	SinceWash(n int) string
	BeforeWash(n int) string
	SinceAndDue(n, left int) string
	WashDue() string
	Drying(until string) string
	WashedMat(mat string) string
	WashHow() string
	AdhesiveCare() string
	Name() string
	Caution(what string) string
	Legend(parts []string) string
	TimeLeftShort(d time.Duration, guess bool) string
	Clock(t time.Time) string
	TooSmall(needW, needH, w, h int) string
	KeyBack() string
	KeyLeave() string
	KeySleep() string
	KeyHelp() string
	KeyLook(now string) string
	KeyWash() string
	KeyUnwash(mat string) string
	KeyErase() string
	KeyCount() string
	KeyMore() string
	KeyFewer() string
	KeyRetry() string
	EnterOrSpace() string
	EveryKey() string
	TakeCount(n int) string
	NothingBack() string
	LongNumber() string
	FabricOnIt(mat string) string
	WashTakenBack(mat string) string
	WhichWash() string
	MatLine(name string, since int) string
	DryNow() string
	UseOther(mat string) string
	WetHoldsBadly() string
	StillDrying(mat, until string) string
	AllCut(quilt string) string
	Totals(pieces, loads int) string
	TotalSpoiled(n int) string
	StillShort(n int) string
	ByHandYet(n int) string
	ToSewing() string
	WaysOn() []string
	NoneUnderWay() string
	Saving() string
	NotYetSaved() string
	LeavingSoon() string
	SaveFailed(why string) string
	OpeningFile() string
	OneMoment() string
	LargeWait() string
	KeyStop() string
	SettingsNotKept(why string) string
	CutOver() string
	RestHands() string
	RestHow() string
	KeyPause() string
	KeyResume() string
	PauseSince(from time.Time) string
	PauseFor(d time.Duration) string
	PauseFree() string
	PlainHello(quilt string) string
	PlainChoices(choices string) string
	PlainPick(n int) string
	PlainAgain() string
	PlainAnySpoiled() string
	PlainSomeSpoiled() string
	PlainHowMany() string
	PlainBack() string
	PlainLeft() string
	PlainCaution(what string) string
	Row(n int, what string) string
	RowPieces(pieces, fabric string, letter rune) string
	KeyLifted(on bool) string
	KeyRagged(on bool) string
	Lifted() string
	Ragged() string
	CutSoFar(quilt string) string
	MoreFabric() string
	KeyLoads() string
	AllLoads() string
	KeyBackToStep() string
	KeyUp() string
	KeyDown() string
	KeyNext() string
	KeyEarlier() string
	KeyLater() string
	KeyPutOff() string
	KeyJoin() string
	LoadIsDone() string
	LoadIsBegun() string
	PiecesShort(n int) string
	StateDone() string
	StateSpoiled(n int) string
	StateNow() string
	StatePutOff() string
	KeyMats() string
	AllMats() string
	KeyRefresh() string
	KeyTakeBackMat() string
	KeyDueLater() string
	KeyDueSooner() string
	KeyDueAdvised() string
	KeyUseMat() string
	KeyAddMat() string
	NothingBackMat(m string) string
	DueAtLeastOne() string
	MatInUse(m string) string
	InUse() string
	WashesAndLoads(washes, loads int) string
	DueAfter(loads int, own, guess bool) string
	MatNumber(n int) string
	KeyDays() string
	KeyNextPart() string
	DaysBehind() string
	NoDaysYet() string
	DaysWillShow() string
	PiecesAnEvening() string
	MinutesAStep() string
	SpoiledByFabric() string
	SpoiledByPlace() string
	Plain(n int) string
	Day(date string) string
	GoodAndSpoiled(good, spoiled int) string
	UsualTime(low, mid, high time.Duration, guess bool) string
	Minutes(d time.Duration) string
	KeyShelf() string
	TheShelf() string
	ShelfEmpty() string
	KeyCutQuilt() string
	KeyAside() string
	KeyTakeUp() string
	KeyRename() string
	KeyFinish() string
	KeyRemove() string
	Standing(n int) string
	LoadsLeft(n int) string
	IsAllCut(quilt string) string
	SureFinish(quilt string) string
	FinishMeans() string
	SureRemove(quilt string) string
	RemoveMeans() string
	LargeSure() string
	YesOrNo() string
	Yes() string
	No() string
	NewNameOf(what string) string
	NameHow() string
	NameNeeded() string
	KeyTakeName() string
	KeyRetire() string
	SureRetire(m string) string
	RetireMeans() string
	KeyBlade() string
	SureBlade() string
	CurveTitle() string
	LiftedSince() string
	BladeCut(long string) string
	MinutesShort(d time.Duration) string
	Long(l length.Len, u length.Unit) string
	// Chances and ranges (chance.go).
	TimeBetween(low, high time.Duration, guess bool) string
	OneIn(p float64) string
	MayLift(low, mid, high float64) string
	MayFray(low, mid, high float64) string
	WhyGuess(lifts, takes int) string
	NewMatTime() string
	ChangeBladeTime() string
	// Spoiled pieces that come back, and mats that take turns (again.go).
	ComeBack(loads []int, from []string) string
	NoneLeftFor(n int) string
	SecondMat(saves time.Duration, there bool) string
	ChangeBladeCare() string
	// Cut lists, settings and the plain lines (english_lists.go).
	FirstTitle() string
	LargeHello() string
	WayDemo() string
	WayDemoHow() string
	WayOpen() string
	WayOpenHow() string
	WayWrite() string
	WayWriteHow() string
	WayResume() string
	WayResumeHow(quilt string) string
	KeyStartNew() string
	KeyChoose() string
	KeySettings() string
	OpeningDemo() string
	NotHere() string
	WentWrong() string
	KeyOpenInForm() string
	MistakesIn(file string) string
	PickTitle() string
	PickFolder(p string) string
	FolderAbove() string
	FolderName(n string) string
	NoCutLists() string
	FolderFailed(why string) string
	OthersHidden(n int) string
	KeyAllFiles() string
	KeyOnlyLists() string
	KeyAbove() string
	KeyOpenFolder() string
	KeyCutThis() string
	KeyWriteIn() string
	NoFolderAbove() string
	NoFileHere() string
	ReadingFile() string
	FormAsk(question, about string) string
	FormHint(question, about string) string
	FormOption(option string) string
	FormTitle() string
	FormStep(n, of int) string
	RowAddQuilt() string
	RowAddFabric() string
	RowAddPiece(f string) string
	RowAddSetting() string
	RowFinish() string
	RowUnfinished() string
	KeyChange() string
	KeyAdd() string
	KeyGoOnWith() string
	KeySeePlan() string
	KeyTakeOff() string
	KeyUndo() string
	KeyNextQuestion() string
	KeyMark() string
	NothingToUndo() string
	NotALine() string
	FabricIsUsed(f string) string
	FirstMistake(what string) string
	UnfinishedFirst() string
	CutByHandNote() string
	Odd(finished, exact, book string, ruler bool) string
	SaveTitle() string
	SaveAs() string
	SaveHint() string
	KeySave() string
	SavedAs(path string) string
	FileThere(p string) string
	FileChanged(p string) string
	WhatToDo() string
	KeySaveOther() string
	KeySaveOver() string
	KeyTakeTheirs() string
	ListNotSaved(why string) string
	PlanTitle(quilt string) string
	Planning() string
	LargeLoads(n int) string
	PlanPieces(pieces, loads int) string
	PlanProved() string
	PlanAtLeast(n int) string
	PlanBuy(fabric, width, length string) string
	PlanEnough(fabric string) string
	PlanShort(fabric string, pieces int, length string) string
	PlanNothing() string
	KeyStartCutting() string
	KeyBackToForm() string
	Yards(l length.Len, u length.Unit) string
	SizeUnit(l length.Len, u length.Unit) string
	SizeText(size string) string
	KeyNews() string
	NewsNotice() string
	NewsTitle() string
	NewsLead() string
	NewsKeeps() string
	NewsNothing() string
	KeyTakeChange() string
	ChangeTaken() string
	KeyNotNow() string
	ReadingChange() string
	GoesOnAsBefore() string
	NewsMore(pieces, fabric string, fresh bool) string
	NewsFewer(pieces, fabric string) string
	NewsOther(before, after, fabric string) string
	NewsFabric(f string) string
	NewsFabricGone(f string) string
	NewsFabricOther(f string) string
	NewsMat() string
	NewsLoads(by int) string
	Key(name string) string
	LargeWet() string
	LargeAllCut() string
	LargeShort() string
	PlainMore(cutting bool) string
	PlainByPlace() string
	PlainChange() string
	PlainNumbers(from, to int) string
	PlainWhichPieces() string
	PlainWhichEnd() string
	PlainPiece(off bool, row, place int, what string) string
	PlainFileName(listed bool) string
	PlainNotKept() string
	PlainNow(what string) string
	PlainNotSo() string
	PlainPaused() string
	PlainWhichLoad() string
	PlainZero() string
	PlainNameHow() string
	SettingsTitle() string
	SettingsHow() string
	KeyNextValue() string
	KeyLastValue() string
	SettingUnits() string
	SettingLetters() string
	SettingLook() string
	SettingSound() string
	SettingNotify() string
	SettingPause() string
	SettingKeys() string
	SettingStill() string
	SettingLanguage() string
	OnOff(on bool) string
	UnitsName(u string) string
	LettersName(l string) string
	LookName(l string) string
	PauseName(minutes int) string
	KeysName(gap time.Duration) string
	LanguageName(l string) string
	BrokenSettings(path, what string) string
}

// In is the language of that name, English where we don't speak it.
func In(language string) Words {
	if language == "de" {
		return German{}
	}
	return English{}
}

// count writes a number and its noun, in the singular for one.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return itoa(n) + " " + many
}

// Capital writes the first letter large, to begin a sentence.
func Capital(s string) string {
	if s == "" {
		return ""
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

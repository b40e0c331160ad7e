package words

import (
	"fmt"
	"strings"
	"time"

	"example.org/matside/plan/length"
)

// The first page.
func (German) FirstTitle() string  { return "willkommen" }
func (German) WayDemo() string     { return "Ausprobieren" }
func (German) WayDemoHow() string  { return "Ein erfundener Quilt. Nichts davon wird behalten." }
func (German) WayOpen() string     { return "Eine Schnittliste öffnen" }
func (German) WayOpenHow() string  { return "Eine, die schon geschrieben ist." }
func (German) WayWrite() string    { return "Hier eine schreiben" }
func (German) WayWriteHow() string { return "Stoff, dann Teile, eins nach dem anderen." }
func (German) WayResume() string   { return "Weiter schreiben" }
func (German) WayResumeHow(quilt string) string {
	if quilt == "" {
		return "Die Schnittliste ist, wie du sie verlassen hast."
	}
	return quilt + ": wie du ihn verlassen hast."
}
func (German) KeyStartNew() string           { return "lieber eine neue" }
func (German) KeyChoose() string             { return "dies hier" }
func (German) KeySettings() string           { return "Einstellungen" }
func (German) OpeningDemo() string           { return "Die Probe wird vorbereitet." }
func (German) NotHere() string               { return "Das geht von hier aus nicht." }
func (German) WentWrong() string             { return "Das ging nicht." }
func (German) KeyOpenInForm() string         { return "hier berichtigen" }
func (German) MistakesIn(file string) string { return "In " + file + " sind Fehler." }

// The file picker.
func (German) PickTitle() string          { return "eine Schnittliste öffnen" }
func (German) PickFolder(p string) string { return "In " + p + ":" }
func (German) FolderAbove() string        { return "der Ordner darüber" }
func (German) FolderName(n string) string { return n + "/" }
func (German) NoCutLists() string         { return "In diesem Ordner ist keine Schnittliste." }
func (German) FolderFailed(why string) string {
	return "Dieser Ordner kann nicht gelesen werden: " + why + "."
}
func (German) OthersHidden(n int) string {
	return count(n, "andere Datei", "andere Dateien") + " nicht gezeigt."
}
func (German) KeyAllFiles() string   { return "alle Dateien" }
func (German) KeyOnlyLists() string  { return "nur Schnittlisten" }
func (German) KeyAbove() string      { return "Ordner darüber" }
func (German) KeyOpenFolder() string { return "diesen Ordner öffnen" }
func (German) KeyCutThis() string    { return "diese schneiden" }
func (German) KeyWriteIn() string    { return "ändern" }
func (German) NoFolderAbove() string { return "Darüber ist kein Ordner mehr." }
func (German) NoFileHere() string    { return "Erst zu einer Schnittliste gehen." }
func (German) ReadingFile() string   { return "Die Schnittliste wird gelesen." }

// FormAsk is a question of the form.
func (German) FormAsk(question, about string) string {
	switch question {
	case "quilt":
		return "Was wird genäht?"
	case "fabric":
		return "Wie heißt der Stoff bei dir?"
	case "have":
		return "Was hast du von " + about + "?"
	case "stock":
		return "Wie viel ist von " + about + " da?"
	case "about fabric":
		return "Ist an " + about + " etwas besonders?"
	case "shrinks":
		return "Wie viel läuft " + about + " ein?"
	case "cutter setting":
		return "Was stellst du am Gerät für " + about + " ein?"
	case "shape":
		return "Welche Form, aus " + about + "?"
	case "count":
		return "Wie viele?"
	case "size", "strip size", "binding size":
		return "Wie groß?"
	case "outline":
		return "Welcher von deinen Umrissen?"
	case "finished":
		return "Ist das fertig genäht oder zugeschnitten?"
	case "hand":
		return "Links oder rechts?"
	case "label":
		return "Wofür sind sie?"
	case "about piece":
		return "Ist an diesen Teilen etwas besonders?"
	case "setting":
		return "Was willst du festlegen?"
	}
	return "Wie soll diese Zeile lauten?"
}

// FormHint says how a question is answered. What is typed is written as in
// the cut list.
func (German) FormHint(question, about string) string {
	switch question {
	case "quilt":
		return "Irgendein Name, an dem du ihn erkennst."
	case "fabric":
		return "Der Name, unter dem du ihn kennst: Tinte, blaue Punkte."
	case "have":
		return "Die Maße kommen gleich."
	case "stock":
		return "Quer, x, im Fadenlauf: 42 in x 2 yd. Mehrere: 4 of 18 x 21, 42 x 36."
	case "about fabric", "about piece":
		return "Ankreuzen, was stimmt. Eingabe, wenn fertig."
	case "shrinks":
		return "Quer x im Fadenlauf, beim Waschen: 3% x 5%."
	case "cutter setting":
		return "So wie es am Gerät steht: Baumwolle."
	case "count":
		return "Eine ganze Zahl. Hoch und Runter zählen."
	case "size":
		return sizeHintGerman(about)
	case "strip size":
		return "Wie breit jeder Streifen ist. Er läuft quer über den Stoff."
	case "binding size":
		return "Streifenbreite, around, Größe des Quilts: 2 1/2 around 44 x 52."
	case "finished":
		return "Fertig: ohne Nahtzugabe, so wie im Quilt."
	case "hand":
		return "Von der rechten Stoffseite gesehen."
	case "label":
		return "Ein Block, ein Buchstabe, ein Rand. Eingabe allein: nichts."
	case "line":
		return "So wie sie in der Schnittliste steht."
	}
	return ""
}

func sizeHintGerman(shape string) string {
	switch shape {
	case "square":
		return "Die Seite: 2 1/2."
	case "rectangle":
		return "Quer, x, im Fadenlauf: 2 1/2 x 4 1/2."
	case "half-square triangle":
		return "Die kurze Seite: 3."
	case "quarter-square triangle":
		return "Die lange Seite: 5 1/4."
	case "half-rectangle triangle":
		return "Die zwei kurzen Seiten: 3 x 5."
	case "equilateral triangle", "half hexagon", "octagon":
		return "Die Höhe: height 3. Oder die Seite: side 3."
	case "hexagon", "diamond":
		return "Die Seite: 1 1/2. Oder die Höhe: height 3."
	case "parallelogram":
		return "Grundseite x Höhe: 3 x 2."
	case "trapezoid", "tumbler", "wedge":
		return "Lange Seite x kurze Seite x Höhe: 4 x 2 x 3."
	case "circle":
		return "Quer durch die Mitte: 3."
	case "quarter circle":
		return "Von der Ecke zum Bogen: 3."
	}
	return "Wie 2 1/2 oder 2 1/2 x 4 1/2."
}

// optionsInGerman are the choices of the questions.
var optionsInGerman = map[string]string{
	"yardage": "Meterware vom Ballen", "fat quarters": "Fat Quarters", "other pieces": "andere Stücke",
	"nothing yet": "noch nichts: sag mir, was ich kaufen muss",
	"finished":    "fertig: Naht kommt dazu", "cut": "zugeschnitten: genau so", "left": "links", "right": "rechts",
	"one-way": "sein Muster hat oben und unten", "sheds": "er verliert Flusen und Fäden", "face down": "er liegt mit der rechten Seite auf der Matte",
	"shrinks": "er läuft ein: ich wasche ihn vorher", "cutter setting": "am Gerät gibt es eine Einstellung für ihn",
	"lengthwise": "wie geschrieben, im Fadenlauf", "crosswise": "die erste Zahl im Fadenlauf", "any grain": "beliebig gedreht",
	"trimmed": "spitze Ecken gekappt", "fussy": "von Hand auf ein Motiv gesetzt", "by hand": "von Hand am Tisch geschnitten",
	"seam": "die Nahtzugabe", "allowance": "Zuschnitte, wie Bücher sie drucken", "units": "Zoll oder Zentimeter", "mat": "die Größe der Matte",
	"gap": "Abstand zwischen den Teilen", "margin": "Stoff rund um die Teile", "outline": "ein eigener Umriss",
	"strip": "Streifen, von Hand", "binding": "Einfassung, von Hand",
	"diamond 45": "Raute, 45 Grad", "diamond 60": "Raute, 60 Grad",
	"parallelogram 45": "Parallelogramm, 45 Grad", "parallelogram 60": "Parallelogramm, 60 Grad",
}

// FormOption names one of the choices of a question.
func (German) FormOption(option string) string {
	if says, ok := optionsInGerman[option]; ok {
		return says
	}
	if names, ok := shapesInGerman[option]; ok {
		return names[0]
	}
	return option
}

// The sheet of the form.
func (German) FormTitle() string           { return "eine Schnittliste" }
func (German) FormStep(n, of int) string   { return fmt.Sprintf("Frage %d von %d", n, of) }
func (German) RowAddQuilt() string         { return "+ was genäht wird" }
func (German) RowAddFabric() string        { return "+ ein Stoff" }
func (German) RowAddPiece(f string) string { return "+ Teile aus " + f }
func (German) RowAddSetting() string       { return "+ Naht, Matte, Maße …" }
func (German) RowFinish() string           { return "Speichern und den Plan ansehen" }
func (German) RowUnfinished() string       { return "noch nicht fertig" }
func (German) KeyChange() string           { return "ändern" }
func (German) KeyAdd() string              { return "dazu" }
func (German) KeyGoOnWith() string         { return "damit weiter" }
func (German) KeySeePlan() string          { return "speichern, Plan ansehen" }
func (German) KeyTakeOff() string          { return "von der Liste nehmen" }
func (German) KeyUndo() string             { return "rückgängig" }
func (German) KeyNextQuestion() string     { return "weiter" }
func (German) KeyMark() string             { return "ankreuzen" }
func (German) NothingToUndo() string       { return "Noch wurde nichts geändert." }
func (German) NotALine() string            { return "Das ist keine Zeile der Liste." }
func (German) FabricIsUsed(f string) string {
	return "Aus " + f + " sind noch Teile: erst diese wegnehmen."
}
func (German) FirstMistake(what string) string { return "Das erst berichtigen: " + stop(what) }
func (German) UnfinishedFirst() string {
	return "Etwas ist erst halb beantwortet: fertig machen oder wegnehmen."
}
func (German) CutByHandNote() string { return "Zu groß für die Matte: von Hand schneiden." }

// Odd explains a finished size.
func (German) Odd(finished, exact, book string, ruler bool) string {
	switch {
	case book == "" || book == exact:
		return finished + " fertig: Zuschnitt " + exact + "."
	case ruler:
		return finished + " fertig: Zuschnitt " + exact + ", wie im Buch."
	}
	return finished + " fertig: Zuschnitt " + book + " wie im Buch, " + exact + " genau."
}

// Saving a cut list.
func (German) SaveTitle() string          { return "die Schnittliste speichern" }
func (German) SaveAs() string             { return "Wo speichern?" }
func (German) SaveHint() string           { return "Der Name lässt sich ändern. Eingabe speichert." }
func (German) KeySave() string            { return "speichern" }
func (German) SavedAs(path string) string { return "Gespeichert als " + path + "." }
func (German) FileThere(p string) string  { return p + " gibt es schon." }
func (German) FileChanged(p string) string {
	return p + " hat sich seit dem Öffnen geändert."
}
func (German) WhatToDo() string      { return "Was soll aus deiner werden?" }
func (German) KeySaveOther() string  { return "meine unter anderem Namen speichern" }
func (German) KeySaveOver() string   { return "meine darüber speichern" }
func (German) KeyTakeTheirs() string { return "meine verwerfen, die Datei nehmen" }
func (German) ListNotSaved(why string) string {
	return "NICHT GESPEICHERT: " + why + "."
}

// The plan of a list just written.
func (German) PlanTitle(quilt string) string { return "der Plan für " + quilt }
func (German) Planning() string              { return "Die Ladungen werden geplant." }
func (German) PlanPieces(pieces, loads int) string {
	return stueck(pieces) + " in " + ladungen(loads) + " der Matte."
}
func (German) PlanProved() string { return "Mit weniger Ladungen geht es nicht." }
func (German) PlanAtLeast(n int) string {
	return "Mit weniger als " + ladungen(n) + " geht es nicht."
}
func (German) PlanBuy(fabric, width, length string) string {
	return "Von " + fabric + " " + length + " kaufen, " + width + " breit."
}
func (German) PlanEnough(fabric string) string { return fabric + ": es ist genug da." }
func (German) PlanShort(fabric string, pieces int, length string) string {
	says := "Von " + fabric + " ist zu wenig da: "
	if pieces > 0 {
		says += count(pieces, "Teil fehlt", "Teile fehlen") + ", "
	}
	if length == "" {
		return says + "keine Länge würde reichen."
	}
	return says + "noch " + length + " kaufen."
}
func (German) PlanNothing() string     { return "Nichts davon kommt auf die Matte." }
func (German) KeyStartCutting() string { return "mit dem Schneiden anfangen" }
func (German) KeyBackToForm() string   { return "zurück zur Liste" }

// Yards says how much fabric to buy.
func (German) Yards(l length.Len, u length.Unit) string {
	if u == length.In {
		return comma(strings.TrimSuffix(l.Yards(), " yd")) + " Yard"
	}
	return comma(l.FormatUnit(u))
}

// SizeUnit is a size with its unit behind it.
func (g German) SizeUnit(l length.Len, u length.Unit) string {
	return g.Length(l, u) + " " + g.unit(u)
}

// A cut list that was changed while its quilt is under way.
func (German) KeyNews() string    { return "die Liste ist geändert" }
func (German) NewsNotice() string { return "Die Schnittliste hat sich geändert: v zeigt, wie." }
func (German) NewsTitle() string  { return "die Schnittliste hat sich geändert" }
func (German) NewsLead() string   { return "Seit du angefangen hast, hat sich die Liste geändert:" }
func (German) NewsKeeps() string {
	return "Geschnitten bleibt geschnitten. Nur der Rest wird neu geplant."
}
func (German) NewsNothing() string   { return "Am Zuschnitt ändert sich nichts." }
func (German) KeyTakeChange() string { return "die Änderung übernehmen" }
func (German) ChangeTaken() string   { return "Die Änderung ist übernommen." }
func (German) KeyNotNow() string     { return "jetzt nicht" }
func (German) ReadingChange() string { return "Die Änderung wird gelesen." }
func (German) GoesOnAsBefore() string {
	return "Nichts davon wird übernommen: alles geht weiter wie bisher."
}
func (German) NewsMore(pieces, fabric string, fresh bool) string {
	if fresh {
		return "Neu: " + pieces + " aus " + fabric + "."
	}
	return "Mehr aus " + fabric + ": " + pieces + "."
}
func (German) NewsFewer(pieces, fabric string) string {
	return "Weniger aus " + fabric + ": " + pieces + "."
}
func (German) NewsOther(before, after, fabric string) string {
	return after + " aus " + fabric + ", statt " + before + "."
}
func (German) NewsFabric(f string) string      { return "Neuer Stoff: " + f + "." }
func (German) NewsFabricGone(f string) string  { return f + " steht nicht mehr auf der Liste." }
func (German) NewsFabricOther(f string) string { return f + " ist anders beschrieben." }
func (German) NewsMat() string                 { return "Die Matte, der Rand oder der Abstand ist anders." }
func (German) NewsLoads(by int) string {
	switch {
	case by > 0:
		return ladungen(by) + " mehr."
	case by < 0:
		return ladungen(-by) + " weniger."
	}
	return "So viele Ladungen wie vorher."
}

// Key names a key as it is written on a German keyboard.
func (German) Key(name string) string {
	return strings.NewReplacer("Enter", "Eingabe", "Backspace", "Rücktaste", "Space", "Leertaste", "Left", "Links", "Right", "Rechts",
		"Up", "Hoch", "Down", "Runter", "ctrl+", "Strg+", " to ", " bis ").Replace(name)
}

// What the plain lines say besides.
func (German) PlainMore(cutting bool) string {
	if cutting {
		return "mehr: Ladungen, Matten, Pause, Tage, Quilts, Einstellungen"
	}
	return "mehr: Matten, Tage, Quilts, Einstellungen"
}
func (German) PlainByPlace() string { return "sagen, welche, nach ihrem Platz" }
func (German) PlainChange() string  { return "eine Schnittliste ändern" }
func (German) PlainNumbers(from, to int) string {
	if from == to {
		return "Nummer " + itoa(from)
	}
	return "Nummern " + itoa(from) + " bis " + itoa(to)
}
func (German) PlainWhichPieces() string {
	return "Die Nummern der verdorbenen eintippen: 3, oder 3 4 9."
}
func (German) PlainWhichEnd() string {
	return "Dieselbe Nummer nimmt es zurück. Eingabe allein: fertig. 0: keines."
}
func (German) PlainPiece(off bool, row, place int, what string) string {
	says := "Verdorben"
	if off {
		says = "Nicht verdorben"
	}
	return fmt.Sprintf("%s: Reihe %d, Teil %d, %s.", says, row, place, what)
}
func (German) PlainFileName(listed bool) string {
	if listed {
		return "Die Nummer oder den Namen der Datei eintippen. Eingabe allein geht zurück."
	}
	return "Den Namen der Datei eintippen. Eingabe allein geht zurück."
}
func (German) PlainNotKept() string { return "Beendet. Von der Probe wird nichts behalten." }
func (German) PlainNow(what string) string {
	return "Jetzt: " + what + ". Eingabe allein behält es."
}
func (German) PlainNotSo() string     { return "Notiert: es war doch nicht so." }
func (German) PlainPaused() string    { return "Du machst eine Pause." }
func (German) PlainWhichLoad() string { return "Welche Ladung? 0 geht zurück." }
func (German) PlainZero() string      { return "0 geht zurück." }
func (German) PlainNameHow() string   { return "Eintippen. Eingabe allein lässt ihn, wie er ist." }

// The settings.
func (German) SettingsTitle() string   { return "Einstellungen" }
func (German) SettingsHow() string     { return "Gilt sofort und auch beim nächsten Mal." }
func (German) KeyNextValue() string    { return "ändern" }
func (German) KeyLastValue() string    { return "zurück ändern" }
func (German) SettingUnits() string    { return "Längen in" }
func (German) SettingLetters() string  { return "Große Buchstaben" }
func (German) SettingLook() string     { return "Farben" }
func (German) SettingSound() string    { return "Klingeln" }
func (German) SettingNotify() string   { return "Mitteilung schicken" }
func (German) SettingPause() string    { return "An Pausen erinnern" }
func (German) SettingKeys() string     { return "Zwei Anschläge sind einer" }
func (German) SettingStill() string    { return "Den Bildschirm still halten" }
func (German) SettingLanguage() string { return "Sprache" }
func (German) OnOff(on bool) string {
	if on {
		return "ja"
	}
	return "nein"
}
func (German) UnitsName(u string) string {
	switch u {
	case "in":
		return "Zoll"
	case "cm":
		return "Zentimeter"
	}
	return "wie die Liste sagt"
}
func (German) LettersName(l string) string {
	switch l {
	case "large":
		return "immer"
	case "small":
		return "nie"
	}
	return "wo Platz ist"
}
func (German) LookName(l string) string {
	switch l {
	case "dark":
		return "dunkel"
	case "light":
		return "hell"
	case "high contrast":
		return "starker Kontrast"
	case "no color":
		return "keine Farbe"
	}
	return "wie dein Fenster sagt"
}
func (German) PauseName(minutes int) string {
	switch {
	case minutes < 0:
		return "nie"
	case minutes == 0:
		return "so wie du arbeitest"
	}
	return "nach " + count(minutes, "Minute", "Minuten")
}
func (German) KeysName(gap time.Duration) string {
	return "binnen " + comma(fmt.Sprintf("%.2f", gap.Seconds())) + " Sekunden"
}
func (German) LanguageName(l string) string {
	switch l {
	case "en":
		return "English"
	case "de":
		return "Deutsch"
	}
	return "wie der Rechner sagt"
}

// BrokenSettings tells what is wrong with the file of the settings.
func (German) BrokenSettings(path, what string) string {
	return "Ein Teil der Einstellungen ist nicht verständlich (" + path + ", " + what + "). Dafür gilt das Übliche."
}

package words

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
)

// German is what quilters say in German. Lengths have a decimal comma; what
// stands in the cut list itself stays as it is written there. The large words
// do without umlauts, which the large letters don't have.
type German struct{}

// comma writes decimal points between digits as commas.
func comma(s string) string {
	b := []byte(s)
	digit := func(i int) bool { return i >= 0 && i < len(b) && b[i] >= '0' && b[i] <= '9' }
	for i := range b {
		if b[i] == '.' && digit(i-1) && digit(i+1) {
			b[i] = ','
		}
	}
	return string(b)
}

// Length writes a length without its unit.
func (German) Length(l length.Len, u length.Unit) string { return comma(l.Show(u)) }

// Size writes a width across and a height along the lengthwise grain.
func (g German) Size(w, h length.Len, u length.Unit) string {
	return g.Length(w, u) + " x " + g.Length(h, u)
}

// shapesInGerman are the shapes in the singular and the plural.
var shapesInGerman = map[string][2]string{
	"square": {"Quadrat", "Quadrate"}, "rectangle": {"Rechteck", "Rechtecke"},
	"half-square triangle":    {"Halbquadrat-Dreieck", "Halbquadrat-Dreiecke"},
	"quarter-square triangle": {"Viertelquadrat-Dreieck", "Viertelquadrat-Dreiecke"},
	"half-rectangle triangle": {"Halbrechteck-Dreieck", "Halbrechteck-Dreiecke"},
	"equilateral triangle":    {"gleichseitiges Dreieck", "gleichseitige Dreiecke"},
	"hexagon":                 {"Sechseck", "Sechsecke"}, "half hexagon": {"halbes Sechseck", "halbe Sechsecke"},
	"octagon": {"Achteck", "Achtecke"}, "diamond": {"Raute", "Rauten"}, "parallelogram": {"Parallelogramm", "Parallelogramme"},
	"trapezoid": {"Trapez", "Trapeze"}, "tumbler": {"Becher-Trapez", "Becher-Trapeze"}, "wedge": {"Keil", "Keile"},
	"circle": {"Kreis", "Kreise"}, "quarter circle": {"Viertelkreis", "Viertelkreise"},
	"strip": {"Streifen", "Streifen"}, "binding": {"Einfassung", "Einfassungen"},
}

// Pieces writes n pieces of a line: "24 Quadrate 2 1/2".
func (g German) Pieces(line cutlist.Line, n int) string {
	names, ok := shapesInGerman[line.Shape]
	if !ok { // an outline of her own, by its name
		return strings.TrimRight(itoa(n)+" "+line.Shape+" "+g.SizeText(line.Size), " ")
	}
	return strings.TrimRight(count(n, names[0], names[1])+" "+g.SizeText(line.Size), " ")
}

// SizeText writes the size of a line as the reader gives it.
func (German) SizeText(size string) string {
	return comma(strings.NewReplacer("side ", "Seite ", "height ", "Höhe ", ", left", ", links", ", right", ", rechts", "around", "um").Replace(size))
}

// And joins names.
func (German) And(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " und " + names[len(names)-1]
}

func stueck(n int) string    { return count(n, "Teil", "Teile") }
func ladungen(n int) string  { return count(n, "Ladung", "Ladungen") }
func zuschnitt(n int) string { return count(n, "groben Zuschnitt", "grobe Zuschnitte") }

// Step names a step, as the trail shows it.
func (German) Step(n int) string {
	return []string{"Stoff", "Bügeln", "Laden", "Schneiden", "Abziehen"}[n]
}
func (German) Large(n int) string {
	return []string{"STOFF", "GLATT", "LADEN", "SCHNEIDEN", "ABZIEHEN"}[n]
}
func (German) LargeLay(mat string) []string { return []string{"AUF", "MATTE " + mat} }
func (German) LargeDrawing(n int) []string  { return []string{fmt.Sprintf("ZEICHNUNG %d", n)} }
func (German) LargePeel(n int) string       { return strings.ToUpper(stueck(n)) }
func (German) LargeRest() []string          { return []string{"PAUSE", "MACHEN"} }
func (German) LargePause() string           { return "PAUSE" }
func (German) LargeCutOver() string         { return "FERTIG?" }
func (German) LargeWait() string            { return "WARTEN" }
func (German) LargeSure() string            { return "SICHER?" }
func (German) LargeWet() string             { return "NASS" }
func (German) LargeAllCut() string          { return "FERTIG" }
func (German) LargeShort() string           { return "ZU WENIG" }
func (German) LargeHello() string           { return "HALLO" }
func (German) LargeSpoiled(n string) string { return n + " KAPUTT" }
func (German) LargeLoads(n int) string      { return strings.ToUpper(ladungen(n)) }

func (German) Done(n int) string {
	return []string{"ist zugeschnitten", "glatt, trocken, abgekühlt", "liegt glatt", "das Gerät steht still", "alles gut"}[n]
}
func (German) CutOne(fabric, size string) string  { return fabric + " zuschneiden: " + size + "." }
func (German) CutMany(n int) string               { return zuschnitt(n) + " zuschneiden:" }
func (German) TakeOne(fabric, size string) string { return fabric + " nehmen: " + size + "." }
func (German) TakeMany(n int) string              { return zuschnitt(n) + " nehmen:" }
func (German) CutAlready() string                 { return "schon zugeschnitten" }
func (German) ItIsCutAlready() string             { return "Der Zuschnitt ist schon fertig." }
func (German) FromPanel(panel, of int) string {
	return fmt.Sprintf("Der Zuschnitt kommt aus Stück %d von %d.", panel, of)
}
func (German) Panel(panel int) string           { return fmt.Sprintf("Stück %d", panel) }
func (German) Rough(fabric, size string) string { return fabric + " " + size }
func (German) AcrossFirst() string {
	return "Erste Zahl quer, zweite im Fadenlauf."
}
func (German) KeepWayUp(fabrics string) string { return "Oben bleibt oben: " + fabrics + "." }
func (German) CutAcross(first, last int, at string) string {
	if last > first {
		return fmt.Sprintf("Schnitt %d bis %d: quer, je %s unter der Oberkante.", first, last, at)
	}
	return fmt.Sprintf("Schnitt %d: quer, %s unter der Oberkante.", first, at)
}
func (German) CutAlong(first, last int, at string) string {
	if last > first {
		return fmt.Sprintf("Schnitt %d bis %d: längs, je %s von der linken Kante.", first, last, at)
	}
	return fmt.Sprintf("Schnitt %d: längs, %s von der linken Kante.", first, at)
}
func (German) PanelLegend(fabric string, panel int, size string) string {
	return fmt.Sprintf("%s, Stück %d, %s", fabric, panel, size)
}
func (German) PageOf(n, of int) string {
	return fmt.Sprintf("Teil %d von %d: n zeigt den nächsten", n, of)
}
func (German) KeyNextRough() string { return "der nächste Stoff" }
func (German) KeyLastRough() string { return "der davor" }
func (German) RotaryCare() string {
	return "Der Rollschneider ist scharf: beim Weglegen immer schließen."
}

func (German) Press(fabrics string) string { return fabrics + " glatt bügeln." }
func (German) PressMany(n int) string      { return fmt.Sprintf("Alle %d Zuschnitte glatt bügeln.", n) }
func (German) DryAndCool() string          { return "Er muss trocken sein. Abkühlen lassen." }
func (German) IronCare() string {
	return "Das Bügeleisen ist heiß: zurück auf die Ablage, weg von der Matte. Die Anleitung des Herstellers geht vor."
}

func (German) LayOne(fabric, mat string) string { return fabric + " auf Matte " + mat + " legen." }
func (German) LayMany(n int, mat string) string {
	return fmt.Sprintf("%d Zuschnitte auf Matte %s legen.", n, mat)
}
func (German) Place(left, top string) string {
	return "Linke Kante auf Linie " + left + ", obere auf " + top + "."
}
func (German) PlaceOne(fabric, left, top string) string {
	return fabric + ": linke Kante " + left + ", obere " + top + "."
}
func (German) RightSideUp() string { return "Rechte Seite oben, Fadenlauf nach oben." }
func (German) FaceUp(fabrics string) string {
	return "Rechte Seite OBEN, Fadenlauf nach oben: " + fabrics + "."
}
func (German) FaceDown(fabrics string) string {
	return "Rechte Seite UNTEN, Fadenlauf nach oben: " + fabrics + "."
}
func (German) Smooth() string { return "Von der Mitte nach außen glattstreichen." }
func (g German) MayBeOff(margin length.Len, u length.Unit) string {
	return "Es darf bis zu " + comma(margin.Format(u)) + " " + g.unit(u) + " daneben liegen."
}
func (German) RollerCare() string {
	return "Finger weg von Klinge und Rollen. Die Anleitung des Herstellers geht vor."
}

func (German) CutDrawing(n int) string       { return fmt.Sprintf("Zeichnung %d schneiden.", n) }
func (German) Setting(setting string) string { return "Einstellen: " + setting + "." }
func (German) SettingOf(fabric, setting string) string {
	return "Einstellen für " + fabric + ": " + setting + "."
}
func (German) BladeSeated() string                { return "Ist die Klinge drin, und sitzt sie fest?" }
func (German) Mirrored() string                   { return "Nicht spiegeln: das ist schon geschehen." }
func (German) SettingToSuit(fabric string) string { return "Das Gerät auf " + fabric + " einstellen." }
func (German) StartAndLeave() string              { return "Starten. In Ruhe lassen, bis es stillsteht." }
func (g German) CutTakes(d time.Duration) string {
	return "Es dauert etwa " + stop(g.Time(d))
}
func (German) Meanwhile(fabrics string) string {
	return "Inzwischen " + fabrics + " für die nächste Ladung bügeln."
}
func (German) BladeCare() string {
	return "Die Klinge ist scharf: Hände weg, solange sie läuft. Die Anleitung des Herstellers geht vor."
}

func (German) Peel(n int) string  { return stueck(n) + " abziehen." }
func (German) WasteFirst() string { return "Erst die Reste, dann die Teile." }
func (German) Stack(letter rune, pieces, fabric, label string) string {
	if label == "" || label == string(letter) {
		return fmt.Sprintf("%c  %s, %s", letter, pieces, fabric)
	}
	return fmt.Sprintf("%c  %s, %s, für %s", letter, pieces, fabric, label)
}
func (German) AnySpoiled() string { return "Sind welche verdorben? Die Zahl eintippen." }
func (German) OrPick() string     { return "Oder im Bild wählen: Rechts, dann x." }
func (German) Picked(n int) string {
	return stueck(n) + " im Bild durchgestrichen."
}
func (German) KeyPick() string          { return "zum nächsten Teil im Bild" }
func (German) KeyPickBack() string      { return "zum Teil davor" }
func (German) KeyPickUp() string        { return "in die Reihe darüber" }
func (German) KeyPickDown() string      { return "in die Reihe darunter" }
func (German) KeyCross(off bool) string { return nicht(off, "dieses ist verdorben") }
func (German) KeyPickNone() string      { return "keines davon" }
func (German) CursorHow(peel bool) string {
	if peel {
		return "Pfeiltasten: die anderen. x: verdorben oder nicht."
	}
	return "Pfeiltasten: die anderen."
}
func (German) NoPiece() string { return "Erst ein Teil wählen: mit Links und Rechts." }
func (German) PieceAt(row, place int, piece, fabric string, letter rune, label string) string {
	text := fmt.Sprintf("%c  Reihe %d, Teil %d: %s, %s", letter, row, place, piece, fabric)
	if label != "" && label != string(letter) {
		text += ", für " + label
	}
	return text
}
func (German) Spoiled(n int) string {
	if n == 1 {
		return "1 Teil verdorben, wird neu geschnitten."
	}
	return stueck(n) + " verdorben, werden neu geschnitten."
}
func (German) SpoiledOf(left int) string {
	return fmt.Sprintf("%d verdorben. Wie viele davon hier?", left)
}
func (German) FromTo(least, most int) string {
	return fmt.Sprintf("Eine Zahl eintippen, %d bis %d.", least, most)
}
func (German) OnlySoMany(n int) string {
	if n == 1 {
		return "Auf der Matte ist nur 1 Teil."
	}
	return "Auf der Matte sind nur " + stueck(n) + "."
}
func (German) OnlyOfThem(n int) string { return fmt.Sprintf("Davon gibt es nur %d.", n) }
func (German) AtLeast(n int) string    { return fmt.Sprintf("Davon müssen es mindestens %d sein.", n) }

func (German) LoadOf(n, of int) string { return fmt.Sprintf("Ladung %d von %d", n, of) }
func (German) PiecesOf(n, of int) string {
	return fmt.Sprintf("%d von %s", n, count(of, "Teil", "Teilen"))
}
func (German) LoadCaption() string { return "Ladung" }
func (German) ToGoCaption() string { return "Teile noch" }
func (German) TimeCaption(guess bool) string {
	if guess {
		return "noch, geschätzt"
	}
	return "noch, etwa"
}
func (g German) TimeLeft(d time.Duration, guess bool) string {
	text := "noch etwa " + g.Time(d)
	if guess {
		text += " (geschätzt)"
	}
	return text
}
func (German) Time(d time.Duration) string {
	h, m := hoursAndMinutes(d)
	switch {
	case h == 0:
		return fmt.Sprintf("%d Min.", m)
	case m == 0:
		return fmt.Sprintf("%d Std.", h)
	}
	return fmt.Sprintf("%d Std. %d Min.", h, m)
}
func (German) LargeTime(d time.Duration) string {
	h, m := hoursAndMinutes(d)
	return fmt.Sprintf("%d:%02d", h, m)
}
func (g German) TimeLeftShort(d time.Duration, guess bool) string {
	if guess {
		return "noch " + g.Time(d) + "?"
	}
	return "noch " + g.Time(d)
}
func (German) Clock(t time.Time) string { return t.Format("15:04") + " Uhr" }

func (German) Recut() string              { return "noch einmal" }
func (German) DemoNotice() string         { return "Probe: nichts davon wird behalten" }
func (German) Mat(name string) string     { return "Matte " + name }
func (German) SinceWash(n int) string     { return ladungen(n) + " seit der Wäsche" }
func (German) BeforeWash(n int) string    { return fmt.Sprintf("noch %d, dann ist sie fällig", n) }
func (German) WashDue() string            { return "WASCHEN" }
func (German) Drying(until string) string { return "trocknet bis etwa " + until }
func (German) SinceAndDue(n, left int) string {
	return fmt.Sprintf("%d seit der Wäsche, fällig in %d", n, left)
}
func (German) WashedMat(mat string) string { return "Matte " + mat + " ist gewaschen." }
func (German) WashHow() string {
	return "Lauwarmes Wasser, ein Tropfen Spülmittel, weiche Bürste. An der Luft trocknen, Klebeseite frei."
}
func (German) AdhesiveCare() string {
	return "Kleber kann die Garantie berühren: die Anleitung des Herstellers geht vor. Am offenen Fenster sprühen, fern von Flamme und Gerät."
}
func (German) Name() string                 { return "matside" }
func (German) Caution(what string) string   { return "! " + what }
func (German) Legend(parts []string) string { return strings.Join(parts, ", ") }
func (German) TooSmall(needW, needH, w, h int) string {
	return fmt.Sprintf("Das Fenster größer ziehen: matside braucht %d mal %d, dies ist %d mal %d. q beendet.", needW, needH, w, h)
}

func (German) KeyBack() string             { return "zurück" }
func (German) KeyLeave() string            { return "beenden" }
func (German) KeySleep() string            { return "eine Weile zur Befehlszeile" }
func (German) KeyHelp() string             { return "Tasten" }
func (g German) KeyLook(now string) string { return "andere Farben (jetzt " + g.LookName(now) + ")" }
func (German) KeyWash() string             { return "Matte gewaschen" }
func (German) KeyUnwash(mat string) string { return "nicht gewaschen" }
func (German) KeyErase() string            { return "löschen" }
func (German) KeyCount() string            { return "wie viele verdorben sind" }
func (German) KeyMore() string             { return "ein verdorbenes mehr" }
func (German) KeyFewer() string            { return "ein verdorbenes weniger" }
func (German) KeyRetry() string            { return "noch einmal versuchen" }
func (German) EnterOrSpace() string        { return "Eingabe oder Leertaste" }
func (German) EveryKey() string            { return "alle Tasten" }
func (German) TakeCount(n int) string      { return fmt.Sprintf("%d verdorben", n) }
func (German) NothingBack() string         { return "Hier fing der Quilt an: es gibt nichts zurückzunehmen." }
func (German) LongNumber() string          { return "So viele Teile hat keine Matte." }
func (German) FabricOnIt(mat string) string {
	return "Auf Matte " + mat + " liegt Stoff: erst abziehen."
}
func (German) WashTakenBack(mat string) string {
	return "Die Wäsche von Matte " + mat + " ist zurückgenommen."
}
func (German) WhichWash() string { return "Welche Matte wurde gewaschen?" }
func (German) MatLine(name string, since int) string {
	return "Matte " + name + ", " + ladungen(since) + " seit der Wäsche"
}
func (German) DryNow() string             { return "sie ist trocken, weiter" }
func (German) UseOther(mat string) string { return "Matte " + mat + " nehmen" }
func (German) WetHoldsBadly() string      { return "Eine nasse Matte hält den Stoff nicht." }
func (German) StillDrying(mat, until string) string {
	return "Matte " + mat + " trocknet bis etwa " + until + "."
}

func (German) AllCut(quilt string) string { return quilt + " ist ganz geschnitten." }
func (German) Totals(pieces, loads int) string {
	return count(pieces, "gutes Teil", "gute Teile") + " in " + ladungen(loads) + "."
}
func (German) TotalSpoiled(n int) string {
	if n == 0 {
		return "Keines ist verdorben."
	}
	return count(n, "Teil ist", "Teile sind") + " verdorben und neu geschnitten."
}
func (German) StillShort(n int) string {
	return "Für " + stueck(n) + " ist zu wenig Stoff da."
}
func (German) ByHandYet(n int) string {
	return "Von Hand zu schneiden: noch " + count(n, "Zeile", "Zeilen") + " der Liste."
}
func (German) ToSewing() string     { return "Das Gerät ausschalten und den Rollschneider schließen." }
func (German) NoneUnderWay() string { return "Kein Quilt ist angefangen." }
func (German) WaysOn() []string {
	return []string{
		"Kein Quilt ist angefangen. Drei Wege:", "",
		"matside demo", "an einem erfundenen Quilt probieren; nichts wird behalten", "",
		"matside cut DATEI", "den Quilt einer Schnittliste schneiden", "",
		"matside help", "wie man eine Schnittliste schreibt",
	}
}
func (German) Saving() string               { return "wird gespeichert …" }
func (German) NotYetSaved() string          { return "Einen Moment: wird noch gespeichert." }
func (German) LeavingSoon() string          { return "Ende: das letzte Speichern wird abgewartet …" }
func (German) SaveFailed(why string) string { return "NICHT GESPEICHERT: " + why }
func (German) OpeningFile() string          { return "Die Quilts werden geholt." }
func (German) OneMoment() string            { return "Einen Moment. q beendet sofort." }
func (German) KeyStop() string              { return "abbrechen" }
func (German) SettingsNotKept(why string) string {
	return "Die Einstellungen konnten nicht behalten werden: " + why + "."
}
func (German) CutOver() string   { return "Das Gerät müsste fertig sein." }
func (German) RestHands() string { return "Zeit, die Hände auszuruhen." }
func (German) RestHow() string   { return "p beginnt eine Pause. Eingabe macht weiter." }
func (German) KeyPause() string  { return "Pause" }
func (German) KeyResume() string { return "weiter schneiden" }
func (g German) PauseSince(from time.Time) string {
	return "Die Pause begann um " + g.Clock(from) + "."
}
func (g German) PauseFor(d time.Duration) string {
	return "Etwa " + g.Time(d) + " tun den Händen gut."
}
func (German) PauseFree() string { return "Sie zählt nicht als Arbeit. So lange du magst." }

func (German) PlainHello(quilt string) string {
	return "matside in schlichten Zeilen: " + quilt + ". Die Zahl einer Antwort eintippen; Eingabe allein ist 1."
}
func (German) PlainChoices(choices string) string { return "Jetzt: " + choices + "." }
func (German) PlainPick(n int) string             { return fmt.Sprintf("Eine Zahl von 1 bis %d eintippen.", n) }
func (German) PlainAgain() string                 { return "noch einmal sagen" }
func (German) PlainAnySpoiled() string            { return "Sind welche verdorben? Dann diese Antwort wählen." }
func (German) PlainSomeSpoiled() string           { return "einige sind verdorben" }
func (German) PlainHowMany() string               { return "Wie viele sind verdorben?" }
func (German) PlainBack() string                  { return "Einen Schritt zurück." }
func (German) PlainLeft() string                  { return "Beendet. Alles ist gespeichert." }
func (German) PlainCaution(what string) string    { return "Vorsicht: " + what }
func (German) Row(n int, what string) string {
	return fmt.Sprintf("Reihe %d, von links: %s.", n, what)
}
func (German) RowPieces(pieces, fabric string, letter rune) string {
	return fmt.Sprintf("%s aus %s, Zeile %c", pieces, fabric, letter)
}

func nicht(on bool, what string) string {
	if on {
		return "doch nicht: " + what
	}
	return what
}

func (German) KeyLifted(on bool) string { return nicht(on, "Stoff hat sich gelöst") }
func (German) KeyRagged(on bool) string { return nicht(on, "eine Kante war ausgefranst") }
func (German) Lifted() string           { return "Notiert: Stoff hat sich gelöst." }
func (German) Ragged() string           { return "Notiert: eine Kante war ausgefranst." }
func (German) CutSoFar(quilt string) string {
	return quilt + " ist geschnitten, so weit der Stoff reicht."
}
func (German) MoreFabric() string {
	return "Stoff in die Schnittliste eintragen, dann noch einmal schneiden: nur diese werden geplant."
}
func (German) KeyLoads() string      { return "alle Ladungen" }
func (German) AllLoads() string      { return "alle Ladungen" }
func (German) KeyBackToStep() string { return "zurück zum Schritt" }
func (German) KeyUp() string         { return "nach oben" }
func (German) KeyDown() string       { return "nach unten" }
func (German) KeyNext() string       { return "diese als nächste schneiden" }
func (German) KeyEarlier() string    { return "früher" }
func (German) KeyLater() string      { return "später" }
func (German) KeyPutOff() string     { return "ans Ende verschieben" }
func (German) KeyJoin() string       { return "verdorbene Teile in weniger Ladungen schneiden" }
func (German) LoadIsDone() string    { return "Diese Ladung ist fertig." }
func (German) LoadIsBegun() string {
	return "Ihr Stoff ist schon zugeschnitten: erst fertig machen, oder zurück zum Stoff."
}
func (German) PiecesShort(n int) string  { return stueck(n) }
func (German) StateDone() string         { return "fertig" }
func (German) StateSpoiled(n int) string { return itoa(n) + " verdorben" }
func (German) StateNow() string          { return "jetzt" }
func (German) StatePutOff() string       { return "verschoben" }
func (German) KeyMats() string           { return "die Matten" }
func (German) AllMats() string           { return "die Matten" }
func (German) KeyRefresh() string        { return "Kleber aufgesprüht" }
func (German) KeyTakeBackMat() string    { return "das zurücknehmen" }
func (German) KeyDueLater() string       { return "eine Ladung später waschen" }
func (German) KeyDueSooner() string      { return "eine Ladung früher waschen" }
func (German) KeyDueAdvised() string     { return "waschen wie empfohlen" }
func (German) KeyUseMat() string         { return "diese Matte nehmen" }
func (German) KeyAddMat() string         { return "eine neue Matte" }
func (German) NothingBackMat(m string) string {
	return "Bei Matte " + m + " gibt es nichts zurückzunehmen."
}
func (German) DueAtLeastOne() string {
	return "Eine Matte wird frühestens nach einer Ladung gewaschen."
}
func (German) MatInUse(m string) string { return "Matte " + m + " ist schon in Gebrauch." }
func (German) InUse() string            { return "in Gebrauch" }
func (German) WashesAndLoads(washes, loads int) string {
	return count(washes, "Wäsche", "Wäschen") + " und " + ladungen(loads) + " insgesamt"
}
func (German) DueAfter(loads int, own, guess bool) string {
	text := "Waschen nach " + ladungen(loads)
	switch {
	case own:
		return text + ", wie du es festgelegt hast."
	case guess:
		return text + ": geschätzt, noch ist nichts gelernt."
	}
	return text + ": so gut hat sie bisher gehalten."
}
func (German) MatNumber(n int) string {
	names := []string{"Eins", "Zwei", "Drei", "Vier", "Fünf", "Sechs", "Sieben", "Acht", "Neun", "Zehn"}
	if n <= len(names) {
		return names[n-1]
	}
	return itoa(n)
}
func (German) KeyDays() string         { return "die Tage bisher" }
func (German) KeyNextPart() string     { return "der nächste Teil" }
func (German) DaysBehind() string      { return "die Tage bisher" }
func (German) NoDaysYet() string       { return "Noch wurde nichts abgezogen." }
func (German) DaysWillShow() string    { return "Teile, Minuten und Verdorbenes stehen dann hier." }
func (German) PiecesAnEvening() string { return "Teile je Abend" }
func (German) MinutesAStep() string    { return "Minuten je Schritt" }
func (German) SpoiledByFabric() string { return "Verdorben, nach Stoff" }
func (German) SpoiledByPlace() string  { return "Verdorben, nach Ort auf der Matte" }
func (German) Plain(n int) string      { return itoa(n) }
func (German) Day(date string) string {
	t, err := time.Parse("2006-01-02", date)
	if err != nil {
		return date
	}
	days := []string{"So", "Mo", "Di", "Mi", "Do", "Fr", "Sa"}
	return days[t.Weekday()] + t.Format(", 2.1.")
}
func (German) GoodAndSpoiled(good, spoiled int) string {
	if spoiled == 0 {
		return itoa(good)
	}
	return fmt.Sprintf("%d, %d verdorben", good, spoiled)
}
func (g German) UsualTime(low, mid, high time.Duration, guess bool) string {
	if guess {
		return g.Minutes(mid) + " Min., geschätzt"
	}
	return g.Minutes(mid) + " Min., meist " + g.Minutes(low) + " bis " + g.Minutes(high)
}
func (German) Minutes(d time.Duration) string {
	if d < 10*time.Minute {
		return comma(strings.TrimSuffix(strconv.FormatFloat(d.Minutes(), 'f', 1, 64), ".0"))
	}
	return itoa(int(d.Minutes() + 0.5))
}
func (German) KeyShelf() string    { return "das Regal" }
func (German) TheShelf() string    { return "das Regal" }
func (German) ShelfEmpty() string  { return "Das Regal ist leer." }
func (German) KeyCutQuilt() string { return "diesen schneiden" }
func (German) KeyAside() string    { return "beiseite legen" }
func (German) KeyTakeUp() string   { return "wieder aufnehmen" }
func (German) KeyRename() string   { return "anderer Name" }
func (German) KeyFinish() string   { return "für fertig erklären" }
func (German) KeyRemove() string   { return "aus dem Regal nehmen" }
func (German) Standing(n int) string {
	return []string{"angefangen", "beiseite gelegt", "ganz geschnitten", "weg"}[n]
}
func (German) LoadsLeft(n int) string         { return "noch " + ladungen(n) }
func (German) IsAllCut(quilt string) string   { return quilt + " ist ganz geschnitten." }
func (German) SureFinish(quilt string) string { return "Ist " + quilt + " fertig?" }
func (German) FinishMeans() string            { return "Was noch kommt, wird nicht geschnitten." }
func (German) SureRemove(quilt string) string { return quilt + " für immer aus dem Regal nehmen?" }
func (German) RemoveMeans() string            { return "Vorher wird eine Sicherung gemacht." }
func (German) YesOrNo() string                { return "y ist ja, Eingabe ist nein." }
func (German) Yes() string                    { return "ja" }
func (German) No() string                     { return "nein, so lassen" }
func (German) NewNameOf(what string) string   { return "Ein neuer Name für " + what + ":" }
func (German) NameHow() string                { return "Eintippen, dann Eingabe drücken." }
func (German) NameNeeded() string             { return "Ein Name braucht mindestens einen Buchstaben." }
func (German) KeyTakeName() string            { return "diesen Namen nehmen" }
func (German) KeyRetire() string              { return "diese Matte ist weggeworfen" }
func (German) SureRetire(m string) string     { return "Ist Matte " + m + " weggeworfen?" }
func (German) RetireMeans() string            { return "Was man von ihrer Abnutzung weiß, bleibt." }
func (German) KeyBlade() string               { return "neue Klinge eingesetzt" }
func (German) SureBlade() string              { return "Ist eine neue Klinge im Gerät?" }
func (German) CurveTitle() string             { return "Wie wahrscheinlich sich Stoff löst, nach Ladungen" }
func (German) LiftedSince() string            { return "Seit der Wäsche hat sich Stoff gelöst: waschen." }
func (German) BladeCut(long string) string    { return "Die Klinge hat " + long + " geschnitten." }
func (German) MinutesShort(d time.Duration) string {
	return itoa(int((d+time.Minute/2)/time.Minute)) + " Min."
}
func (German) Long(l length.Len, u length.Unit) string {
	if u == length.In {
		return count(int((l+length.Yard/2)/length.Yard), "Yard", "Yard")
	}
	return itoa(int((l+50*length.Centimetre)/(100*length.Centimetre))) + " m"
}

// Chances and ranges.
func (g German) TimeBetween(low, high time.Duration, guess bool) string {
	text := "etwa " + g.Time(high)
	if from, to := g.Time(low), g.Time(high); from != to {
		text = "zwischen " + from + " und " + to
	}
	if guess {
		text += " (geschätzt)"
	}
	return text
}
func (German) OneIn(p float64) string {
	text := English{}.OneIn(p)
	return strings.NewReplacer("under", "unter", "nearly certain", "fast sicher", " in ", " von ").Replace(text)
}
func (g German) MayLift(low, mid, high float64) string {
	return "Gefahr, dass sich in der nächsten Ladung Stoff löst: " + about(g, "etwa ", " bis ", low, mid, high)
}
func (g German) MayFray(low, mid, high float64) string {
	return "Gefahr einer ausgefransten Kante in der nächsten Ladung: " + about(g, "etwa ", " bis ", low, mid, high)
}
func (German) WhyGuess(lifts, takes int) string {
	if lifts == 0 {
		return fmt.Sprintf("geschätzt: noch hat sich nichts gelöst; es braucht %d Mal, um deine Matten zu kennen", takes)
	}
	return fmt.Sprintf("geschätzt: %d Mal hat sich Stoff gelöst; es braucht %d Mal, um deine Matten zu kennen", lifts, takes)
}
func (German) NewMatTime() string {
	return "Zeit für eine neue Matte: auch frisch gewaschen löst sich der Stoff zu oft."
}
func (German) ChangeBladeTime() string {
	return "Die Klinge wechseln; die Anleitung des Herstellers geht vor."
}
func (German) ChangeBladeCare() string {
	return "Gerät aus und Stecker gezogen; Finger weg von der Schneide; die alte Klinge umklebt in den Müll."
}

package words

import (
	"maps"

	"example.org/matside/plan"
	"example.org/matside/plan/say"
	"example.org/matside/session/reason"
	"example.org/matside/tui/files"
	"example.org/matside/tui/settings"
)

// saidInGerman is how the sentences go that are said below the screens, by
// their kinds. What is typed, files and commands stay as they are.
var saidInGerman = map[*say.Kind]string{
	plan.Packing: "die Ladungen werden gepackt",
	plan.Fitting: "die Zuschnitte werden auf den Stoff verteilt",
	plan.Alike:   "die Ladungen werden einander angeglichen",

	// Why a key is refused.
	reason.NoQuilt:      "dieser Quilt ist nicht mehr in Arbeit",
	reason.NothingBack:  "hier fing der Quilt an: es gibt nichts zurückzunehmen",
	reason.NothingOfMat: "bei Matte %s gibt es nichts zurückzunehmen",
	reason.NoMat:        "eine Matte %s gibt es nicht",
	reason.AllDone:      "alle Ladungen sind fertig",
	reason.SetAside:     "%s liegt beiseite; erst wieder aufnehmen",
	reason.OnlySoMany:   "Ladung %s hat nur %s Teile",
	reason.LoadDone:     "diese Ladung ist fertig",
	reason.FabricCut:    "ihr Stoff ist schon zugeschnitten; erst abziehen, oder zurück zum Stoff",
	reason.LastLoad:     "sie ist schon die letzte",
	reason.FabricOn:     "der Stoff liegt auf Matte %s; erst abziehen",
	reason.NameNeeded:   "ein Name braucht mindestens einen Buchstaben",
	reason.NameTooLong:  "der Name ist zu lang: höchstens 60 Buchstaben",
	reason.DueFrom:      "1 bis 1000 Ladungen, oder 0 für den Rat",
	reason.LoadsFrom:    "eine Zahl von 0 bis 1000 Ladungen",
	reason.MatThere:     "eine Matte %s gibt es schon",
	reason.MatGone:      "Matte %s ist weggeworfen; dieser einen anderen Namen geben",
	reason.MatTooLarge:  "so groß ist keine Matte",
	reason.MatInUse:     "%s wird auf Matte %s geschnitten; dort erst eine andere nehmen",
	reason.MinutesFrom:  "Minuten von 0 bis %s",
	reason.NoneToJoin:   "es gibt keine zwei Ladungen mit neu zu schneidenden Teilen",

	// What happened to a file.
	reason.LinkToNowhere: "%s verweist auf eine Datei, die es nicht gibt",
	reason.NotAFile:      "%s ist keine Datei",
	reason.IsAFolder:     "%s ist ein Ordner",
	reason.NotOurs:       "%s ist keine Datei von matside",
	reason.NoBackup:      "%s ist keine Sicherung von matside",
	reason.NotWhole:      "%s ist beschädigt oder nicht vollständig",
	reason.Damaged:       "%s ist beschädigt",
	reason.NextDamaged:   "%s ist beschädigt; sie sollte die Datendatei ersetzen",
	reason.NotTogether:   "%s und ihr Journal gehören zu verschiedenen Abenden",
	reason.BothDamaged:   "%s und ihr Journal sind beide beschädigt: der letzte Eintrag ist nicht lesbar",
	reason.RecordsLost:   "%[1]s und ihr Journal sind beide beschädigt: %[2]s nicht lesbar (%[4]s), insgesamt %[3]s",
	reason.Newer:         "%s stammt von einem neueren matside (%s)",
	reason.NewerLog:      "die Einträge stammen von einem neueren matside",
	reason.Moved:         "%s wurde verschoben oder ersetzt, während matside sie offen hatte",
	reason.CutShort:      "%s wurde gekürzt, während matside sie offen hatte",
	reason.Busy:          "matside ist schon in einem anderen Fenster offen",
	reason.BusySince:     "matside ist schon in einem anderen Fenster offen (seit %s Uhr, Prozess %s)",
	reason.NoRoom:        "auf dem Datenträger ist kein Platz mehr für %s",
	reason.CantWrite:     "%s lässt sich nicht schreiben: %s",
	reason.CantMake:      "%s lässt sich nicht anlegen: %s",
	reason.FileTrouble:   "%s: %s",
	reason.There:         "%s gibt es schon",
	reason.NoExport:      "das hat matside export nicht geschrieben, oder es fehlt ein Teil",
	reason.OtherExport:   "das ist Format %s, und dieses matside liest Format %s",

	reason.OneRecord:      "1 Eintrag",
	reason.Records:        "%s Einträge",
	reason.AndMore:        "%s und mehr",
	reason.Format:         "Format %s",
	reason.ProgramsFormat: "%s, Format %s",

	// What is safe.
	reason.NothingChanged:  "nichts wurde geändert",
	reason.NotTouched:      "sie wurde nicht angerührt",
	reason.NeitherTouched:  "keine von beiden wurde angerührt",
	reason.OthersWhole:     "alle anderen Einträge sind heil; nichts wurde geändert",
	reason.DataAsItWas:     "die Datendatei ist, wie sie war",
	reason.InJournalOrData: "alles bisher Notierte steht im Journal oder in der Datendatei",
	reason.AllIn:           "alles Notierte steht in %s",
	reason.RecordedSafe:    "was vorher notiert wurde, ist sicher",
	reason.AllRecordedSafe: "alles vorher Notierte ist sicher",

	// What to do.
	reason.RemoveLink:     "den Verweis löschen oder mit --db DATEI eine andere Datendatei nehmen",
	reason.ChooseOther:    "mit --db DATEI eine andere Datendatei nehmen",
	reason.NameFileIn:     "eine Datei darin nennen: --db %s",
	reason.NameNewFile:    "eine neue Datei nennen",
	reason.NameBackup:     "eine Sicherung nennen",
	reason.NameExport:     "eine Datei nennen, die matside export geschrieben hat",
	reason.OtherBackup:    "eine andere Sicherung versuchen",
	reason.OtherWithDB:    "mit --db DATEI eine andere nehmen",
	reason.RestoreOrOther: "matside restore %s setzt die letzte Sicherung an ihre Stelle; oder mit --db DATEI eine andere nehmen",
	reason.MoveOneOut:     "die, die nicht dazugehört, aus dem Ordner nehmen und neu beginnen",
	reason.RepairOrBackup: "matside check --repair behält alles Lesbare; matside restore SICHERUNG geht auf eine Sicherung zurück",
	reason.UseThatOne:     "jenes matside nehmen, oder mit --db DATEI eine andere Datendatei",
	reason.UseTheWriter:   "das matside nehmen, das es geschrieben hat",
	reason.RemoveFile:     "diese Datei löschen und neu beginnen",
	reason.PutBack:        "matside beenden und die Datei zurücklegen, falls du sie verschoben hast; dann neu beginnen",
	reason.StartAgain:     "matside beenden und neu beginnen: die Datei wird neu gemacht",
	reason.MakeWritable:   "Datei und Ordner beschreibbar machen oder mit --db DATEI eine andere nehmen",
	reason.CloseOrWait:    "dort schließen oder warten",
	reason.MakeRoom:       "Platz schaffen, dann noch einmal versuchen",
	reason.CheckDisk:      "noch einmal versuchen; bleibt es so, den Datenträger prüfen",

	// What was put right.
	reason.JournalAnew:    "Das Journal war beschädigt und ist aus der Datendatei neu gemacht; nichts ist verloren.",
	reason.JournalMissing: "Das Journal fehlte und ist aus der Datendatei neu gemacht; nichts ist verloren.",
	reason.DataAnew:       "Die Datendatei war beschädigt und ist aus dem Journal neu gemacht; nichts ist verloren.",
	reason.DataMissing:    "Die Datendatei fehlte und ist aus dem Journal neu gemacht; nichts ist verloren.",
	reason.NewBegun:       "Es gab keine Datendatei, und eine neue ist begonnen; `matside restore %s` holt zurück, was eine Sicherung daneben enthält.",
	reason.BroughtUp:      "Die Datendatei hatte Format %s und hat jetzt Format %s.",
	reason.KeptAs:         "Die Datei, wie sie war, liegt als %s daneben.",
	reason.AllKeptAs:      "Alles, wie es war, liegt als %s daneben.",
	reason.NoBackupMade:   "Es ließ sich keine Sicherung machen: %s.",

	// The file of the settings.
	settings.InLine:         "Zeile %s, %s: %s",
	settings.SettingsAre:    "Einstellungen sind %s",
	settings.MayBe:          "%s ist %s",
	settings.OneOf:          "eines von %s",
	settings.OnOrOff:        "on oder off",
	settings.MinutesOrNever: "eine Zahl von Minuten, oder never",
	settings.Milliseconds:   "eine Zahl von Millisekunden",
	settings.NoSetting:      "eine solche Einstellung gibt es nicht",

	// Files she chose, and what broke off.
	NoFile:         "eine Datei %s gibt es nicht",
	CheckName:      "Den Namen prüfen; `matside demo` zeigt eine Liste bei der Arbeit.",
	CantRead:       "%s lässt sich nicht lesen: %s",
	WhoMayRead:     "Nachsehen, wer sie lesen darf.",
	IsFolder:       "%s ist ein Ordner",
	NameListIn:     "Die Schnittliste darin nennen.",
	NothingToCut:   "in %s ist nichts auf der Matte zu schneiden",
	SeePlan:        "`matside plan` zeigt, was von Hand geschnitten wird und was fehlt.",
	NoDemoRoom:     "für die Daten der Probe ist kein Platz: %s",
	FreeSpace:      "Platz schaffen oder TMPDIR auf einen Ordner setzen, der beschreibbar ist.",
	files.NotAFile: "das ist keine Datei",
	BrokeOff:       "es brach ab: %s",
	SavingBrokeOff: "das Speichern brach ab: %s",
	PlanAtFault:    "der Plan für %s hat seine Prüfung nicht bestanden; das ist ein Fehler von matside\n%s",
	NothingChanged: "Nichts wurde geändert. Bitte die Schnittliste aufheben und es melden.",
	Offered:        "%s ließ Stoff übrig, den dieser Quilt braucht: siehe matside shelf leftovers.",
}

func init() { maps.Copy(saidInGerman, mistakesInGerman) }

package settings

import "example.org/matside/plan/say"

var kinds say.Kinds

// Kinds are all kinds of sentences that are said of the file.
func Kinds() []*say.Kind { return kinds.All() }

// What is wrong with a line of the file, and what may stand there.
var (
	InLine         = kinds.New("line %s, %s: %s")
	SettingsAre    = kinds.New("settings are %s")
	MayBe          = kinds.New("%s is %s")
	OneOf          = kinds.New("one of %s")
	OnOrOff        = kinds.New("on or off")
	MinutesOrNever = kinds.New("a number of minutes, or never")
	Milliseconds   = kinds.New("a number of milliseconds")
	NoSetting      = kinds.New("there is no such setting")
)

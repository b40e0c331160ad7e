package mistake

import "example.org/matside/plan/say"

var kinds say.Kinds

// Kinds are all kinds of sentences that the reader of cut lists says.
func Kinds() []*say.Kind { return kinds.All() }

// Shape is a shape by its plain singular name; it prints itself for several.
type Shape string

func (s Shape) String() string { return string(s) + "s" }

// About the file as a whole.
var (
	TooManyBytes      = kinds.New("a cut list is at most 1 MiB")
	TooManyStatements = kinds.New("a cut list has at most %s statements")
	TooManyPieces     = kinds.New("a cut list has at most %s pieces, and here it has %s")
	TooManyPanels     = kinds.New("a cut list has at most %s panels of fabric")
	FileNotUTF8       = kinds.New("this file is not UTF-8")
	NotUTF8           = kinds.New("this is not UTF-8")
	ControlCharacter  = kinds.New("a cut list can't hold the control character %s")
	NoQuilt           = kinds.New("no line says what is being made")
	NothingToCut      = kinds.New("no line says what to cut")
)

// About how a line begins and ends.
var (
	NoLineStarts    = kinds.New("no line starts with %s")
	SignBehind      = kinds.New("no sign belongs behind %s")
	EndHere         = kinds.New("the line should end here")
	SaidOnLine      = kinds.New("%s is said on line %s already")
	NothingHere     = kinds.New("nothing here is called %s")
	SaidTwice       = kinds.New("%s is said twice")
	CommaMissing    = kinds.New("a comma is missing in front of this")
	CommaMissingFor = kinds.New("a comma is missing in front of %s")
	BehindComma     = kinds.New("nothing stands behind the comma")
	BetweenCommas   = kinds.New("nothing stands between the commas")
	QuoteOpen       = kinds.New("this quotation mark is never closed")
	HiddenCharacter = kinds.New("a name can't hold the character %s, which doesn't show")
)

// About something that is missing, or one number of it: the first fact is one
// of the things below.
var (
	Missing    = kinds.New("%s is missing")
	AtLeastOne = kinds.New("%s is at least 1")
	AtMost     = kinds.New("%s is at most %s")
	TwoNumbers = kinds.New("%s has two numbers")
)

// The things.
var (
	AName          = kinds.New("the name")
	QuiltName      = kinds.New("the quilt's name")
	FabricName     = kinds.New("the fabric's name")
	OutlineName    = kinds.New("the outline's name")
	SettingName    = kinds.New("the cutter setting's name")
	FileName       = kinds.New("the file's name")
	Label          = kinds.New("the label")
	LabelBehindFor = kinds.New("the label behind `for`")
	Unit           = kinds.New("the unit")
	ShapeOfPiece   = kinds.New("the shape")
	Count          = kinds.New("the count")
	FabricCount    = kinds.New("the number of pieces of fabric")
	Size           = kinds.New("the size")
	FabricSize     = kinds.New("the fabric's size")
	MatSize        = kinds.New("the mat's size")
	UsableSize     = kinds.New("the usable size")
	QuiltSize      = kinds.New("the quilt's size")
	SizeOfQuilt    = kinds.New("the size of the quilt")
	StripWidth     = kinds.New("the width of the strips")
	Seam           = kinds.New("the seam")
	Gap            = kinds.New("the gap")
	Margin         = kinds.New("the margin")
	ExactOrRuler   = kinds.New("`exact` or `ruler`")
	Around         = kinds.New("`around`")
	PercentSign    = kinds.New("the %%")
	Shrinkage      = kinds.New("how much it shrinks")
	ShrinkageAlong = kinds.New("how much it shrinks along")
	AngleMissing   = kinds.New("the angle, 45 or 60, is missing in front of the size")
)

// About lengths and numbers.
var (
	NoLength       = kinds.New("%s is no length")
	BelowZero      = kinds.New("a length is never below zero")
	LengthTooLong  = kinds.New("a length is at most 100 m")
	TooManyDigits  = kinds.New("this number has too many digits")
	FractionOfOne  = kinds.New("a fraction behind a whole number is less than 1")
	DividedByZero  = kinds.New("nothing is divided by 0")
	NoUnit         = kinds.New("there is no unit %s")
	FullStop       = kinds.New("no full stop belongs behind a length")
	SizeOverZero   = kinds.New("a size is more than 0")
	CommaInNumber  = kinds.New("a comma can't stand inside a number")
	NumbersApart   = kinds.New("these numbers are not joined")
	WholeCount     = kinds.New("the count is a whole number")
	CountInFigures = kinds.New("a count is written in figures")
	ShrinksTooMuch = kinds.New("no fabric shrinks by more than half")
	NotInUnit      = kinds.New("a cut list can't be in %s")
	NoAllowance    = kinds.New("no allowance is called %s")
	UsableTooLarge = kinds.New("the usable part is larger than the mat")
	NothingUsable  = kinds.New("nothing of so small a mat is usable, less 1/2 in on each side")
	NoRoomInMargin = kinds.New("the mat has no room left inside this margin")
)

// About fabrics and outlines.
var (
	FabricTwice     = kinds.New("a fabric on line %s has this name already")
	NoFabricIs      = kinds.New("no fabric is %s")
	FatQuarters     = kinds.New("fat quarters differ in size")
	NoFabric        = kinds.New("there is no fabric %s")
	FromWhatFabric  = kinds.New("what fabric is this cut from?")
	OutlineTwice    = kinds.New("an outline on line %s has this name already")
	NoOutline       = kinds.New("there is no outline %s")
	CornersMissing  = kinds.New("the corners are missing")
	OutlineCorners  = kinds.New("an outline is a list of corners")
	NoYAndX         = kinds.New("%s is no y and x")
	TooManyCorners  = kinds.New("an outline has at most %s corners, and this has %s")
	NoFilesFromHere = kinds.New("no files can be opened from here")
	CantRead        = kinds.New("can't read %s: %s")
	Other           = kinds.New("%s")
)

// About pieces.
var (
	HowManyStrips     = kinds.New("how many strips?")
	HowMany           = kinds.New("how many %s?")
	NoShape           = kinds.New("there is no shape %s")
	ShapeTakesNo      = kinds.New("%s take no %s")
	ShapeHasOneNumber = kinds.New("%s have 1 number, not %s")
	ShapeHasNumbers   = kinds.New("%s have %s numbers, not %s")
	AngleIs           = kinds.New("the angle is 45 or 60")
	HandMissing       = kinds.New("%s have a hand")
	NoHand            = kinds.New("%s have no left or right")
	OutlineNoHand     = kinds.New("an outline of your own is cut as drawn")
	ByHandOnly        = kinds.New("only squares and rectangles are cut by hand")
	NotBoth           = kinds.New("a piece can't be %s and %s")
	PartOfLabel       = kinds.New("is %s a part of the label?")
	StripsAcross      = kinds.New("strips go across the whole width of the fabric")
	StripsPlain       = kinds.New("strips are cut across the fabric, by hand, as wide as written")
	BindingPlain      = kinds.New("binding is cut across the fabric, by hand, as wide as written")
	BindingNoCount    = kinds.New("a binding has no count")
	NoRoomForCurve    = kinds.New("the mat has no room for a curve of this size")
	TooLarge          = kinds.New("this piece is %s x %s %s when cut, and the mat has room for %s x %s %s")
	TooLargeInMargin  = kinds.New("this piece is %s x %s %s when cut, and the mat has room for %s x %s %s inside the margin")
)

// More is behind the mistakes that are told: how many are not.
var (
	OneMore = kinds.New("and 1 mistake more")
	More    = kinds.New("and %s mistakes more")
)

package check

import "fmt"

// Kind is what kind of fault it is.
type Kind uint8

// The kinds of faults, by the rule of the plan they break.
const (
	Reference  Kind = iota // something that isn't there is referred to
	Count                  // a copy is missing, planned twice, or one too many (rule 1)
	Outline                // not its line's outline, mirrored, turned and moved (2)
	Turn                   // a turn that the grain or the print forbids (2)
	Mirror                 // mirrored though not face down, or the other way round (2)
	Usable                 // outside the usable part of the mat (3)
	Margin                 // too close to the edge of its rough cut (3)
	Gap                    // two pieces overlap or are closer than the gap (3)
	RoughCuts              // two rough cuts of a load overlap (3)
	Mat                    // a rough cut hangs over the mat (3)
	Idle                   // a rough cut without a piece (4)
	Fabric                 // a piece in a rough cut of another fabric (4)
	Fussy                  // a fussy piece that shares its rough cut (4)
	FromPanel              // a rough cut that comes out of no panel, of two, or of another (4)
	OffPanel               // something hangs over its panel (4)
	PanelShare             // two things overlap on a panel (4)
	Stuck                  // no straight cut across what is left frees them (4)
	HandSize               // a piece cut by hand in the wrong size (4)
	Strip                  // a strip that does not go across the whole width (4)
	Binding                // binding strips too short together, or one too many (1)
	Panel                  // a panel that the stock doesn't have (4)
	Buy                    // too little, too much or no whole buying step
	Short                  // what is told to be missing makes no sense (1)
	Fewest                 // more loads said to be needed than there are, or proved wrongly (5)
	Layout                 // one number for two drawings (7)
	CutLength              // the blade's way is another
	Number                 // loads are not numbered in order
)

var kindNames = [...]string{
	Reference: "reference", Count: "count", Outline: "outline", Turn: "turn", Mirror: "mirror", Usable: "usable",
	Margin: "margin", Gap: "gap", RoughCuts: "rough cuts", Mat: "mat", Idle: "idle", Fabric: "fabric", Fussy: "fussy",
	FromPanel: "from panel", OffPanel: "off panel", PanelShare: "panel share", Stuck: "stuck", HandSize: "hand size",
	Strip: "strip", Binding: "binding", Panel: "panel", Buy: "buy", Short: "short", Fewest: "fewest", Layout: "layout",
	CutLength: "cut length", Number: "number",
}

// String is the kind in one or two words.
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return fmt.Sprintf("kind %d", uint8(k))
}

// Fault is one thing wrong with a plan.
type Fault struct {
	Kind Kind
	What string // one sentence, that says where
}

// String is the fault on one line.
func (f Fault) String() string { return f.Kind.String() + ": " + f.What }

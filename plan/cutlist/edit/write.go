package edit

import (
	"fmt"
	"strings"

	"example.org/matside/plan/cutlist"
)

// Write writes a statement as one types it: "24 squares 2 1/2 finished for A,
// lengthwise". What Apart makes of it is p again, but for where it stands.
// Nothing and Unclear are written as an empty line.
func Write(p cutlist.Parts) string {
	switch p.Says {
	case cutlist.SaysQuilt:
		return "quilt " + Name(p.Name)
	case cutlist.SaysCutFrom:
		return "cut from " + Name(p.Name)
	case cutlist.SaysUnits, cutlist.SaysSetting:
		return join(p.Name, p.Rest)
	case cutlist.SaysOutline:
		if strings.HasPrefix(p.Rest, ":") || strings.HasPrefix(p.Rest, "from ") {
			return "outline " + Name(p.Name) + gap(p.Rest) + p.Rest
		}
		return join("outline", Name(p.Name))
	case cutlist.SaysFabric:
		return strings.Join(append(append([]string{"fabric " + Name(p.Name)}, p.Stock...), p.Attributes...), ", ")
	case cutlist.SaysBinding:
		return tail("binding "+p.Size, p)
	case cutlist.SaysStrips:
		return tail(join(p.Count, plural(p), p.Size), p)
	case cutlist.SaysPiece:
		return tail(join(p.Count, plural(p), size(p)), p)
	}
	return ""
}

func gap(rest string) string {
	if strings.HasPrefix(rest, ":") {
		return ""
	}
	return " "
}

// size is what stands behind a shape: its angle and numbers, or the name of
// an outline of her own.
func size(p cutlist.Parts) string {
	if p.Shape == "outline" {
		return Name(p.Name)
	}
	if p.Degrees != 0 {
		return join(fmt.Sprint(p.Degrees), p.Size)
	}
	return p.Size
}

func plural(p cutlist.Parts) string {
	if p.Count == "1" {
		return p.Shape
	}
	return p.Shape + "s"
}

// tail writes what stands behind SIZE.
func tail(start string, p cutlist.Parts) string {
	if p.Finished {
		start += " finished"
	}
	if p.Label != "" {
		start += " for " + Name(p.Label)
	}
	return strings.Join(append([]string{start}, p.Attributes...), ", ")
}

func join(words ...string) string {
	return strings.Join(strings.Fields(strings.Join(words, " ")), " ")
}

// Name is a name as it is written: in double quotes where it has to be.
func Name(name string) string {
	if cutlist.NeedsQuotes(name) {
		return `"` + name + `"`
	}
	return name
}

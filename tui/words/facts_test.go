package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// source is every file of the program, by its package's name.
func source(t *testing.T) (files []*ast.File, at *token.FileSet) {
	at = token.NewFileSet()
	for _, root := range []string{"../../plan", "../../session", "../../tui", "../../cmd"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && d.Name() == "testdata":
				return filepath.SkipDir
			case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
				return nil
			}
			f, err := parser.ParseFile(at, path, nil, parser.SkipObjectResolution)
			files = append(files, f)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return files, at
}

// declared are the English sentences by package and name, as New declares them.
func declared(files []*ast.File) map[string]string {
	all := make(map[string]string)
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			v, ok := n.(*ast.ValueSpec)
			if !ok || len(v.Values) != 1 {
				return true
			}
			if name, args := called(v.Values[0]); strings.HasSuffix(name, ".New") && len(args) == 1 {
				if text, ok := args[0].(*ast.BasicLit); ok {
					all[f.Name.Name+"."+v.Names[0].Name], _ = strconv.Unquote(text.Value)
				}
			}
			return true
		})
	}
	return all
}

// called is what is called by a call, "mistake.NoUnit.Say", and with what.
func called(e ast.Expr) (name string, args []ast.Expr) {
	call, ok := e.(*ast.CallExpr)
	if !ok {
		return "", nil
	}
	return dotted(call.Fun), call.Args
}

func dotted(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return dotted(e.X) + "." + e.Sel.Name
	}
	return "?"
}

// Wherever a sentence is said, it is given as many facts as it has places for.
func TestSentencesAreGivenTheirFacts(t *testing.T) {
	files, at := source(t)
	english := declared(files)
	seen := make(map[string]bool)
	check := func(n ast.Node, kind string, facts int) {
		text, ok := english[kind]
		if !ok {
			return
		}
		seen[kind] = true
		if want := len(verb.FindAllString(text, -1)); facts != want {
			t.Errorf("%s: %s is given %d facts, want %d", at.Position(n.Pos()), kind, facts, want)
		}
	}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			e, ok := n.(ast.Expr)
			if !ok {
				return true
			}
			name, args := called(e)
			kind, verb := name[:max(strings.LastIndex(name, "."), 0)], name[strings.LastIndex(name, ".")+1:]
			switch {
			case verb == "refuse" && len(args) > 0:
				check(n, dotted(args[0]), len(args)-1)
			case (verb == "Say" || verb == "Err") && !strings.Contains(kind, "."):
				check(n, f.Name.Name+"."+kind, len(args))
			case verb == "Say" || verb == "Err":
				check(n, kind, len(args))
			}
			return true
		})
	}
	used := mentioned(files, at)
	for kind := range english {
		if !used[kind] {
			t.Errorf("%s is said nowhere", kind)
		}
	}
	if len(english) < 200 || len(seen) < 150 {
		t.Errorf("%d sentences declared and %d seen said: the test looks for them in the wrong way", len(english), len(seen))
	}
}

// mentioned are the names that stand anywhere but where they are declared,
// and where the German is.
func mentioned(files []*ast.File, at *token.FileSet) map[string]bool {
	all := make(map[string]bool)
	for _, f := range files {
		if strings.HasPrefix(filepath.Base(at.Position(f.Pos()).Filename), "german_") {
			continue
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ValueSpec:
				for _, v := range n.Values {
					ast.Inspect(v, func(n ast.Node) bool { return mention(all, f, n) })
				}
				return false
			default:
				return mention(all, f, n)
			}
		})
	}
	return all
}

func mention(all map[string]bool, f *ast.File, n ast.Node) bool {
	switch n := n.(type) {
	case *ast.SelectorExpr:
		all[dotted(n)] = true
	case *ast.Ident:
		all[f.Name.Name+"."+n.Name] = true
	}
	return true
}

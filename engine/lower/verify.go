package lower

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"go/types"
	"sort"
	"strings"

	"lode/engine/check"
	"lode/engine/issue"
)

// This file holds a lowered program against the rules of Go, which find what the checker
// leaves to them: unused variables, missing returns, labels, and any fault of our own.

// hostPackage returns the declarations of package Host, as far as a program uses it.
func (l *Lowered) hostPackage() *types.Package {
	p := types.NewPackage(Host, "host")
	num, val, err := types.Typ[types.Int], types.NewInterfaceType(nil, nil).Complete(), types.Universe.Lookup("error").Type()
	yes := types.Typ[types.Bool]
	text := types.NewSignatureType(nil, nil, nil, nil, tuple(p, []types.Type{types.Typ[types.String]}), false)
	takes := types.NewSignatureType(nil, nil, nil, tuple(p, []types.Type{val}), tuple(p, []types.Type{yes}), false)
	for name, sig := range map[string][2][]types.Type{
		"At": {{num}}, "Show": {{num, val}}, "Mind": {{num, val}}, "Caught": {{val}, {val}}, "Fail": {{num, err}}, "Over": {{num, num}, {num}}, "Steps": {nil, {num}}, "Depth": {nil, {num}},
		"Leaf": {{num, val}}, "Constant": {{num, val}}, "Own": {{num, val}}, "Enter": {{num}}, "Step": {{num, yes}}, "Leave": {{num, num}}, "After": {{num}}, "Work": {{num, num}},
		"Mistake": {{val, text}, {err}}, "Inside": {{err}, {val}}, "Search": {{err, takes}, {yes}},
		"Said": {{types.Typ[types.String], val}, {val}}, "Fields": {{types.Typ[types.String], types.NewSlice(val)}, {val}},
		"Knob": {{num}, {types.Typ[types.Float64]}},
	} {
		p.Scope().Insert(types.NewFunc(token.NoPos, p, name, types.NewSignatureType(nil, nil, nil, tuple(p, sig[0]), tuple(p, sig[1]), false)))
	}
	for i, w := range l.Watched {
		p.Scope().Insert(types.NewFunc(token.NoPos, p, w.Host(i), w.signature))
	}
	p.MarkComplete()
	return p
}

func tuple(p *types.Package, list []types.Type) *types.Tuple {
	var vars []*types.Var
	for _, t := range list {
		vars = append(vars, types.NewParam(token.NoPos, p, "", t))
	}
	return types.NewTuple(vars...)
}

type importer map[string]*types.Package

func (i importer) Import(path string) (*types.Package, error) {
	if p := i[path]; p != nil {
		return p, nil
	}
	return nil, fmt.Errorf("package %s is not in the library", path)
}

// Verify checks the program with go/types.
func (l *Lowered) Verify() []issue.Issue {
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "", l.verified, parser.SkipObjectResolution)
	if list, ok := err.(scanner.ErrorList); ok {
		return []issue.Issue{l.issueAt(list[0].Pos.Offset, list[0].Msg)}
	}
	imports := importer{Host: l.hostPackage()}
	for _, p := range l.program.Lib.Packages {
		imports[p.Path()] = p
	}
	var issues []issue.Issue
	config := types.Config{Importer: imports, GoVersion: "go1.26", Error: func(err error) {
		if e, ok := err.(types.Error); ok && !strings.HasPrefix(e.Msg, "\t") && !strings.Contains(e.Msg, "imported and not used") {
			issues = append(issues, l.issueAt(fset.Position(e.Pos).Offset, e.Msg))
		}
	}}
	_, _ = config.Check("notebook", fset, []*ast.File{f}, nil)
	return issues
}

// issueAt leads a message about the program back to the notebook.
func (l *Lowered) issueAt(offset int, msg string) issue.Issue {
	i := issue.Issue{Code: "go", What: sentence(msg), Place: issue.Place{File: l.program.Book.File}}
	if s, at := l.origin(offset); s != nil {
		i.Place = l.program.PlaceIn(s.chunk, at, at+1)
		i.Source = l.program.SourceLine(s.chunk, i.Line)
	}
	w := worded(msg, i.What)
	i.Code, i.What, i.Got, i.Want, i.Hint = w.Code, w.What, w.Got, w.Want, w.Hint
	return i
}

// worded puts a message of go/types about the whole program into our form.
func worded(msg, plain string) check.Worded {
	name, unused := strings.CutPrefix(msg, "declared and not used: ")
	if !unused { // of a switch over types
		name, unused = strings.CutSuffix(msg, " declared and not used")
	}
	if unused {
		return check.Worded{Code: "unused-variable", What: name + ": defined but not used", Got: name, Want: "a use of it", Hint: "take it out; inside a function every variable is used"}
	}
	var hidden string
	if _, err := fmt.Sscanf(msg, "result parameter %s not in scope at return", &hidden); err == nil {
		return check.Worded{Code: "defined-twice", What: hidden + ": another " + hidden + " hides the result at this return", Got: "return alone", Want: "one " + hidden + ", or a return that names its values"}
	}
	switch {
	case msg == "missing return":
		return check.Worded{Code: "missing-return", What: "the function may end without a result", Got: "the end of the function", Want: "a return at its end"}
	case strings.HasPrefix(msg, "invalid recursive type"), strings.Contains(msg, "invalid recursive type"):
		return check.Worded{Code: "recursive-type", What: "the type holds itself", Got: plain, Want: "a pointer or a slice in between", Hint: "write *T for the field"}
	case strings.Contains(msg, "duplicate case"):
		return check.Worded{Code: "duplicate-case", What: "switch: two cases are the same", Got: plain, Want: "each case once"}
	case strings.Contains(msg, "multiple defaults"):
		return check.Worded{Code: "duplicate-case", What: "switch: there are two default cases", Got: "default", Want: "one default"}
	}
	return check.Worded{Code: "go", What: plain, Got: "a program that breaks a rule of Go", Want: "one that keeps it"}
}

func sentence(msg string) string { return strings.ReplaceAll(msg, "ˑ", "") }

func (l *Lowered) origin(offset int) (*segment, int) {
	i := sort.Search(len(l.segments), func(i int) bool { return l.segments[i].to > offset })
	if i == len(l.segments) || l.segments[i].from > offset {
		return nil, 0
	}
	s := &l.segments[i]
	return s, origin(s.marks, offset-s.from)
}

// Package check reads the cells of a notebook and finds out, before anything runs, whether
// they mean something: names, types and physical dimensions.
//
// The checker walks statements in order and gives every expression a type from the inside
// out. Where Go's rules decide, it asks go/types about one expression at a time, with
// placeholders for the parts that are typed already. Where dimensions decide, it has rules
// of its own. The result is a Program that is not changed afterwards: the syntax trees as
// written, and beside them what is known of each expression.
package check

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"sort"

	"lode/engine/book"
	"lode/engine/issue"
	"lode/engine/library"
)

// Typed is what is known of an expression.
type Typed struct {
	Mode  Mode
	Type  types.Type     // a *types.Tuple for a call with several results
	Value constant.Value // for constants
	Turns int            // factors of π in a plain number

	object types.Object // for names
}

// Mode tells what kind of thing an expression is.
type Mode int

// The modes.
const (
	Invalid  Mode = iota // reported already
	Value                // a value, constants included
	Type                 // a type
	NoValue              // a call without results
	Builtin              // the name of a built-in function
	Function             // one of the functions that know dimensions
	Package              // the name of a package
	Scale                // the name of a unit of a point scale, such as degC
)

// Program is a checked notebook.
type Program struct {
	Book      book.Book
	Lib       *library.Library
	Fset      *token.FileSet
	Chunks    []*Chunk
	Exprs     map[ast.Expr]Typed
	Generic   map[ast.Expr]Instance       // callees that are generic functions of the library
	Instances map[ast.Expr]*types.Func    // names of generic functions of the notebook, and what stands for them
	Must      map[*ast.CallExpr]bool      // calls whose error result is checked for the author
	Convert   map[ast.Expr]types.Type     // values that become another type by themselves
	Defs      map[*ast.Ident]types.Object // names defined, and names that take part in := anew
	Uses      map[*ast.Ident]types.Object // names of the notebook used
	Vars      []*types.Var                // variables of the top level in order
	Imports   map[string]bool             // packages used, by name
	Knobs     []Knob
	KnobAt    map[*ast.CallExpr]int // which of them a call makes
	World     *World
	Scratch   *types.Package // the notebook as a package
}

// NotebookPath is the path of the package that a notebook is.
const NotebookPath = "notebook"

// IsNil reports whether x is nil as it is written.
func IsNil(x Typed) bool { return isNil(x) }

// Check reads a book's cells. The program is whole only where there are no issues.
func Check(lib *library.Library, b book.Book) (*Program, []issue.Issue) {
	c := newChecker(lib, b)
	c.split()
	if len(c.issues) == 0 {
		c.declareAhead()
		for _, functions := range []bool{false, true} {
			for _, chunk := range c.Chunks {
				if functions == (chunk.Func != nil) && !chunk.generic() && len(c.issues) < enough {
					c.chunk(chunk)
				}
			}
		}
		c.instanceBodies()
		c.checkOrder()
	}
	sort.SliceStable(c.issues, func(i, j int) bool {
		a, b := c.issues[i], c.issues[j]
		return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
	})
	return c.Program, c.issues
}

// enough is the number of issues after which nobody reads on.
const enough = 200

type checker struct {
	*Program
	issues  []issue.Issue
	top     *scope
	scope   *scope
	here    *Chunk
	fn      *function
	counter int
	later   map[string]token.Pos         // variables and constants of the top level
	refs    map[types.Object][]reference // what the functions of the top level refer to
	calls   []reference                  // functions that the top level refers to, in order

	templates     map[types.Object]*template // generic functions of the notebook
	templateList  []*template
	pending       []pendingBody
	instanceCount int
}

// function is the function whose body is being read; nil at the top level.
type function struct {
	outer     *function
	signature *types.Signature
	object    types.Object // for functions declared at the top level
}

func newChecker(lib *library.Library, b book.Book) *checker {
	size := 0
	for _, cell := range b.Cells() {
		size += len(cell.Code)
	}
	p := &Program{
		Book: b, Lib: lib, Fset: token.NewFileSet(),
		Exprs: make(map[ast.Expr]Typed, size/4), Generic: map[ast.Expr]Instance{}, Instances: map[ast.Expr]*types.Func{}, Must: map[*ast.CallExpr]bool{}, Convert: map[ast.Expr]types.Type{},
		Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}, Imports: map[string]bool{}, KnobAt: map[*ast.CallExpr]int{},
		World: newWorld(lib), Scratch: types.NewPackage(NotebookPath, NotebookPath),
	}
	c := &checker{Program: p, refs: map[types.Object][]reference{}, templates: map[types.Object]*template{}}
	c.top = newScope(nil)
	c.scope = c.top
	return c
}

// chunk reads one statement or declaration of the top level.
func (c *checker) chunk(chunk *Chunk) {
	c.here = chunk
	if chunk.Func != nil {
		c.funcBody(chunk.Func)
		return
	}
	defer c.branches(chunk.Stmts)
	for _, s := range chunk.Stmts {
		if shown, ok := s.(*ast.ExprStmt); ok {
			c.bare(chunk, shown)
			continue
		}
		c.stmt(s)
	}
}

// bare reads an expression alone on its line: a shown result, unless it has none.
func (c *checker) bare(chunk *Chunk, s *ast.ExprStmt) {
	x := c.expr(s.X)
	if call, ok := ast.Unparen(s.X).(*ast.CallExpr); ok {
		switch {
		case x.Mode == NoValue || c.Lib.Quiet(c.calleeName(call)):
			return
		case isError(x.Type):
			c.Must[call] = true
			return
		}
	}
	x = c.settled(s.X, x)
	if x.Mode == Type {
		c.refuseTypeOperand(s.X, x)
	}
	if x.Mode != Value {
		return
	}
	if isNil(x) {
		c.report(s.X, "no-value", "nil is no result", "nil", "a value", "")
		return
	}
	if c.tooLarge(s.X, x) {
		return
	}
	chunk.Shown = append(chunk.Shown, s)
}

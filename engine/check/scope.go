package check

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"sort"
	"strings"
)

// scope holds the names of a block.
type scope struct {
	outer *scope
	names map[string]*entry
}

// entry is one defined name.
type entry struct {
	object  types.Object
	pos     token.Pos
	turns   int
	pending func() // reads what a declared type stands for
}

// settle reads what a declared type stands for, once.
func (e *entry) settle() {
	if read := e.pending; read != nil {
		e.pending = nil
		read()
	}
}

// reference is a name used at a position.
type reference struct {
	object types.Object
	ident  *ast.Ident
}

func newScope(outer *scope) *scope { return &scope{outer, map[string]*entry{}} }

func (s *scope) find(name string) (*entry, *scope) {
	for ; s != nil; s = s.outer {
		if e, ok := s.names[name]; ok {
			return e, s
		}
	}
	return nil, nil
}

// within runs f in a block of its own.
func (c *checker) within(f func()) {
	c.scope = newScope(c.scope)
	f()
	c.scope = c.scope.outer
}

// define puts a name into the current scope.
func (c *checker) define(id *ast.Ident, obj types.Object, turns int) {
	c.Defs[id] = obj
	if id.Name == "_" {
		return
	}
	if what := c.reserved(id.Name); what != "" {
		c.report(id, "reserved-name", fmt.Sprintf("%s: the name is taken by %s", id.Name, what), id.Name, "a name of your own",
			"what hides "+what+" is a silent mistake; try "+id.Name+"1")
		c.passOver(id)
		return
	}
	if old, ok := c.scope.names[id.Name]; ok && old.pos != id.Pos() {
		first, second := old.pos, id.Pos()
		if first > second {
			first, second = second, first
		}
		c.report(&ast.Ident{NamePos: second, Name: id.Name}, "defined-twice", id.Name+": defined twice", fmt.Sprintf("a definition here and one at line %d", c.PlaceOf(at(first)).Line),
			"one definition of a name", "assign with = to change it, or choose another name")
		return
	}
	c.scope.names[id.Name] = &entry{object: obj, pos: id.Pos(), turns: turns}
	if v, ok := obj.(*types.Var); ok && c.scope == c.top {
		c.Vars = append(c.Vars, v)
	}
}

// passOver makes the uses of a name pass without a message, where its definition had one.
func (c *checker) passOver(id *ast.Ident) {
	if id.Name != "_" {
		c.scope.names[id.Name] = &entry{object: types.NewVar(id.Pos(), c.Scratch, id.Name, types.Typ[types.Invalid]), pos: id.Pos()}
	}
}

// at is a node of no length, for a position alone.
func at(pos token.Pos) ast.Node { return &ast.Ident{NamePos: pos, Name: " "} }

// reserved tells what a name that must not be defined stands for.
func (c *checker) reserved(name string) string {
	switch {
	case c.Lib.Packages[name] != nil:
		return "the package " + name
	case c.Lib.Units[name].Symbol != "":
		return "the unit " + name
	case name == "π":
		return "the constant π"
	case name == "init" || name == "main":
		return "the program around the notebook"
	case strings.Contains(name, "ˑ"):
		return "the language"
	case ofGo(name):
		return "the language Go"
	}
	return ""
}

// ofGo reports whether a name of Go itself must keep its meaning: types, values, and the
// functions that a running program is made of.
func ofGo(name string) bool {
	switch types.Universe.Lookup(name).(type) {
	case *types.TypeName, *types.Const, *types.Nil:
		return true
	case *types.Builtin:
		switch name {
		case "append", "cap", "complex", "delete", "len", "make", "panic", "recover":
			return true
		}
	}
	return name == "iota"
}

// ident reads a name.
func (c *checker) ident(id *ast.Ident) Typed {
	if e, s := c.scope.find(id.Name); e != nil {
		return c.use(id, e, s)
	}
	if u, ok := c.Lib.Units[id.Name]; ok {
		if u.Call != "" {
			return Typed{Mode: Scale}
		}
		return Typed{Mode: Value, Type: u.Type, Value: u.Value}
	}
	switch {
	case id.Name == "π":
		return Typed{Mode: Value, Type: types.Typ[types.UntypedFloat], Value: pi, Turns: 1}
	case c.Lib.Packages[id.Name] != nil:
		return Typed{Mode: Package}
	case functions[id.Name].name != "":
		return Typed{Mode: Function}
	}
	return c.universe(id)
}

// pi to more digits than any float needs (value from memory, checked against math.Pi).
var pi = constant.MakeFromLiteral("3.14159265358979323846264338327950288419716939937510582097494459", token.FLOAT, 0)

func (c *checker) use(id *ast.Ident, e *entry, s *scope) Typed {
	e.settle()
	c.Uses[id] = e.object
	if s == c.top {
		if c.fn != nil {
			if f := c.fn.declared(); f != nil {
				c.refs[f] = append(c.refs[f], reference{e.object, id})
			}
		} else if c.usedEarly(id, e) {
			return Typed{}
		}
	}
	return objectTyped(e.object, e.turns)
}

// usedEarly reports a name that the top level uses above its definition.
func (c *checker) usedEarly(id *ast.Ident, e *entry) bool {
	switch e.object.(type) {
	case *types.TypeName:
		return false
	case *types.Func:
		c.calls = append(c.calls, reference{e.object, id})
		return false
	}
	if id.Pos() >= e.pos {
		return false
	}
	c.reportEarly(id, e.pos)
	return true
}

func (c *checker) reportEarly(id *ast.Ident, defined token.Pos) Typed {
	return c.report(id, "used-early", id.Name+": used before it is defined", fmt.Sprintf("a use here, the definition at line %d", c.PlaceOf(at(defined)).Line),
		"the definition above its uses", "a notebook runs from the top; move the definition up")
}

// declared returns the function of the top level that f is, or lies in.
func (f *function) declared() types.Object {
	for ; f != nil; f = f.outer {
		if f.object != nil {
			return f.object
		}
	}
	return nil
}

func objectTyped(obj types.Object, turns int) Typed {
	switch o := obj.(type) {
	case *types.Const:
		return Typed{Mode: Value, Type: o.Type(), Value: o.Val(), Turns: turns, object: obj}
	case *types.TypeName:
		return Typed{Mode: Type, Type: o.Type(), object: obj}
	case *types.Builtin:
		return Typed{Mode: Builtin, object: obj}
	case *types.Nil:
		return Typed{Mode: Value, Type: types.Typ[types.UntypedNil], object: obj}
	case *types.Var, *types.Func:
		if obj.Type() == nil || obj.Type() == types.Typ[types.Invalid] {
			return Typed{}
		}
		return Typed{Mode: Value, Type: obj.Type(), Turns: turns, object: obj}
	}
	return Typed{}
}

// universe reads a name that Go itself defines, or reports an unknown one.
func (c *checker) universe(id *ast.Ident) Typed {
	switch id.Name {
	case "chan", "uintptr", "close", "print", "println", "complex64":
		return c.report(id, "not-available", id.Name+": not available in notebooks", id.Name, "ordinary values and calls", notAvailableHint(id.Name))
	case "_":
		return c.report(id, "blank-value", "_: has no value", "_", "a name", "")
	}
	if obj := types.Universe.Lookup(id.Name); obj != nil {
		return objectTyped(obj, 0)
	}
	if pos := c.later[id.Name]; pos > id.Pos() {
		return c.reportEarly(id, pos)
	}
	return c.report(id, "unknown-name", id.Name+": no such name", id.Name, "a name defined above, a unit or a package", cmp.Or(insteadOf(id.Name), c.meant(id.Name)))
}

// insteadOf tells what stands for a package of Go that notebooks do not have.
func insteadOf(name string) string {
	switch name {
	case "slices":
		return "sort.Slice(list, func(i, j int) bool { return list[i] < list[j] }) sorts; a loop does the rest"
	case "maps":
		return "range goes through a map in the order of its keys"
	case "time":
		return "a time is a quantity: 5*sec; no clock, since a notebook gives the same in each run"
	case "os", "io", "bufio":
		return "package data reads files beside the notebook"
	case "rand":
		return "package chance has random numbers"
	}
	return ""
}

func notAvailableHint(name string) string {
	switch name {
	case "print", "println":
		return "use fmt.Println to print"
	case "complex64":
		return "use complex128"
	}
	return ""
}

// known reports whether a name means anything here.
func (c *checker) known(name string) bool {
	e, _ := c.scope.find(name)
	_, unit := c.Lib.Units[name]
	return e != nil || unit || types.Universe.Lookup(name) != nil || c.Lib.Packages[name] != nil || c.later[name].IsValid()
}

// defined returns the notebook's own names in sight.
func (c *checker) defined() []string {
	var names []string
	for s := c.scope; s != nil; s = s.outer {
		for n := range s.names {
			names = append(names, n)
		}
	}
	return names
}

// visible returns every name that could be meant here.
func (c *checker) visible() []string {
	names := c.defined()
	for n := range c.Lib.Units {
		names = append(names, n)
	}
	for n := range functions {
		names = append(names, n)
	}
	names = append(names, types.Universe.Names()...)
	names = append(names, c.packageNames()...)
	sort.Strings(names)
	return names
}

func (c *checker) packageNames() []string {
	var names []string
	for n := range c.Lib.Packages {
		names = append(names, n)
	}
	sort.Strings(names)
	return names
}

// checkOrder reports a call from the top level of a function that needs, directly or by
// another function, something defined below the call.
func (c *checker) checkOrder() {
	for _, call := range c.calls {
		if late := c.late(call.object, call.ident.Pos(), map[types.Object]bool{}); late != nil {
			c.report(call.ident, "used-early", fmt.Sprintf("%s: needs %s before it is defined", call.ident.Name, late.Name()),
				fmt.Sprintf("%s is defined at line %d", late.Name(), c.PlaceOf(at(late.Pos())).Line), "the definition above the call",
				"a notebook runs from the top; move the definition up")
		}
	}
}

func (c *checker) late(f types.Object, pos token.Pos, seen map[types.Object]bool) types.Object {
	if seen[f] {
		return nil
	}
	seen[f] = true
	for _, r := range c.refs[f] {
		switch r.object.(type) {
		case *types.Func:
			if late := c.late(r.object, pos, seen); late != nil {
				return late
			}
		case *types.Var:
			if r.object.Pos() > pos {
				return r.object
			}
		}
	}
	return nil
}

package run

import (
	"reflect"

	"lode/engine/library"
	"lode/engine/lower"
)

// This file looks at calls of the library for a range that was left.

// trial is what is known while a function of the library tries arguments out. Nobody is warned of
// those; where one of them left a range, the one that was found is looked at once more.
type trial struct {
	depth   int
	strayed bool
}

// watch is a place in the program that calls a function of the library.
type watch struct {
	*runner
	number        int
	callee, check reflect.Value
	statement     int                // that calls it
	calls         int                // in that statement
	told          bool               // it has warned in that statement, and is not looked at any more
	last          [2][]reflect.Value // arguments and results of the last call, if that was not looked at
	method        int                // of the receiver that the first argument points to, or -1
	receiver      reflect.Value      // of the last call, then
}

// watched returns the function that a program calls in the place of one of the library.
func (r *runner) watched(lib *library.Library, number int, w lower.Watched) reflect.Value {
	p := &watch{runner: r, number: number, check: reflect.ValueOf(lib.Ranges[w.Name]), statement: -1, method: -1}
	r.watches = append(r.watches, p)
	names := lib.Symbols[w.Package]
	if w.Type == "" {
		p.callee = names[w.Func]
		if w.Tries {
			return reflect.MakeFunc(p.callee.Type(), p.try)
		}
		return reflect.MakeFunc(p.callee.Type(), p.call)
	}
	t := names[w.Type].Type().Elem()
	m, _ := t.MethodByName(w.Func)
	p.callee = m.Func
	if w.Pointer {
		p.method, p.receiver = m.Index, reflect.New(t).Elem()
		return reflect.MakeFunc(pointing(m.Type), p.call)
	}
	return reflect.MakeFunc(m.Type, p.call)
}

// pointing is the type of a function that takes a pointer first.
func pointing(t reflect.Type) reflect.Type {
	in, out := []reflect.Type{reflect.PointerTo(t.In(0))}, []reflect.Type{}
	for i := range t.NumIn() - 1 {
		in = append(in, t.In(i+1))
	}
	for i := range t.NumOut() {
		out = append(out, t.Out(i))
	}
	return reflect.FuncOf(in, out, t.IsVariadic())
}

func (p *watch) call(args []reflect.Value) []reflect.Value {
	results := p.through(args)
	if p.statement != p.at {
		p.statement, p.calls, p.told = p.at, 0, false
	}
	p.calls++
	switch p.last = [2][]reflect.Value{}; {
	case p.told || p.trial.depth > 0 && p.trial.strayed:
	case p.calls <= every || p.calls%few == 0:
		p.look(args, results)
	case p.trial.depth == 0:
		p.last = [2][]reflect.Value{args, results}
		if p.method >= 0 { // the variable may have changed when it is looked at
			p.receiver.Set(args[0].Elem())
			args[0] = p.receiver.Addr()
		}
	}
	return results
}

// ask has a value warn, or each of a list.
func (p *watch) ask(value reflect.Value) {
	if w, ok := value.Interface().(interface{ Warnings() []string }); ok {
		p.warn(w.Warnings(), true)
	} else if value.Kind() == reflect.Slice {
		for i := range value.Len() {
			p.ask(value.Index(i))
		}
	}
}

// through makes the call itself.
func (p *watch) through(args []reflect.Value) []reflect.Value {
	if p.method >= 0 {
		return p.invoke(args[0].Elem().Method(p.method), args[1:])
	}
	return p.invoke(p.callee, args)
}

// Of many calls in one statement the first are looked at, then some, and the last: looking at one
// may take as long as the call.
const every, few = 100, 20

// settle looks at the last calls of a statement that is through.
func (r *runner) settle() {
	for _, p := range r.watches {
		if p.last[0] != nil {
			p.look(p.last[0], p.last[1])
			p.last = [2][]reflect.Value{}
		}
	}
}

func (p *watch) look(args, results []reflect.Value) {
	if failed(results) {
		return
	}
	p.ask(results[0])
	if p.check.IsValid() {
		if p.method >= 0 {
			args = append([]reflect.Value{args[0].Elem()}, args[1:]...)
		}
		p.warn(p.invoke(p.check, args)[0].Interface().([]string), false)
	}
}

func (p *watch) invoke(f reflect.Value, args []reflect.Value) []reflect.Value {
	if p.callee.Type().IsVariadic() {
		return f.CallSlice(args)
	}
	return f.Call(args)
}

func (p *watch) warn(warnings []string, ofValue bool) {
	switch {
	case len(warnings) == 0 || p.asked.Load():
	case p.trial.depth > 0:
		p.trial.strayed = true
	default:
		p.told = true
		p.sink.Left(p.statement, p.number, warnings, ofValue)
	}
}

func (p *watch) try(args []reflect.Value) []reflect.Value {
	if p.trial.depth == 0 {
		p.trial.strayed = false
	}
	results := p.tried(args)
	if p.trial.depth == 0 && p.trial.strayed && !failed(results) {
		args[0].Call(results[:1])
	}
	return results
}

func (p *watch) tried(args []reflect.Value) []reflect.Value {
	p.trial.depth++
	defer func() { p.trial.depth-- }()
	return p.callee.Call(args)
}

// failed reports whether a call returned an error.
func failed(results []reflect.Value) bool {
	err, ok := results[len(results)-1].Interface().(error)
	return ok && err != nil
}

package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"

	"lode/engine/issue"
)

// This file reads knobs: knob(name, value, low, high) is a number or a quantity that a
// person may turn between two bounds without changing the notebook.

// KnobName is the name of the function that makes a knob.
const KnobName = "knob"

// Knob is a value to turn. Values are in coherent units.
type Knob struct {
	issue.Place
	Name             string
	Value, Low, High float64
	Whole            bool // takes whole numbers only
	Type             types.Type
}

func (c *checker) knob(e *ast.CallExpr) Typed {
	args, ok := c.args(e)
	if !ok {
		return Typed{}
	}
	if len(args) != 4 {
		return c.report(e, "argument-count", "knob: the number of arguments does not fit", fmt.Sprint(len(args)), "4: knob(name, value, low, high)", "")
	}
	if c.fn != nil || c.scope != c.top {
		return c.report(e, "knob-place", "knob: belongs at the top level of a cell", c.text(e), "a definition such as turns := "+c.text(e), "a knob inside a function or a block would be there many times or never")
	}
	name, ok := c.knobTitle(e.Args[0], args[0])
	if !ok {
		return Typed{}
	}
	t, ok := c.knobBounds(e, args[1:])
	if !ok {
		return Typed{}
	}
	k := Knob{Place: c.PlaceOf(e.Args[0]), Name: name, Type: t, Whole: basic(t)&types.IsInteger != 0}
	for i, to := range []*float64{&k.Value, &k.Low, &k.High} {
		*to, _ = constant.Float64Val(constant.ToFloat(args[i+1].Value))
	}
	if !c.knobOrder(e, k) {
		return Typed{}
	}
	c.KnobAt[e] = len(c.Knobs)
	c.Knobs = append(c.Knobs, k)
	return Typed{Mode: Value, Type: t}
}

// knobTitle reads the name, which has to be new.
func (c *checker) knobTitle(e ast.Expr, x Typed) (string, bool) {
	if x.Value == nil || x.Value.Kind() != constant.String || strings.TrimSpace(constant.StringVal(x.Value)) == "" {
		c.report(e, "knob-name", "knob: the name is a text in quotes", c.text(e), `a name such as "turns"`, "")
		return "", false
	}
	name := strings.TrimSpace(constant.StringVal(x.Value))
	if strings.ContainsAny(name, "=\n\r\t") || len(name) > 60 {
		c.report(e, "knob-name", "knob: the name does not fit on one line", c.text(e), "a short name without = signs", "")
		return "", false
	}
	for _, k := range c.Knobs {
		if k.Name == name {
			c.report(e, "knob-name", fmt.Sprintf("knob: there are two called %q", name), fmt.Sprintf("one here and one at line %d", k.Line), "one name for each knob", "")
			return "", false
		}
	}
	return name, true
}

// knobBounds finds the type that value and bounds share.
func (c *checker) knobBounds(e *ast.CallExpr, args []Typed) (types.Type, bool) {
	t := args[0].Type
	for i, x := range args {
		at := e.Args[i+1]
		_, quantity := c.World.Quantity(x.Type)
		if x.Mode != Value || !quantity && !isNumber(x.Type) {
			c.report(at, "type", "knob: turns numbers and quantities", c.one(at, x), "a number or a quantity", "")
			return nil, false
		}
		if x.Value == nil {
			c.report(at, "knob-bounds", "knob: value and bounds have to be known before anything runs", c.text(at), "a constant such as 5000 or 500*kΩ", "")
			return nil, false
		}
		if i == 0 {
			continue
		}
		if quantity && isZero(args[0]) {
			t = x.Type
		}
		if _, first := c.World.Quantity(args[0].Type); quantity || first {
			if !c.comparable(at, token.LSS, e.Args[1], at, args[0], x) {
				return nil, false
			}
		} else if basic(x.Type)&types.IsFloat != 0 && constant.ToInt(x.Value).Kind() != constant.Int {
			t = x.Type
		}
	}
	return c.World.settle(types.Default(t)), true
}

func (c *checker) knobOrder(e *ast.CallExpr, k Knob) bool {
	switch {
	case !(k.Low < k.High):
		c.report(e, "knob-bounds", "knob: the low bound is not below the high one", c.text(e.Args[2])+" to "+c.text(e.Args[3]), "the low bound first, then the high one", "")
	case k.Value < k.Low || k.Value > k.High:
		c.report(e.Args[1], "knob-bounds", "knob: the value lies outside of its bounds", c.text(e.Args[1]), "a value from "+c.text(e.Args[2])+" to "+c.text(e.Args[3]), "")
	default:
		return true
	}
	return false
}

package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"
	"strings"
	"unicode"
	"unicode/utf8"

	"lode/engine/issue"
	"lode/engine/library"
)

// This file reads knobs: knob(name, value, low, high) is a number or a quantity that a
// person may turn between two bounds without changing the notebook.

// KnobName is the name of the function that makes a knob.
const KnobName = "knob"

// Knob is a value to turn. Values are in coherent units.
type Knob struct {
	issue.Place
	Source           string // the line it is in
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
	place := c.PlaceOf(e.Args[0])
	k := Knob{Place: place, Source: c.sourceLine(c.ChunkOf(e.Pos()), place.Line), Name: name, Type: t, Whole: basic(t)&types.IsInteger != 0}
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

// longestTitle is how many letters the name of a knob may have.
const longestTitle = 60

// knobTitle reads the name, which has to be new.
func (c *checker) knobTitle(e ast.Expr, x Typed) (string, bool) {
	if x.Value == nil || x.Value.Kind() != constant.String {
		c.report(e, "knob-name", "knob: the name is a text in quotes", c.text(e), `a name such as "turns"`, "")
		return "", false
	}
	name := strings.TrimSpace(constant.StringVal(x.Value))
	if fault := titleFault(name); fault != "" {
		c.report(e, "knob-name", "knob: the name "+fault, c.text(e), `a name such as "turns"`, "")
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

// titleFault tells what is wrong with a name.
func titleFault(name string) string {
	switch {
	case name == "":
		return "is empty"
	case strings.Contains(name, "="):
		return "has an equals sign"
	case strings.ContainsFunc(name, unicode.IsControl):
		return "does not stay on one line"
	case utf8.RuneCountInString(name) > longestTitle:
		return fmt.Sprintf("is longer than %d letters", longestTitle)
	}
	return ""
}

// knobBounds finds the type that value and bounds share.
func (c *checker) knobBounds(e *ast.CallExpr, args []Typed) (types.Type, bool) {
	t := args[0].Type
	for i, x := range args {
		at := e.Args[i+1]
		q, quantity := c.World.Quantity(x.Type)
		if x.Mode != Value || q.Complex || !quantity && !isNumber(x.Type) {
			c.report(at, "type", "knob: turns numbers and quantities", c.one(at, x), "a real number or quantity", "")
			return nil, false
		}
		if q.Form == library.Point {
			c.report(at, "type", "knob: does not turn points on a scale", c.one(at, x), "a number or a quantity", "turn a plain number, and multiply it by the unit afterwards")
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
			if !c.sameScale(args[0], x) {
				c.report(at, "dimension-mismatch", "knob: value and bound have different dimensions", c.both(e.Args[1], at, args[0], x), "two of the same dimension", "")
				return nil, false
			}
		} else if basic(x.Type)&types.IsFloat != 0 && constant.ToInt(x.Value).Kind() != constant.Int {
			t = x.Type
		}
	}
	return c.World.settle(types.Default(t)), true
}

// mostWhole is the largest whole number up to which a float64 holds all of them.
const mostWhole = 1 << 53

func (c *checker) knobOrder(e *ast.CallExpr, k Knob) bool {
	switch {
	case !(k.Low < k.High):
		c.report(e, "knob-bounds", "knob: the low bound is not below the high one", c.text(e.Args[2])+" to "+c.text(e.Args[3]), "the low bound first, then the high one", "")
	case k.Whole && (k.Low < -mostWhole || k.High > mostWhole):
		c.report(e, "knob-bounds", "knob: a bound is too large for a whole number", c.text(e.Args[2])+" to "+c.text(e.Args[3]), "bounds within 9e15, or a value with a decimal point", "")
	case k.Value < k.Low || k.Value > k.High:
		c.report(e.Args[1], "knob-bounds", "knob: the value lies outside of its bounds", c.text(e.Args[1]), "a value from "+c.text(e.Args[2])+" to "+c.text(e.Args[3]), "")
	default:
		return true
	}
	return false
}

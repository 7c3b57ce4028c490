package check

import (
	"errors"
	"go/ast"
	"go/types"
	"regexp"
	"strings"
)

// This file puts the messages of go/types into our form. They come about expressions in
// which placeholders stand for the parts, which are read and described already.

// Worded is a message in parts.
type Worded struct {
	Code, What, Got, Want, Hint string
}

type rewording struct {
	pattern *regexp.Regexp
	Worded  // with $1 for what the pattern holds
}

// rewordings lists the messages that a notebook can provoke, the special ones first.
func rewordings() []rewording {
	re := regexp.MustCompile
	return []rewording{
		{re(`invalid argument: index .* \(constant of type int\) must not be negative|invalid argument: index .* must not be negative`), Worded{"type", "index: is negative", "$text", "0 or more", "count from the end with len(x)-1"}},
		{re(`invalid argument: index (\S+) out of bounds \[0:(\d+)\]|index (\d+) is out of bounds`), Worded{"type", "index: outside of the array", "$text", "0 to below its length", ""}},
		{re(`invalid argument: index`), Worded{"type", "index: has to be a whole number", "$text", "a whole number", "convert it: int(...)"}},
		{re(`invalid slice indices`), Worded{"type", "slice: its bounds are in the wrong order", "$text", "the lower one first", ""}},
		{re(`cannot index|cannot use generic`), Worded{"type", "$text: has no elements to take one from", "$parts", "a slice, an array, a map or a string", ""}},
		{re(`cannot slice|3-index slice of string`), Worded{"type", "$text: cannot be sliced", "$parts", "a slice, an array or a string", ""}},
		{re(`cannot indirect|invalid operation: cannot indirect`), Worded{"type", "*: there is no pointer to follow", "$parts", "a pointer", "take the star away"}},
		{re(`cannot take address of`), Worded{"type", "&: this has no address", "$text", "a variable or a literal of a struct", "assign it to a name first"}},
		{re(`is not an interface`), Worded{"type", "type assertion: the value is in no interface", "$parts", "a value of type any or another interface", "its type is known already: take the assertion away"}},
		{re(`impossible type assertion|impossible type switch case`), Worded{"type", "type assertion: can never hold", "$text", "a type that has the methods", ""}},
		{re(`cannot convert`), Worded{"conversion", "conversion: there is none between these types", "$text", "types with the same kind of value", ""}},
		{re(`truncated`), Worded{"conversion", "conversion: would lose a fraction", "$text", "a whole number", "round it first, such as int(round(x))"}},
		{re(`overflow|cannot represent|out of range`), Worded{"too-large", "$text: the number is too large for its type", "$parts", "a number that fits", "use int, or a float such as 1e20"}},
		{re(`shift count|shifted operand`), Worded{"type", "shift: needs whole numbers", "$text", "a whole number on both sides, 0 or more on the right", ""}},
		{re(`operator (\S+) not defined on`), Worded{"operator", "$1: not defined here", "$parts", "a number, or true or false for !", ""}},
		{re(`cannot compare|incomparable types|can only be compared to nil`), Worded{"operands", "comparison: these cannot be compared", "$text", "two values of one type that is comparable", "compare their parts"}},
		{re(`invalid argument: .* for built-in (\w+)|for built-in (\w+)`), Worded{"type", "$1$2: does not work on this", "$parts", "what $1$2 takes", ""}},
		{re(`invalid operation: (\w+) expects|not enough arguments for (\w+)|too many arguments for (\w+)|not enough arguments in call to|too many arguments in call to`), Worded{"argument-count", "$text: the number of arguments does not fit", "$text", "another number", ""}},
		{re(`invalid argument: (?:cannot make|.*make)|cannot make`), Worded{"type", "make: makes slices and maps", "$text", "a slice or a map type, and a length", ""}},
		{re(`(copy|append|delete|clear)\b`), Worded{"type", "$1: does not work on this", "$parts", "what $1 takes", ""}},
		{re(`mismatched types|invalid operation`), Worded{"operands", "$text: these do not go together", "$parts", "operands of one type", ""}},
	}
}

// Reword finds the words for a message of go/types about an expression of the given text.
func Reword(msg, text, parts string) Worded {
	for _, r := range rewordings() {
		m := r.pattern.FindStringSubmatchIndex(msg)
		if m == nil {
			continue
		}
		fill := func(s string) string {
			s = strings.NewReplacer("$text", "\x01", "$parts", "\x02").Replace(s)
			s = string(r.pattern.ExpandString(nil, s, msg, m))
			return strings.NewReplacer("\x01", text, "\x02", parts).Replace(s)
		}
		return Worded{r.Code, fill(r.What), fill(r.Got), fill(r.Want), fill(r.Hint)}
	}
	return Worded{Code: "type", What: text + ": does not fit together", Got: parts, Want: "what the language takes here"}
}

// nativeIssue reports an objection of go/types at e.
func (c *checker) nativeIssue(e ast.Expr, err error) Typed {
	msg := err.Error()
	var te types.Error
	if errors.As(err, &te) {
		msg = te.Msg
	}
	w := Reword(msg, c.text(e), c.partsOf(e))
	return c.report(e, w.Code, w.What, w.Got, w.Want, w.Hint)
}

// partsOf describes the operands of an expression.
func (c *checker) partsOf(e ast.Expr) string {
	var parts []ast.Expr
	switch e := e.(type) {
	case *ast.IndexExpr:
		parts = []ast.Expr{e.X}
	case *ast.SliceExpr:
		parts = []ast.Expr{e.X}
	case *ast.StarExpr:
		parts = []ast.Expr{e.X}
	case *ast.UnaryExpr:
		parts = []ast.Expr{e.X}
	case *ast.TypeAssertExpr:
		parts = []ast.Expr{e.X}
	case *ast.CallExpr:
		parts = e.Args
	}
	var texts []string
	for _, p := range parts {
		texts = append(texts, c.one(p, c.Exprs[p]))
	}
	if len(texts) == 0 {
		return c.text(e)
	}
	return strings.Join(texts, " and ")
}

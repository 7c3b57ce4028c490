package check

import (
	"regexp"
	"strings"
)

// A slip is a way of writing that other languages or paper allow, told by what stands in
// front of the place where the parser gave up and what stands there.
type slip struct {
	before, at *regexp.Regexp
	hint       string
}

func slipOf(before, at, hint string) slip {
	return slip{regexp.MustCompile("(?:" + before + ")$"), regexp.MustCompile("^(?:" + at + ")"), hint}
}

var (
	leadingName  = regexp.MustCompile(`^\p{L}\w*`)
	endsInNumber = regexp.MustCompile(`[0-9.]\s*$`)
)

func (c *checker) unitMeant(name string) bool {
	_, written := c.Lib.Units[name]
	return name != "" && (written || c.spoken(name) != "")
}

// slips returns the known ones; of several that fit the first one counts.
func slips() []slip {
	return []slip{
		slipOf(``, `°\s*[CF]?`, "a temperature is a number times degC, such as 25*degC; an angle is 30*deg"),
		slipOf(`^\s*if\s.*`, `then\b`, "the branch stands in braces: if x > 3*mm { ... }"),
		slipOf(`^\s*while\s+`, ``, "a loop is for x > 3*mm { ... }"),
		slipOf(`\d\.?`, `\.+\d`, "a range of numbers is for i := range 10; a decimal number has one point"),
		slipOf(`^\s*for\s+\w+\s+`, `in\b`, "a loop over a list is for i, x := range list, over a count for i := range 10"),
		slipOf(`^\s*(?:def|function|fn)\s+`, `\w+\s*\(`, "a function is func f(x units.Length) units.Area { return x * x }"),
		slipOf(`^\s*(?:let|const|var|def|set)\s+\w*\s*`, `\w+|:=`, "a name is defined by x := 5*mm"),
		slipOf(``, `'`, "a text stands in double quotes"),
		slipOf(`\[\s*[0-9][^\]]*`, `,`, "a list is written []float64{1, 2, 3}, with the kind of its values in front"),
		slipOf(`:?=\s*`, `if\b`, "if has no value: define the name first and assign to it in the branches"),
		slipOf(``, `%`, "percent is a unit: 5*percent"),
		slipOf(``, `[×·⋅]`, "multiply with *"),
		slipOf(``, `÷`, "divide with /"),
		slipOf(``, `[−–—]`, "subtract with the plain - of the keyboard"),
		slipOf(``, `[²³⁴⁵⁶⁷⁸⁹]`, "a power is pow(x, 2)"),
		slipOf(``, `√`, "a root is sqrt(x)"),
		slipOf(``, `[“”„«»]`, "a text stands in plain double quotes"),
		slipOf(``, `‖|\|\|`, "two in parallel are a*b/(a+b)"),
		slipOf(``, `[≤≥≠]`, "compare with <=, >= or !="),
		slipOf(``, `#`, "a remark begins with //"),
		slipOf(``, `\?`, "there is no short form of if ... else"),
	}
}

// slipAt returns the hint for a statement that the parser gave up at a byte of its text.
func (c *checker) slipAt(text string, at int) string {
	line := text[strings.LastIndexByte(text[:at], '\n')+1 : at]
	if unit := leadingName.FindString(text[at:]); endsInNumber.MatchString(line) && c.unitMeant(unit) {
		return "a quantity is a number times a unit: put a * between them"
	}
	for _, s := range slips() {
		if s.before.MatchString(line) && s.at.MatchString(text[at:]) {
			return s.hint
		}
	}
	return ""
}

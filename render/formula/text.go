package formula

import "strings"

// Text writes the formula in one line, with brackets where the order asks for them.
func (n Node) Text() string {
	switch n.kind {
	case name:
		return n.text
	case number:
		return join(n.text, n.unit)
	case sum, relation:
		return n.side(0, n.binding()) + " " + n.text + " " + n.side(1, n.binding()+1)
	case negative:
		return "−" + n.side(0, 3)
	case product:
		return n.side(0, 3) + "·" + n.factor(1)
	case quotient:
		return n.side(0, 3) + "/" + n.side(1, 4)
	case power:
		return n.side(0, 5) + "^" + n.side(1, 5)
	case root:
		return "√(" + n.args[0].Text() + ")"
	case magnitude:
		return "|" + n.args[0].Text() + "|"
	}
	args := make([]string, len(n.args))
	for i, a := range n.args {
		args[i] = a.Text()
	}
	return n.text + "(" + strings.Join(args, ", ") + ")"
}

func join(number, unit string) string {
	if unit == "" || unit == "°" || number == "" {
		return number + unit
	}
	return number + " " + unit
}

// factor writes a factor that follows a dot: one with a sign or a unit needs no brackets
// unless it begins with the sign.
func (n Node) factor(i int) string {
	if a := n.args[i]; a.kind == number && a.unit != "" && !signed(a) {
		return a.Text()
	}
	return n.side(i, 4)
}

// side writes an argument, in brackets when it binds less than least.
func (n Node) side(i, least int) string {
	a := n.args[i]
	if a.binding() < least || least > 1 && signed(a) {
		return "(" + a.Text() + ")"
	}
	return a.Text()
}

// signed reports whether a number begins with a minus.
func signed(n Node) bool {
	return n.kind == number && (strings.HasPrefix(n.text, "−") || strings.HasPrefix(n.text, "-"))
}

package check

import (
	"fmt"
	"go/ast"
	"go/types"
	"slices"
	"strings"
)

// memberMeant guesses what was meant by a field or method that a value does not have.
func (c *checker) memberMeant(e *ast.SelectorExpr, x Typed) string {
	names, name := memberNames(x.Type), e.Sel.Name
	if hint := didYouMean(name, names); hint != "" {
		return hint
	}
	if alike := c.alike(name, names); alike != "" {
		return alike
	}
	if hint := c.displayed(e, x); hint != "" {
		return hint
	}
	if hint := c.onward(e, x.Type); hint != "" {
		return hint
	}
	const told = 8
	switch {
	case len(names) == 0:
		return ""
	case len(names) <= told || c.own(x.Type):
		return "there is " + strings.Join(names[:min(len(names), told)], ", ")
	}
	return fmt.Sprintf("there is %s and %d more: lode about %s lists them", strings.Join(names[:told], ", "), len(names)-told, c.World.typeText(deref(x.Type)))
}

// alike finds members by another word for them, or by a word that is a part of theirs.
func (c *checker) alike(name string, names []string) string {
	low, wanted := strings.ToLower(name), strings.Fields(c.Lib.Alike[strings.ToLower(name)])
	var found []string
	for _, n := range names {
		if slices.Contains(wanted, n) || len(low) > 3 && strings.Contains(strings.ToLower(n), low) {
			found = append(found, n)
		}
	}
	if len(found) == 0 {
		return ""
	}
	return "did you mean " + strings.Join(found[:min(len(found), 3)], " or ") + "?"
}

// displayed suspects the wish to show a quantity in another unit.
func (c *checker) displayed(e *ast.SelectorExpr, x Typed) string {
	q, ok := c.World.Quantity(x.Type)
	switch strings.ToLower(e.Sel.Name) {
	case "in", "to", "as", "format", "unit", "units", "convert":
		if ok && !q.Complex {
			return fmt.Sprintf("%s(%s, %s) shows it in a unit of your choice", CountedName, c.text(e.X), c.unitOf(q))
		}
	}
	return ""
}

// onward looks for the member one call further on: on what a method of the value returns, the
// method of the shortest name if several do.
func (c *checker) onward(e *ast.SelectorExpr, t types.Type) string {
	best := ""
	set := types.NewMethodSet(types.NewPointer(deref(t)))
	for m := range set.Methods() {
		sig := m.Obj().(*types.Func).Signature()
		if !m.Obj().Exported() || sig.Results().Len() == 0 {
			continue
		}
		if member := c.memberOf(sig.Results().At(0).Type(), e.Sel.Name); member != "" {
			hint := fmt.Sprintf("%s.%s(%s) has %s", c.text(e.X), m.Obj().Name(), dots(sig), member)
			if best == "" || len(hint) < len(best) {
				best = hint
			}
		}
	}
	return best
}

// memberOf finds a member but for the case of its letters; quantities do not count.
func (c *checker) memberOf(t types.Type, wanted string) string {
	if _, quantity := c.World.Quantity(t); quantity {
		return ""
	}
	for _, name := range memberNames(t) {
		if strings.EqualFold(name, wanted) {
			return name
		}
	}
	return ""
}

func dots(sig *types.Signature) string {
	if sig.Params().Len() == 0 {
		return ""
	}
	return "..."
}

func deref(t types.Type) types.Type {
	if p, ok := t.(*types.Pointer); ok {
		return p.Elem()
	}
	return t
}

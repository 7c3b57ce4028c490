package check

import (
	"go/types"
	"slices"
	"strings"
)

// mostMakers is how many functions a hint names.
const mostMakers = 4

// makers names library functions whose result is of a type, as a hint; "" where none is, or where a plain value of it
// is written as easily.
func (c *checker) makers(t types.Type) string {
	n, ok := types.Unalias(t).(*types.Named)
	if !ok || c.own(t) {
		return ""
	}
	if _, structure := n.Underlying().(*types.Struct); !structure {
		return ""
	}
	var found []string
	for p, pkg := range c.Lib.Packages {
		for _, name := range pkg.Scope().Names() {
			if f, ok := pkg.Scope().Lookup(name).(*types.Func); ok && f.Exported() && gives(f, t) {
				found = append(found, p+"."+name)
			}
		}
	}
	if len(found) == 0 {
		return ""
	}
	slices.Sort(found)
	return "made by " + strings.Join(found[:min(len(found), mostMakers)], ", ")
}

// gives reports whether the first result of a function is of a type.
func gives(f *types.Func, t types.Type) bool {
	results := f.Type().(*types.Signature).Results()
	return results.Len() > 0 && types.Identical(results.At(0).Type(), t)
}

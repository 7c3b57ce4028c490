package session

import (
	"strconv"

	"lode/cmd/internal/evaluate"
	"lode/cmd/internal/record"
)

// Change is a result that came out differently than before.
type Change struct {
	Label, Before, After string
	Relative             string // such as "+12 %", where both are numbers of one unit
}

// moved compares the results of two runs, label by label in order.
func moved(before, after []evaluate.Value) []Change {
	old := map[string][]evaluate.Value{}
	for _, v := range before {
		old[v.Label] = append(old[v.Label], v)
	}
	var changes []Change
	for _, v := range after {
		was := old[v.Label]
		if len(was) == 0 {
			continue
		}
		old[v.Label] = was[1:]
		switch {
		case was[0].Columns != nil || v.Columns != nil:
			if cells := record.Cells(was[0].Columns, v.Columns); cells != "" {
				changes = append(changes, Change{Label: v.Label, After: cells})
			}
		case differs(was[0], v):
			changes = append(changes, Change{v.Label, was[0].Text, v.Text, relative(was[0], v)})
		}
	}
	return changes
}

func differs(a, b evaluate.Value) bool {
	if a.Number != "" && b.Number != "" {
		return a.Number != b.Number || a.Unit != b.Unit
	}
	return a.Text != b.Text
}

// relative writes how much larger b is than a.
func relative(a, b evaluate.Value) string {
	x, err1 := strconv.ParseFloat(a.Number, 64)
	y, err2 := strconv.ParseFloat(b.Number, 64)
	if err1 != nil || err2 != nil || a.Unit != b.Unit {
		return ""
	}
	return record.Step(x, y, a.Unit)
}

package record

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lode/units"
)

// This file tells what moved within a table or a curve.

// Cells tells in a few words how the cells of a result differ between two runs: "" where they
// do not.
func Cells(before, after []Column) string {
	before, after = untitled(before), untitled(after)
	if shape(before) != shape(after) {
		return "other columns or rows"
	}
	changed, all, most, where := 0, 0, 0.0, ""
	for i, c := range before {
		for row, was := range c.Values {
			all++
			is := after[i].Values[row]
			if was == is {
				continue
			}
			changed++
			if step := ratio(was, is); step > most || where == "" {
				most, where = step, cellStep(c, row, was, is)
			}
		}
	}
	if changed == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %d values moved, most in %s", changed, all, where)
}

// untitled takes the title of a table, which all its columns begin with, out of their names.
func untitled(list []Column) []Column {
	if len(list) < 2 {
		return list
	}
	title := list[0].Name
	for _, c := range list[1:] {
		for !strings.HasPrefix(c.Name, title) {
			title = title[:len(title)-1]
		}
	}
	title = title[:strings.LastIndexByte(title, ' ')+1]
	short := make([]Column, len(list))
	for i, c := range list {
		c.Name = strings.TrimPrefix(c.Name, title)
		short[i] = c
	}
	return short
}

func shape(list []Column) string {
	text := ""
	for _, c := range list {
		text += fmt.Sprintf("%s|%s|%d;", c.Name, c.Unit, len(c.Values))
	}
	return text
}

// ratio is how far apart two values are, for finding the largest step.
func ratio(was, is string) float64 {
	x, err1 := strconv.ParseFloat(was, 64)
	y, err2 := strconv.ParseFloat(is, 64)
	if err1 != nil || err2 != nil || math.IsNaN(x-y) {
		return 0
	}
	return math.Abs(x-y) / max(math.Abs(x), math.Abs(y))
}

// cellStep names a cell and its step.
func cellStep(c Column, row int, was, is string) string {
	return fmt.Sprintf("%s, row %d: %s → %s", c.Name, row+1, short(was, c.Unit), short(is, c.Unit))
}

// short writes a recorded value as people read it: SI numbers with the unit that suits them.
func short(value, unit string) string {
	x, err := strconv.ParseFloat(value, 64)
	if err != nil {
		return value
	}
	for _, k := range units.Kinds() {
		if k.Symbol == unit && k.Form != "root" {
			return units.Text(x, k)
		}
	}
	return units.Text(x, units.Number())
}

// Step writes how much larger y is than x, two numbers of one unit: "" where that says nothing.
// For levels the difference itself tells.
func Step(x, y float64, unit string) string {
	percent := (y/x - 1) * 100
	switch {
	case strings.HasPrefix(unit, "dB"):
		return fmt.Sprintf("%+.2f dB", y-x)
	case x == 0 || math.IsInf(x, 0) || math.IsNaN(y/x) || math.IsInf(y/x, 0):
		return ""
	case y/x < 0 || y/x >= 10:
		return "×" + units.Digits(y/x, 3)
	case math.Abs(percent) < 0.05:
		return fmt.Sprintf("%+.2g %%", percent)
	}
	return fmt.Sprintf("%+.1f %%", percent)
}

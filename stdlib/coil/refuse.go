package coil

import (
	"errors"
	"fmt"
	"math"

	"lode/stdlib/wire"
	"lode/units"
)

// This file words the errors: "subject: what is wrong: got X, want Y", and a hint on a
// line of its own where there is one.

func refuse(subject string, got any, want, hint string) error {
	text := fmt.Sprintf("%s: got %v, want %s", subject, got, want)
	if hint != "" {
		text += "\nhint: " + hint
	}
	return errors.New(text)
}

// longest is more than any bobbin measures. A larger value is mostly a forgotten unit.
const longest = 2 * units.Metre

// span refuses a dimension that is missing, negative, endless or too large.
func span(subject string, x units.Length) error {
	if x > 0 && x <= longest {
		return nil
	}
	hint := ""
	if x > longest && !math.IsInf(float64(x), 1) {
		hint = "a number without a unit counts metres; write the unit, such as 10*mm"
	}
	return refuse(subject+": out of range", x, "more than 0 and at most "+longest.String(), hint)
}

// mostTurns is more than any bobbin holds.
const mostTurns = 1000000

func countTurns(turns int) error {
	if turns < 1 || turns > mostTurns {
		return refuse("turns: out of range", turns, fmt.Sprintf("1 to %d", mostTurns), "")
	}
	return nil
}

func usable(w wire.Wire) error {
	if !(w.Bare() > 0) {
		return refuse("wire: none", w, "a wire, such as wire.AWG(42)", "")
	}
	if !(w.Overall() > w.Bare()) {
		hint := "wire.Measured takes the diameters of any wire, bare and over its enamel"
		if _, err := w.Single(); err == nil {
			hint = "w.Single() and w.Heavy() are the enamelled builds of a gauge"
		}
		return refuse("wire: without enamel its turns would short", w.Name(), "an enamelled wire", hint)
	}
	return nil
}

package wire

import (
	"errors"
	"fmt"
	"math"

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

// within refuses a quantity that is no finite number between low and high.
func within(name string, got, low, high units.Quantity) error {
	x := got.SI()
	if !finite(x) || x < low.SI() || x > high.SI() {
		return refuse(name+": out of range", got, low.String()+" to "+high.String(), "")
	}
	return nil
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

package piezo

import (
	"errors"
	"fmt"

	"lode/units"
)

// This file joins elements, such as one under each saddle.

// Parallel returns elements in parallel as one, pressed with 1 N each: charges and capacitances add.
//
// Source: charge and capacitance of sources in parallel, textbook; IEEE Std 176-1987 for each element.
//
// Valid: forces in step with each other. A string that presses one element alone is told by Among.
//
// Example: piezo.Parallel(saddle, saddle, saddle, saddle)
func Parallel(elements ...Element) (Element, error) {
	return join("parallel", elements, func(sum *Element, e Element) {
		loss := sum.LossTangent*sum.Capacitance.SI() + e.LossTangent*e.Capacitance.SI()
		sum.Capacitance += e.Capacitance
		sum.ChargePerNewton += e.ChargePerNewton
		sum.LossTangent = loss / sum.Capacitance.SI()
		switch {
		case sum.Leakage == 0:
			sum.Leakage = e.Leakage
		case e.Leakage > 0:
			sum.Leakage = 1 / (1/sum.Leakage + 1/e.Leakage)
		}
	})
}

// Series returns elements in series as one, pressed with 1 N each: open voltages add.
//
// Source: voltage and capacitance of sources in series, textbook; IEEE Std 176-1987 for each element.
//
// Valid: forces in step with each other; leakages are added, which is right above each element's own low corner.
//
// Example: piezo.Series(saddle, saddle)
func Series(elements ...Element) (Element, error) {
	return join("series", elements, func(sum *Element, e Element) {
		a, b := 1/sum.Capacitance.SI(), 1/e.Capacitance.SI()
		volts := sum.VoltagePerNewton() + e.VoltagePerNewton()
		sum.LossTangent = (sum.LossTangent*a + e.LossTangent*b) / (a + b)
		sum.Capacitance = 1 / (1/sum.Capacitance + 1/e.Capacitance)
		sum.ChargePerNewton = units.Charge(volts.SI() * sum.Capacitance.SI())
		if sum.Leakage > 0 && e.Leakage > 0 {
			sum.Leakage += e.Leakage
		} else {
			sum.Leakage = 0
		}
	})
}

// Among returns e pressed alone with 1 N while the others hang in parallel: its charge spreads over all.
//
// Example: saddle.Among(saddle, saddle, saddle)
func (e Element) Among(others ...Element) (Element, error) {
	all, err := Parallel(append([]Element{e}, others...)...)
	all.ChargePerNewton = e.ChargePerNewton
	return all, err
}

func join(how string, elements []Element, add func(sum *Element, e Element)) (Element, error) {
	if len(elements) == 0 {
		return Element{}, errors.New("piezo elements in " + how + ": none: want at least one")
	}
	sum := elements[0]
	for i, e := range elements {
		if err := e.check(); err != nil {
			return Element{}, fmt.Errorf("element %d in %s: %w", i+1, how, err)
		}
		if i > 0 {
			add(&sum, e)
		}
	}
	return sum, nil
}

package load

import (
	"fmt"
	"math"
	"slices"

	"lode/units"
)

// This file rounds values to those that shops sell.

// PreferredResistance returns the value of a preferred series, 3 to 192, that is nearest to r by ratio.
//
// Source: IEC 60063:2015, preferred number series for resistors and capacitors.
//
// Example: load.PreferredResistance(24, 312*kΩ)
func PreferredResistance(series int, r units.Resistance) (units.Resistance, error) {
	v, err := preferred(series, r)
	return units.Resistance(v), err
}

// PreferredCapacitance returns the value of a preferred series, 3 to 192, that is nearest to c by ratio.
//
// Source: IEC 60063:2015, preferred number series for resistors and capacitors.
//
// Example: load.PreferredCapacitance(6, 20*nF)
func PreferredCapacitance(series int, c units.Capacitance) (units.Capacitance, error) {
	v, err := preferred(series, c)
	return units.Capacitance(v), err
}

func preferred(series int, q units.Quantity) (float64, error) {
	values := decade(series)
	if values == nil {
		return 0, fmt.Errorf("series: not known: got %d, want 3, 6, 12, 24, 48, 96 or 192", series)
	}
	x := q.SI()
	if !(x > 0) || math.IsInf(x, 1) {
		return 0, fmt.Errorf("value: not possible: got %v, want more than 0 %s", q, q.Kind().Symbol)
	}
	power := int(math.Floor(math.Log10(x)))
	best := math.Inf(1)
	for _, v := range append(values, 10*values[0]) {
		if v = scaled(v, power); math.Abs(math.Log(v/x)) < math.Abs(math.Log(best/x)) {
			best = v
		}
	}
	return best, nil
}

// scaled returns v·10^power so that decimal values stay as exact as they can be.
func scaled(v float64, power int) float64 {
	if power < 0 {
		return v / math.Pow(10, float64(-power))
	}
	return v * math.Pow(10, float64(power))
}

// decade returns the values of a series from 1 to below 10. Up to E24 they are historical; from
// E48 on they are 10^(i/n) to three digits, but for 9.20 in E192.
func decade(series int) []float64 {
	e24 := []float64{1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1}
	var values []float64
	switch {
	case slices.Contains([]int{3, 6, 12, 24}, series):
		for i := 0; i < 24; i += 24 / series {
			values = append(values, e24[i])
		}
	case slices.Contains([]int{48, 96, 192}, series):
		for i := range series {
			values = append(values, math.Round(100*math.Pow(10, float64(i)/float64(series)))/100)
		}
		if series == 192 {
			values[185] = 9.2
		}
	}
	return values
}

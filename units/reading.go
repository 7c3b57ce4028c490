package units

// Reading is a quantity counted in a unit of one's choice, ready to be shown.
type Reading struct {
	Value float64 // in the unit
	Unit  string
}

// Count returns value, in SI units, counted in a unit that is unit SI units large.
func Count(value, unit float64, symbol string) Reading { return Reading{value / unit, symbol} }

// String writes the reading to six significant digits.
func (r Reading) String() string { return join(Digits(r.Value, 6), r.Unit) }

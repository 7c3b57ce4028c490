// Package tables holds the two tables that the rest of units is made from: the kinds of
// quantity and the units. Adding a kind or a unit is adding a row here and running
// go generate in the units folder.
package tables

// Kind is one row: a named type of quantity.
type Kind struct {
	Type   string // Go type name
	Name   string // in a sentence
	Dim    [5]int // length, mass, time, current, temperature
	Symbol string // coherent SI unit
	Scale  string // how printing chooses a unit: see Scales
	Form   string // "", "point", "angle", "angular", "root" (per square root of hertz) or "log"
	Lead   bool   // may lead an unnamed unit such as Ω·m²
}

// Kinds lists every kind. Where two kinds share a dimension the first one names products.
var Kinds = []Kind{
	{"Length", "length", [5]int{1}, "m", "length", "", false},
	{"Area", "area", [5]int{2}, "m²", "area", "", false},
	{"Volume", "volume", [5]int{3}, "m³", "volume", "", false},
	{"Mass", "mass", [5]int{0, 1}, "kg", "mass", "", false},
	{"Time", "time", [5]int{0, 0, 1}, "s", "si", "", false},
	{"Velocity", "velocity", [5]int{1, 0, -1}, "m/s", "si", "", false},
	{"Acceleration", "acceleration", [5]int{1, 0, -2}, "m/s²", "one", "", false},
	{"Frequency", "frequency", [5]int{0, 0, -1}, "Hz", "si", "", false},
	{"AngularFrequency", "angular frequency", [5]int{0, 0, -1}, "rad/s", "si", "angular", false},
	{"Level", "level difference", [5]int{}, "dB", "one", "log", false},
	{"VoltageLevel", "voltage level", [5]int{}, "dBV", "one", "point", false},
	{"Angle", "angle", [5]int{}, "rad", "degrees", "angle", false},
	{"Force", "force", [5]int{1, 1, -2}, "N", "si", "", true},
	{"Pressure", "pressure", [5]int{-1, 1, -2}, "Pa", "si", "", false},
	{"EnergyDensity", "energy density", [5]int{-1, 1, -2}, "J/m³", "si", "", false},
	{"Energy", "energy", [5]int{2, 1, -2}, "J", "si", "", true},
	{"Power", "power", [5]int{2, 1, -3}, "W", "si", "", true},
	{"Voltage", "voltage", [5]int{2, 1, -3, -1}, "V", "si", "", true},
	{"Current", "current", [5]int{0, 0, 0, 1}, "A", "si", "", false},
	{"Charge", "charge", [5]int{0, 0, 1, 1}, "C", "si", "", true},
	{"Resistance", "resistance", [5]int{2, 1, -3, -2}, "Ω", "si", "", true},
	{"Conductance", "conductance", [5]int{-2, -1, 3, 2}, "S", "si", "", true},
	{"Inductance", "inductance", [5]int{2, 1, -2, -2}, "H", "si", "", true},
	{"Capacitance", "capacitance", [5]int{-2, -1, 4, 2}, "F", "si", "", true},
	{"Flux", "magnetic flux", [5]int{2, 1, -2, -1}, "Wb", "si", "", true},
	{"FluxDensity", "flux density", [5]int{0, 1, -2, -1}, "T", "si", "", true},
	{"FieldStrength", "field strength", [5]int{-1, 0, 0, 1}, "A/m", "si", "", false},
	{"MagneticMoment", "magnetic moment", [5]int{2, 0, 0, 1}, "A·m²", "si", "", false},
	{"Density", "density", [5]int{-3, 1}, "kg/m³", "one", "", false},
	{"Resistivity", "resistivity", [5]int{3, 1, -3, -2}, "Ω·m", "si", "", false},
	{"Conductivity", "conductivity", [5]int{-3, -1, 3, 2}, "S/m", "si", "", false},
	{"ResistancePerLength", "resistance per length", [5]int{1, 1, -3, -2}, "Ω/m", "si", "", false},
	{"CapacitancePerLength", "capacitance per length", [5]int{-3, -1, 4, 2}, "F/m", "si", "", false},
	{"InductancePerLength", "inductance per length", [5]int{1, 1, -2, -2}, "H/m", "si", "", false},
	{"MassPerLength", "mass per length", [5]int{-1, 1}, "kg/m", "massperlength", "", false},
	{"PerLength", "count per length", [5]int{-1}, "1/m", "perlength", "", false},
	{"CurrentDensity", "current density", [5]int{-2, 0, 0, 1}, "A/m²", "persquare", "", false},
	{"Temperature", "temperature", [5]int{0, 0, 0, 0, 1}, "K", "celsius", "point", false},
	{"TemperatureDifference", "temperature difference", [5]int{0, 0, 0, 0, 1}, "K", "si", "", false},
	{"TemperatureCoefficient", "temperature coefficient", [5]int{0, 0, 0, 0, -1}, "1/K", "one", "", false},
	{"VoltageNoise", "voltage noise density", [5]int{2, 1, -3, -1}, "V/√Hz", "si", "root", false},
	{"CurrentNoise", "current noise density", [5]int{0, 0, 0, 1}, "A/√Hz", "si", "root", false},
}

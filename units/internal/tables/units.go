package tables

// Unit is one row: a unit that notebooks may write.
type Unit struct {
	Const    string // exported Go constant in package units
	Type     string // kind
	Factor   string // Go expression: how many SI units it is
	Symbols  string // spellings in scope in notebooks, the best first, separated by spaces
	TextOnly string // spellings accepted in parsed text only
}

// Units lists every unit with a name of its own.
var Units = []Unit{
	{"Metre", "Length", "1", "metre meter", "m"},
	{"Centimetre", "Length", "1e-2", "cm", ""},
	{"Millimetre", "Length", "1e-3", "mm", ""},
	{"Micrometre", "Length", "1e-6", "µm μm um", "micron"},
	{"Kilometre", "Length", "1e3", "km", ""},
	{"Inch", "Length", "25.4e-3", "inch", "in \""},
	{"Mil", "Length", "25.4e-6", "mil", "thou"},
	{"Foot", "Length", "0.3048", "foot", "ft"},
	{"SquareMillimetre", "Area", "1e-6", "mm2", "mm²"},
	{"CubicMillimetre", "Volume", "1e-9", "mm3", "mm³"},
	{"Millilitre", "Volume", "1e-6", "ml", "mL cm³"},
	{"Kilogram", "Mass", "1", "kg", ""},
	{"Gram", "Mass", "1e-3", "gram", "g"},
	{"Milligram", "Mass", "1e-6", "mg", ""},
	{"Second", "Time", "1", "sec", "s"},
	{"Millisecond", "Time", "1e-3", "ms", ""},
	{"Microsecond", "Time", "1e-6", "µs μs us", ""},
	{"Hertz", "Frequency", "1", "Hz", ""},
	{"Kilohertz", "Frequency", "1e3", "kHz", ""},
	{"Megahertz", "Frequency", "1e6", "MHz", ""},
	{"RadianPerSecond", "AngularFrequency", "1", "radps", "rad/s"},
	{"Radian", "Angle", "1", "rad", ""},
	{"Degree", "Angle", "math.Pi / 180", "deg", "°"},
	{"Newton", "Force", "1", "N", ""},
	{"Millinewton", "Force", "1e-3", "mN", ""},
	{"GramForce", "Force", "9.80665e-3", "gramforce", "gf"},
	{"Pascal", "Pressure", "1", "Pa", ""},
	{"Megapascal", "Pressure", "1e6", "MPa", ""},
	{"Gigapascal", "Pressure", "1e9", "GPa", ""},
	{"Joule", "Energy", "1", "joule", "J"},
	{"KilojoulePerCubicMetre", "EnergyDensity", "1e3", "kJm3", "kJ/m³"},
	{"Watt", "Power", "1", "watt", "W"},
	{"Milliwatt", "Power", "1e-3", "mW", ""},
	{"Volt", "Voltage", "1", "V", ""},
	{"Millivolt", "Voltage", "1e-3", "mV", ""},
	{"Microvolt", "Voltage", "1e-6", "µV μV uV", ""},
	{"Nanovolt", "Voltage", "1e-9", "nV", ""},
	{"Ampere", "Current", "1", "A", ""},
	{"Milliampere", "Current", "1e-3", "mA", ""},
	{"Microampere", "Current", "1e-6", "µA μA uA", ""},
	{"Coulomb", "Charge", "1", "coulomb", "C"},
	{"Picocoulomb", "Charge", "1e-12", "pC", ""},
	{"Ohm", "Resistance", "1", "Ω ohm Ω", "R"},
	{"Milliohm", "Resistance", "1e-3", "mΩ mohm mΩ", ""},
	{"Kiloohm", "Resistance", "1e3", "kΩ kohm kΩ", "k K"},
	{"Megaohm", "Resistance", "1e6", "MΩ Mohm MΩ", "Meg M"},
	{"Gigaohm", "Resistance", "1e9", "GΩ Gohm GΩ", ""},
	{"Siemens", "Conductance", "1", "siemens", "S"},
	{"Henry", "Inductance", "1", "H", ""},
	{"Millihenry", "Inductance", "1e-3", "mH", ""},
	{"Microhenry", "Inductance", "1e-6", "µH μH uH", ""},
	{"Nanohenry", "Inductance", "1e-9", "nH", ""},
	{"Farad", "Capacitance", "1", "F", ""},
	{"Millifarad", "Capacitance", "1e-3", "mF", ""},
	{"Microfarad", "Capacitance", "1e-6", "µF μF uF", ""},
	{"Nanofarad", "Capacitance", "1e-9", "nF", ""},
	{"Picofarad", "Capacitance", "1e-12", "pF", ""},
	{"Weber", "Flux", "1", "weber", "Wb"},
	{"Tesla", "FluxDensity", "1", "T", ""},
	{"Millitesla", "FluxDensity", "1e-3", "mT", ""},
	{"Microtesla", "FluxDensity", "1e-6", "µT μT uT", ""},
	{"Gauss", "FluxDensity", "1e-4", "gauss", "Gs"},
	{"Oersted", "FieldStrength", "1e3 / (4 * math.Pi)", "oersted", "Oe"},
	{"Decibel", "Level", "1", "dB", ""},
	{"Kelvin", "TemperatureDifference", "1", "kelvin", "K"},
}

// Prefixes are the SI prefixes that parsed text may put before an SI symbol.
var Prefixes = map[string]float64{"p": 1e-12, "n": 1e-9, "µ": 1e-6, "μ": 1e-6, "u": 1e-6, "m": 1e-3, "k": 1e3, "M": 1e6, "G": 1e9}

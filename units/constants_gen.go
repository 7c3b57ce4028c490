// Code generated from internal/tables; DO NOT EDIT.

package units

import "math"

// The units that have a name of their own. In notebooks they are in scope under their
// symbols: mm, kΩ (or kohm), µF (or uF) and so on.
const (
	Metre                  Length                = 1
	Centimetre             Length                = 1e-2
	Millimetre             Length                = 1e-3
	Micrometre             Length                = 1e-6
	Kilometre              Length                = 1e3
	Inch                   Length                = 25.4e-3
	Mil                    Length                = 25.4e-6
	Foot                   Length                = 0.3048
	SquareMillimetre       Area                  = 1e-6
	CubicMillimetre        Volume                = 1e-9
	Millilitre             Volume                = 1e-6
	Kilogram               Mass                  = 1
	Gram                   Mass                  = 1e-3
	Milligram              Mass                  = 1e-6
	Second                 Time                  = 1
	Millisecond            Time                  = 1e-3
	Microsecond            Time                  = 1e-6
	Hertz                  Frequency             = 1
	Kilohertz              Frequency             = 1e3
	Megahertz              Frequency             = 1e6
	RadianPerSecond        AngularFrequency      = 1
	Radian                 Angle                 = 1
	Degree                 Angle                 = math.Pi / 180
	Newton                 Force                 = 1
	Millinewton            Force                 = 1e-3
	GramForce              Force                 = 9.80665e-3
	Pascal                 Pressure              = 1
	Megapascal             Pressure              = 1e6
	Gigapascal             Pressure              = 1e9
	Joule                  Energy                = 1
	KilojoulePerCubicMetre EnergyDensity         = 1e3
	Watt                   Power                 = 1
	Milliwatt              Power                 = 1e-3
	Volt                   Voltage               = 1
	Millivolt              Voltage               = 1e-3
	Microvolt              Voltage               = 1e-6
	Nanovolt               Voltage               = 1e-9
	Ampere                 Current               = 1
	Milliampere            Current               = 1e-3
	Microampere            Current               = 1e-6
	Coulomb                Charge                = 1
	Picocoulomb            Charge                = 1e-12
	Ohm                    Resistance            = 1
	Milliohm               Resistance            = 1e-3
	Kiloohm                Resistance            = 1e3
	Megaohm                Resistance            = 1e6
	Gigaohm                Resistance            = 1e9
	Siemens                Conductance           = 1
	Henry                  Inductance            = 1
	Millihenry             Inductance            = 1e-3
	Microhenry             Inductance            = 1e-6
	Nanohenry              Inductance            = 1e-9
	Farad                  Capacitance           = 1
	Millifarad             Capacitance           = 1e-3
	Microfarad             Capacitance           = 1e-6
	Nanofarad              Capacitance           = 1e-9
	Picofarad              Capacitance           = 1e-12
	Weber                  Flux                  = 1
	Tesla                  FluxDensity           = 1
	Millitesla             FluxDensity           = 1e-3
	Microtesla             FluxDensity           = 1e-6
	Gauss                  FluxDensity           = 1e-4
	Oersted                FieldStrength         = 1e3 / (4 * math.Pi)
	Decibel                Level                 = 1
	Kelvin                 TemperatureDifference = 1
)

var named = [...]Unit{
	{"Metre", "Length", float64(Metre), "metre meter", "m"},
	{"Centimetre", "Length", float64(Centimetre), "cm", ""},
	{"Millimetre", "Length", float64(Millimetre), "mm", ""},
	{"Micrometre", "Length", float64(Micrometre), "µm μm um", "micron"},
	{"Kilometre", "Length", float64(Kilometre), "km", ""},
	{"Inch", "Length", float64(Inch), "inch", "in \""},
	{"Mil", "Length", float64(Mil), "mil", "thou"},
	{"Foot", "Length", float64(Foot), "foot", "ft"},
	{"SquareMillimetre", "Area", float64(SquareMillimetre), "mm2", "mm²"},
	{"CubicMillimetre", "Volume", float64(CubicMillimetre), "mm3", "mm³"},
	{"Millilitre", "Volume", float64(Millilitre), "ml", "mL cm³"},
	{"Kilogram", "Mass", float64(Kilogram), "kg", ""},
	{"Gram", "Mass", float64(Gram), "gram", "g"},
	{"Milligram", "Mass", float64(Milligram), "mg", ""},
	{"Second", "Time", float64(Second), "sec", "s"},
	{"Millisecond", "Time", float64(Millisecond), "ms", ""},
	{"Microsecond", "Time", float64(Microsecond), "µs μs us", ""},
	{"Hertz", "Frequency", float64(Hertz), "Hz", ""},
	{"Kilohertz", "Frequency", float64(Kilohertz), "kHz", ""},
	{"Megahertz", "Frequency", float64(Megahertz), "MHz", ""},
	{"RadianPerSecond", "AngularFrequency", float64(RadianPerSecond), "radps", "rad/s"},
	{"Radian", "Angle", float64(Radian), "rad", ""},
	{"Degree", "Angle", float64(Degree), "deg", "°"},
	{"Newton", "Force", float64(Newton), "N", ""},
	{"Millinewton", "Force", float64(Millinewton), "mN", ""},
	{"GramForce", "Force", float64(GramForce), "gramforce", "gf"},
	{"Pascal", "Pressure", float64(Pascal), "Pa", ""},
	{"Megapascal", "Pressure", float64(Megapascal), "MPa", ""},
	{"Gigapascal", "Pressure", float64(Gigapascal), "GPa", ""},
	{"Joule", "Energy", float64(Joule), "joule", "J"},
	{"KilojoulePerCubicMetre", "EnergyDensity", float64(KilojoulePerCubicMetre), "kJm3", "kJ/m³"},
	{"Watt", "Power", float64(Watt), "watt", "W"},
	{"Milliwatt", "Power", float64(Milliwatt), "mW", ""},
	{"Volt", "Voltage", float64(Volt), "V", ""},
	{"Millivolt", "Voltage", float64(Millivolt), "mV", ""},
	{"Microvolt", "Voltage", float64(Microvolt), "µV μV uV", ""},
	{"Nanovolt", "Voltage", float64(Nanovolt), "nV", ""},
	{"Ampere", "Current", float64(Ampere), "A", ""},
	{"Milliampere", "Current", float64(Milliampere), "mA", ""},
	{"Microampere", "Current", float64(Microampere), "µA μA uA", ""},
	{"Coulomb", "Charge", float64(Coulomb), "coulomb", "C"},
	{"Picocoulomb", "Charge", float64(Picocoulomb), "pC", ""},
	{"Ohm", "Resistance", float64(Ohm), "Ω ohm Ω", "R"},
	{"Milliohm", "Resistance", float64(Milliohm), "mΩ mohm mΩ", ""},
	{"Kiloohm", "Resistance", float64(Kiloohm), "kΩ kohm kΩ", "k"},
	{"Megaohm", "Resistance", float64(Megaohm), "MΩ Mohm MΩ", "Meg M"},
	{"Gigaohm", "Resistance", float64(Gigaohm), "GΩ Gohm GΩ", ""},
	{"Siemens", "Conductance", float64(Siemens), "siemens", "S"},
	{"Henry", "Inductance", float64(Henry), "H", ""},
	{"Millihenry", "Inductance", float64(Millihenry), "mH", ""},
	{"Microhenry", "Inductance", float64(Microhenry), "µH μH uH", ""},
	{"Nanohenry", "Inductance", float64(Nanohenry), "nH", ""},
	{"Farad", "Capacitance", float64(Farad), "F", ""},
	{"Millifarad", "Capacitance", float64(Millifarad), "mF", ""},
	{"Microfarad", "Capacitance", float64(Microfarad), "µF μF uF", ""},
	{"Nanofarad", "Capacitance", float64(Nanofarad), "nF", ""},
	{"Picofarad", "Capacitance", float64(Picofarad), "pF", ""},
	{"Weber", "Flux", float64(Weber), "weber", "Wb"},
	{"Tesla", "FluxDensity", float64(Tesla), "T", ""},
	{"Millitesla", "FluxDensity", float64(Millitesla), "mT", ""},
	{"Microtesla", "FluxDensity", float64(Microtesla), "µT μT uT", ""},
	{"Gauss", "FluxDensity", float64(Gauss), "gauss", "Gs"},
	{"Oersted", "FieldStrength", float64(Oersted), "oersted", "Oe"},
	{"Decibel", "Level", float64(Decibel), "dB", ""},
	{"Kelvin", "TemperatureDifference", float64(Kelvin), "kelvin", "K"},
}

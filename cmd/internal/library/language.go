package library

import (
	"fmt"
	"slices"
	"strings"

	"lode/units"
)

// This file is the help for what notebooks have in scope without a package: functions,
// units, and the rules of the language.

// Language returns the help for the language itself: its rules first, then functions and
// units.
func Language() []Topic {
	list := slices.Concat(rules(), functions())
	list[0].Text += "\n\nWords with help of their own: " + namesOf(list[1:]) + ". Units have help too: " + best() + "."
	for _, u := range units.Units() {
		for _, symbol := range u.Symbols() {
			list = append(list, unitTopic(u, symbol))
		}
	}
	return list
}

func namesOf(topics []Topic) string {
	var names []string
	for _, t := range topics {
		names = append(names, t.Name)
	}
	return strings.Join(names, ", ")
}

// best lists every unit by its best spelling.
func best() string {
	var names []string
	for _, u := range units.Units() {
		names = append(names, u.Symbols()[0])
	}
	return strings.Join(names, ", ")
}

func unitTopic(u units.Unit, symbol string) Topic {
	kind, _ := units.KindNamed(u.Type)
	t := Topic{Name: symbol, Signature: symbol, Summary: fmt.Sprintf("%s is a unit of %s.", symbol, kind.Name), Example: "3*" + symbol}
	if u.Factor != 1 {
		t.Summary = fmt.Sprintf("%s is a unit of %s: %s %s.", symbol, kind.Name, units.Digits(u.Factor, 7), kind.Symbol)
	}
	var others []string
	for _, s := range u.Symbols() {
		if s != symbol {
			others = append(others, s)
		}
	}
	if len(others) > 0 {
		t.Text = "Also written " + strings.Join(others, " or ") + "."
	}
	return t
}

// rules are the topics on how notebooks are written.
func rules() []Topic {
	return []Topic{
		{Name: "language", Signature: "the language of notebooks", Summary: "Cells are written in Go, without a package clause and without imports.",
			Text: "A line that is only an expression is a result and is shown. A name is defined once, by name := value, and keeps its kind of quantity. " +
				"The packages of the library are in scope, and fmt, math, cmplx, strings, strconv, sort and errors.\n\n" +
				"A quantity is a number times a unit: 5*mm, 2.2*kΩ. Products and quotients find their own unit; sums and comparisons need the same " +
				"kind on both sides, which is checked before anything runs. A quotient of two of a kind is a plain number: (5*mm)/inch.\n\n" +
				"A call that may fail is used as if it could not: if it fails, the notebook stops there and says why. " +
				"To decide by yourself, take the error too: c, err := coil.Wind(...).\n\n" +
				"A frequency times 2*π is an angular frequency, and one is never taken for the other.\n\n" +
				"Cells that begin with ```go working show the formula, the numbers put in and the result of each line.",
			Example: "turn := 2 * (60*mm + 6*mm)\nresistance := 5000 * turn * wire.AWG(42).ResistancePerLength()\nresistance"},
		{Name: "degC", Signature: "number*degC", Summary: "degC makes a temperature of a number, as a thermometer in degrees Celsius shows it.",
			Text: "A temperature is a point on a scale: the difference of two is counted in kelvin, and a sum of two means nothing.", Example: "shop := 28*degC\nshop + 5*kelvin\nshop - 20*degC"},
		{Name: "percent", Signature: "number*percent", Summary: "percent is a hundredth.", Example: "6*kΩ * (1 + 5*percent)"},
		{Name: "dB", Signature: "number*dB", Summary: "dB counts level differences; Ratio turns one into a ratio of amplitudes, and units.LevelOf does the reverse.", Example: "loss := -6*dB\nloss.Ratio()\nunits.LevelOf(0.5)"},
		{Name: "dBV", Signature: "number*dBV", Summary: "dBV makes a voltage level of a number: decibels over one volt (RMS).", Text: voltageLevels, Example: "desk := -10*dBV\ndesk.Voltage()\ndesk + 6*dB"},
		{Name: "dBu", Signature: "number*dBu", Summary: "dBu makes a voltage level of a number: decibels over 0.7746 volt (RMS).", Text: voltageLevels, Example: "line := 4*dBu\nline.Voltage()\nline - units.VoltageLevelOf(120*mV)"},
		{Name: "π", Signature: "π", Summary: "π is the ratio of a circle's circumference to its diameter; 2*π*f is the angular frequency of f.", Text: "Also written math.Pi.", Example: "2*π*100*Hz"},
		{Name: "func", Signature: "func name(parameter kind, ...) kind { ... }", Summary: "func defines a function; its parameters and its result have kinds such as units.Length, or float64 for plain numbers.",
			Text: "lode about units lists the kinds.", Example: "func parallel(a, b units.Resistance) units.Resistance { return a * b / (a + b) }\n\nparallel(500*kΩ, 1*MΩ)"},
		{Name: "for", Signature: "for name := range list { ... }", Summary: "for goes through a list, a number of turns, or on as long as a condition holds.",
			Text: "Maps are gone through in the order of their keys, so that two runs show the same.", Example: "total := 0*metre\nfor layer := range 20 {\n\ttotal += 2 * π * (5*mm + float64(layer)*0.07*mm)\n}\ntotal"},
		{Name: "if", Signature: "if condition { ... } else { ... }", Summary: "if does one thing or another.", Example: "build := 3.1*mm\nif build > 3*mm {\n\tfmt.Println(\"too deep by\", build-3*mm)\n}"},
	}
}

const voltageLevels = "A voltage level is a point on a scale with a stated reference: the difference of two is in dB, dB moves one, and a sum of two means nothing. units.VoltageLevelOf makes one of a voltage."

// functions are the topics on functions without a package.
func functions() []Topic {
	plain := func(name, what, example string) Topic {
		return Topic{Name: name, Signature: name + "(x float64) float64", Summary: name + " returns " + what + " of a plain number.", Example: example}
	}
	return []Topic{
		{Name: "knob", Signature: `knob(name string, value, low, high)`, Summary: "knob is a number or a quantity that turns between two bounds: a slider on the page, an option -knob of lode run.",
			Text: "It stands at the top level of a cell as a definition of its own. Whole numbers turn in whole steps.", Example: "turns := knob(\"turns\", 5000, 3000, 7000)\ntop := knob(\"cable\", 3*metre, 1*metre, 10*metre)"},
		{Name: "counted", Signature: "counted(quantity, unit)", Summary: "counted shows a quantity in a unit of your choice.", Text: "What it gives is for showing; calculate with the quantity.", Example: "counted(6123*ohm, ohm)\ncounted(25.4*mm, inch)"},
		{Name: "sqrt", Signature: "sqrt(x)", Summary: "sqrt returns the square root of a number or a quantity, and halves its dimension.", Example: "sqrt(9*mm*mm)\n1 / (2*π*sqrt(2.5*H*120*pF))"},
		{Name: "cbrt", Signature: "cbrt(x)", Summary: "cbrt returns the cube root of a number or a quantity.", Example: "cbrt(27*mm*mm*mm)"},
		{Name: "pow", Signature: "pow(x, exponent)", Summary: "pow raises a number or a quantity to a power; that of a quantity is a constant, in halves or thirds where the dimension allows.", Example: "pow(3*mm, 2)\npow(2, 0.5)"},
		{Name: "abs", Signature: "abs(x)", Summary: "abs returns the magnitude of a number, a quantity or an impedance.", Example: "abs(-3*mm)\nabs(complex(3*kΩ, 4*kΩ))"},
		{Name: "hypot", Signature: "hypot(a, b)", Summary: "hypot returns the square root of a² + b² of two of the same kind.", Example: "hypot(6*kΩ, 2*π*1*kHz*2.5*H)"},
		{Name: "min", Signature: "min(a, b, ...)", Summary: "min returns the least of several of the same kind.", Example: "min(3*mm, 0.1*inch)"},
		{Name: "max", Signature: "max(a, b, ...)", Summary: "max returns the greatest of several of the same kind.", Example: "max(3*mm, 0.1*inch)"},
		{Name: "atan2", Signature: "atan2(y, x)", Summary: "atan2 returns the angle of a point from two of the same kind, in radians as a plain number.", Example: "atan2(3*mm, 4*mm)*rad"},
		{Name: "complex", Signature: "complex(re, im)", Summary: "complex makes an impedance of a resistance and a reactance, or a complex number of two plain ones.", Example: "z := complex(6*kΩ, 2*π*1*kHz*2.5*H)\nz\nabs(z)"},
		{Name: "len", Signature: "len(list)", Summary: "len returns how many values a list holds.", Example: "gauges := []float64{42, 43, 44}\nlen(gauges)"},
		{Name: "append", Signature: "append(list, value, ...)", Summary: "append returns a list with more values behind it.", Example: "heights := []units.Length{8*mm}\nheights = append(heights, 11*mm)\nheights"},
		{Name: "round", Signature: "round(x float64) float64", Summary: "round returns the nearest whole number; of a quantity, round the count of a unit.", Example: "round(12.7)\nround((12.7*mm)/mm) * mm"},
		plain("floor", "the next whole number below", "floor(2.7)"), plain("ceil", "the next whole number above", "ceil(2.1)"),
		plain("exp", "e to the power", "exp(1)"), plain("log", "the natural logarithm", "log(10)"),
		plain("log10", "the logarithm to the base ten", "log10(1000)"), plain("log2", "the logarithm to the base two", "log2(8)"),
		{Name: "sin", Signature: "sin(x)", Summary: "sin returns the sine of an angle.", Example: "sin(30*deg)"},
		{Name: "cos", Signature: "cos(x)", Summary: "cos returns the cosine of an angle.", Example: "cos(60*deg)"},
		{Name: "tan", Signature: "tan(x)", Summary: "tan returns the tangent of an angle.", Example: "tan(45*deg)"},
		plain("asin", "the angle, in radians, that has the sine", "asin(0.5)*rad"), plain("acos", "the angle, in radians, that has the cosine", "acos(0.5)*rad"),
		plain("atan", "the angle, in radians, that has the tangent", "atan(1)*rad"), plain("tanh", "the hyperbolic tangent", "tanh(0.5)"),
	}
}

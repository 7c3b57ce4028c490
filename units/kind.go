// Package units holds physical quantities as named float types with SI values inside,
// the units people write them in, and how they are printed and read.
//
// A quantity of a kind of its own (Resistance, Length ...) is a plain float64 at run time.
// A product or quotient that has no kind of its own is a Product, which carries its
// Dimension.
package units

//go:generate go run ./internal/generate

import (
	"math"
	"strconv"
)

// Kind describes one named type of quantity.
type Kind struct {
	Type    string // name of the Go type in this package, empty for a product without a name
	Name    string // name in a sentence
	Dim     Dimension
	Symbol  string // the coherent SI unit
	Form    string // "", "point", "angle", "angular", "root" or "log"
	scale   string
	leading bool
}

// Quantity is a value that knows its kind. Every named type of this package is one.
type Quantity interface {
	SI() float64
	Kind() Kind
	String() string
}

// Kinds returns all kinds. Where two share a dimension the first names products.
func Kinds() []Kind { return append([]Kind(nil), kinds[:]...) }

// KindOf returns the kind that products of dimension d are given: the first one in the
// table that is neither a point on a scale nor a level.
func KindOf(d Dimension) (Kind, bool) {
	for _, k := range kinds {
		if k.Dim == d && k.Form != "point" && k.Form != "log" {
			return k, true
		}
	}
	return Kind{}, false
}

// KindNamed returns the kind whose Go type has the given name.
func KindNamed(typeName string) (Kind, bool) {
	for _, k := range kinds {
		if k.Type == typeName {
			return k, true
		}
	}
	return Kind{}, false
}

// Number is the kind of a plain number.
func Number() Kind { return Kind{Name: "number", scale: "one"} }

// KindFor returns the kind of d, or a nameless kind that prints with d's unit.
func KindFor(d Dimension) Kind {
	if k, ok := KindOf(d); ok {
		return k
	}
	if d.Plain() {
		return Number()
	}
	return Kind{Name: d.UnitText(), Dim: d, Symbol: d.UnitText(), scale: "one"}
}

// Product is a quantity without a kind of its own, such as an area times a resistance.
type Product struct {
	Value float64
	Dim   Dimension
}

// Make returns a Product; the exponents are halves in the order of the base dimensions.
func Make(value float64, halves ...int) Product {
	p := Product{Value: value}
	for i, h := range halves {
		p.Dim[i] = int8(h)
	}
	return p
}

// SI returns the value in coherent SI units.
func (p Product) SI() float64 { return p.Value }

// Kind returns the kind that prints p.
func (p Product) Kind() Kind { return KindFor(p.Dim) }

// String writes p in coherent SI units.
func (p Product) String() string { return Text(p.Value, p.Kind()) }

// zeroCelsius is 0 °C in kelvin, by definition of the Celsius scale (SI brochure, 9th ed., 2.3.1).
const zeroCelsius = 273.15

// Celsius returns the temperature that a thermometer in degrees Celsius shows.
func Celsius(degrees float64) Temperature { return Temperature(degrees + zeroCelsius) }

// Degrees returns t in degrees Celsius.
func (x Temperature) Degrees() float64 { return float64(x) - zeroCelsius }

// Since returns how much warmer x is than reference.
func (x Temperature) Since(reference Temperature) TemperatureDifference {
	return TemperatureDifference(x - reference)
}

// LevelOf returns the level of an amplitude ratio: 20·log10(|ratio|).
func LevelOf(ratio float64) Level { return Level(20 * math.Log10(math.Abs(ratio))) }

// Ratio returns the amplitude ratio of a level difference.
func (x Level) Ratio() float64 { return math.Pow(10, float64(x)/20) }

// zeroDBu is 0 dBu in dBV: 20·log10 √(1 mW · 600 Ω / V²), the voltage that puts one milliwatt
// into 600 Ω (ITU-R Recommendation V.574, from memory).
const zeroDBu = -2.218487496163564

// DBV returns the voltage that lies x decibels over one volt (RMS).
func DBV(x float64) VoltageLevel { return VoltageLevel(x) }

// DBu returns the voltage that lies x decibels over 0.7746 volt (RMS).
func DBu(x float64) VoltageLevel { return VoltageLevel(x + zeroDBu) }

// VoltageLevelOf returns the level of a voltage (RMS) over one volt.
func VoltageLevelOf(v Voltage) VoltageLevel { return VoltageLevel(LevelOf(float64(v))) }

// Voltage returns the voltage (RMS) that has the level x.
func (x VoltageLevel) Voltage() Voltage { return Voltage(Level(x).Ratio()) }

// OverDBu returns x as it is counted in dBu, over 0.7746 volt.
func (x VoltageLevel) OverDBu() Level { return Level(float64(x) - zeroDBu) }

// Angular returns 2π times the frequency.
func (x Frequency) Angular() AngularFrequency { return AngularFrequency(2 * math.Pi * float64(x)) }

// Frequency returns x divided by 2π.
func (x AngularFrequency) Frequency() Frequency { return Frequency(float64(x) / (2 * math.Pi)) }

func itoa(i int) string { return strconv.Itoa(i) }

// KindWritten returns the kind of a Go type of this package, or, for an empty name, that of
// a product with the given exponents in halves.
func KindWritten(typeName string, halves ...int) Kind {
	if k, ok := KindNamed(typeName); ok {
		return k
	}
	return Make(0, halves...).Kind()
}

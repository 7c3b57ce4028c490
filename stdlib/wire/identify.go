package wire

import (
	"fmt"
	"math"
	"sort"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
)

// FromBare returns the gauges that a measured bare diameter may come from.
//
// Source: the tables behind AWG, SWG and Metric with their limits.
//
// Valid: diameters within the tables, 9.5 µm to 7.7 mm.
//
// Accuracy: the measurement is taken to be within 1 µm; Identify takes another error. The build cannot be told.
//
// Caution: enamel burnt or soldered off gives harmful fumes, isocyanates from polyurethane among them. Work under
// extraction, and follow the data sheet of the wire and your local rules.
//
// Example: wire.FromBare(0.063 * mm)
func FromBare(diameter units.Length) (Matches, error) {
	return Identify(Measurement{Bare: diameter}.needs("Bare diameter", float64(diameter)))
}

// FromOverall returns the gauges and builds that a measured diameter over the enamel may come
// from.
//
// Source: the tables behind AWG, SWG and Metric with their limits.
//
// Valid: diameters within the tables, 12 µm to 7.7 mm.
//
// Accuracy: the measurement is taken to be within 1 µm; Identify takes another error. Neighbouring gauges overlap
// with one another: add the resistance of a known length to tell them apart.
//
// Example: wire.FromOverall(0.071 * mm)
func FromOverall(diameter units.Length) (Matches, error) {
	return Identify(Measurement{Overall: diameter}.needs("Overall diameter", float64(diameter)))
}

// FromResistance returns the gauges that a measured resistance of a known length of copper
// wire at 20 °C may come from.
//
// Source: IEC 60028 (1925) for the resistivity, the tables behind AWG, SWG and Metric for the limits.
//
// Valid: copper at 20 °C of a resistance per length within the tables, 0.37 mΩ/m to 240 Ω/m; pieces of 1 mm to 1000 km.
//
// Accuracy: the resistance per length is taken to be within 1 %; Identify takes another error, temperature and
// metal. Unwound wire may have been stretched, which raises its resistance by twice the elongation.
//
// Example: wire.FromResistance(170*ohm, 30*metre)
func FromResistance(resistance units.Resistance, length units.Length) (Matches, error) {
	return Identify(Measurement{Resistance: resistance, Length: length}.needs("Resistance", float64(resistance)))
}

// needs keeps a figure of zero, which a Measurement leaves out, from being taken as left out.
func (m Measurement) needs(name string, figure float64) Measurement {
	if figure == 0 {
		m.missing = name
	}
	return m
}

// How many candidates are listed, and how far a candidate may be off to be listed at all once
// the least number is reached.
const (
	fewest   = 3
	most     = 8
	farthest = 2
)

// searchedBuilds are the thin and the thick one.
const searchedBuilds = 2

// rounding is a share of what is allowed that comes from nothing but rounding.
const rounding = 1e-9

// Identify returns the gauges and builds that fit everything that was measured of a wire.
//
// Source: the tables behind AWG, SWG and Metric with their limits; IEC 60028 (1925) for copper.
//
// Valid: figures within the tables searched, widened by the error of the measurement; outside them there is no gauge,
// and that is an error.
//
// Builds beyond the thick one, such as grade 3, are not looked for: common practice, no source.
//
// Accuracy: a candidate fits when every figure lies within the limits of its gauge, widened by the error of the
// measurement. At least three candidates are listed, fitting or not.
//
// Example: wire.Identify(wire.Measurement{Overall: 0.071 * mm, Resistance: 170 * ohm, Length: 30 * metre})
func Identify(measured Measurement) (Matches, error) {
	m, metal, err := measured.complete()
	if err != nil {
		return Matches{}, err
	}
	if err := m.reached(metal); err != nil {
		return Matches{}, err
	}
	result := Matches{what: m.words()}
	for _, gauge := range m.gauges() {
		for _, row := range gauge.Sizes {
			result.List = append(result.List, m.compareBuilds(gauge, row, metal)...)
		}
	}
	sort.SliceStable(result.List, func(i, j int) bool { return result.List[i].Distance < result.List[j].Distance })
	keep := min(fewest, len(result.List))
	for keep < min(most, len(result.List)) && result.List[keep].Distance <= farthest {
		keep++
	}
	result.List = result.List[:keep]
	return result, nil
}

// words says what was measured.
func (m Measurement) words() []string {
	var words []string
	if m.Bare != 0 {
		words = append(words, "bare "+m.Bare.String())
	}
	if m.Overall != 0 {
		words = append(words, "overall "+m.Overall.String())
	}
	if m.Resistance != 0 {
		words = append(words, fmt.Sprintf("%v in %v (%v)", m.Resistance, m.Length, units.ResistancePerLength(float64(m.Resistance)/float64(m.Length))))
	}
	return words
}

// compareBuilds compares the measurement with every build of a size, or with the thin one where
// nothing measured depends on the build.
func (m Measurement) compareBuilds(gauge tables.Gauge, row tables.Size, metal Material) []Match {
	var matches []Match
	for build := range min(searchedBuilds, len(gauge.Builds)) {
		w := fromRow(gauge, row, build)
		if build > 0 && (m.Overall == 0 || w.coat == "bare") {
			break
		}
		w.material = metal
		matches = append(matches, m.compare(w))
	}
	return matches
}

func (m Measurement) compare(w Wire) Match {
	match := Match{Wire: w, named: w.Name()}
	if m.Overall == 0 {
		match.named = w.label
	}
	if m.Bare != 0 {
		off := m.Bare.SI() - w.bare.Nominal
		match.BareOff = off / w.bare.Nominal
		match.measure(off, w.bare.Nominal-w.bare.Min, w.bare.Max-w.bare.Nominal, m.DiameterError.SI())
	}
	if m.Overall != 0 {
		off := m.Overall.SI() - w.overall.Nominal
		match.OverallOff = off / w.overall.Nominal
		match.measure(off, w.overall.Nominal-w.overall.Min, w.overall.Max-w.overall.Nominal, m.DiameterError.SI())
	}
	if m.Resistance != 0 {
		r, limits := m.perLength(w.material), w.ResistanceLimits()
		nominal := limits.Nominal.SI()
		match.ResistanceOff = r/nominal - 1
		match.measure(r-nominal, nominal-limits.Min.SI(), limits.Max.SI()-nominal, nominal*m.ResistanceError)
	}
	return match
}

// measure widens the distance of the match to a deviation as a share of what is allowed below
// or above the nominal figure plus the error of the measurement.
func (m *Match) measure(off, below, above, uncertainty float64) {
	allowed := above
	if off < 0 {
		allowed = below
	}
	share := math.Abs(off) / (allowed + uncertainty)
	if !math.IsNaN(share) && share > rounding {
		m.Distance = max(m.Distance, share)
	}
}

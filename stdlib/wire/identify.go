package wire

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"lode/stdlib/wire/internal/tables"
	"lode/units"
	"lode/units/frame"
)

// Match is one gauge that a measurement may come from.
type Match struct {
	// Wire is the candidate, with its nominal figures.
	Wire Wire
	// BareOff is how far the bare diameter measured is from nominal, as a ratio; zero if not measured.
	BareOff float64
	// OverallOff is the same for the diameter over the enamel.
	OverallOff float64
	// ResistanceOff is the same for the resistance per length.
	ResistanceOff float64
	// Distance is the largest of the deviations, each as a share of what the limits of the
	// gauge and the error of the measurement allow: up to 1 fits, beyond does not.
	Distance float64
	named    string
}

// Fits reports whether every figure measured lies within what the gauge allows.
func (m Match) Fits() bool { return m.Distance <= 1 }

// String names the candidate and says how well it fits.
func (m Match) String() string {
	if m.Fits() {
		return fmt.Sprintf("%s (fits, %s of what its limits allow)", m.named, percent(m.Distance))
	}
	return fmt.Sprintf("%s (does not fit, off by %s times what its limits allow)", m.named, units.Digits(m.Distance, 2))
}

func percent(ratio float64) string { return units.Digits(100*ratio, 2) + " %" }

// Matches lists the gauges that a measurement may come from, the best first.
type Matches struct {
	// List holds the candidates, the best first.
	List []Match
	what []string // the figures measured
}

// Best returns the wire that fits best. From a bare diameter or a resistance alone the build of
// the enamel cannot be told, and the thin one is assumed.
func (m Matches) Best() Wire {
	if len(m.List) == 0 {
		return Wire{}
	}
	return m.List[0].Wire
}

// String names the best candidate and the others that fit.
func (m Matches) String() string {
	if len(m.List) == 0 {
		return "no candidates"
	}
	if !m.List[0].Fits() {
		return "no gauge fits " + strings.Join(m.what, ", ") + "; the nearest is " + m.List[0].String()
	}
	var also []string
	for _, other := range m.List[1:] {
		if other.Fits() {
			also = append(also, other.named)
		}
	}
	text := m.List[0].String()
	if len(also) > 0 {
		text += "; also possible: " + strings.Join(also, "; ")
	}
	return text
}

// Frame lays the candidates out as a table, a row each.
func (m Matches) Frame() frame.Frame {
	n := len(m.List)
	names, fits := make([]string, n), make([]string, n)
	bare, overall, resistance, distance := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i, match := range m.List {
		names[i], fits[i] = match.named, "no"
		if match.Fits() {
			fits[i] = "yes"
		}
		bare[i], overall[i] = float64(match.Wire.Bare()), float64(match.Wire.Overall())
		resistance[i], distance[i] = float64(match.Wire.ResistancePerLength()), match.Distance
	}
	return frame.Frame{Title: "Gauges near " + strings.Join(m.what, ", "), Columns: []frame.Column{
		{Name: "Wire", Texts: names},
		{Name: "Fits", Texts: fits},
		frame.Of("Share of what is allowed", units.Number(), distance),
		frame.Of("Bare", units.Length(0).Kind(), bare),
		frame.Of("Overall", units.Length(0).Kind(), overall),
		frame.Of("Resistance at 20 °C", units.ResistancePerLength(0).Kind(), resistance),
	}}
}

// FromBare returns the gauges that a measured bare diameter may come from.
//
// Source: the tables behind AWG, SWG and Metric with their limits.
//
// Accuracy: the measurement is taken to be within 1 µm; Identify takes another error. The build cannot be told.
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

// Identify returns the gauges and builds that fit everything that was measured of a wire.
//
// Source: the tables behind AWG, SWG and Metric with their limits; IEC 60028 (1925) for copper.
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
	result := Matches{what: m.words()}
	for _, gauge := range tables.Gauges() {
		if m.System != "" && !strings.EqualFold(m.System, gauge.System) {
			continue
		}
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
		words = append(words, fmt.Sprintf("%v in %v", m.Resistance, m.Length))
	}
	return words
}

// compareBuilds compares the measurement with every build of a size, or with the thin one where
// nothing measured depends on the build.
func (m Measurement) compareBuilds(gauge tables.Gauge, row tables.Size, metal Material) []Match {
	var matches []Match
	for build := 0; build < max(1, len(gauge.Builds)); build++ {
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
	if share := math.Abs(off) / (allowed + uncertainty); !math.IsNaN(share) {
		m.Distance = max(m.Distance, share)
	}
}

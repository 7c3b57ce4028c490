package wire

import (
	"fmt"
	"strings"

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

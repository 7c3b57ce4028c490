// Package ladder describes a circuit as it is drawn: steps from left to right, each in the signal's
// way, from the signal to ground, or with an input and an output. It is the one shape of data that
// whatever makes circuits hands to whatever draws them.
package ladder

// Symbol says how a part is drawn.
type Symbol string

// The symbols of parts with two ends.
const (
	Resistor      Symbol = "resistor"
	Variable      Symbol = "variable resistor"
	Capacitor     Symbol = "capacitor"
	Inductor      Symbol = "inductor"
	VoltageSource Symbol = "voltage source"
	CurrentSource Symbol = "current source"
	Impedance     Symbol = "impedance"
	Closed        Symbol = "closed switch"
	Open          Symbol = "open switch"
)

// Branch is a piece of a circuit with two ends: one part, or several in series or in parallel.
// Exactly one of Symbol, Series and Parallel is used; a branch without any is a wire.
type Branch struct {
	Symbol      Symbol
	Name, Value string
	Series      []Branch // the first at the left or at the top
	Parallel    []Branch
}

// Part returns a branch of one part.
func Part(symbol Symbol, name, value string) Branch {
	return Branch{Symbol: symbol, Name: name, Value: value}
}

// Series returns branches one after the other.
func Series(branches ...Branch) Branch {
	if len(branches) == 1 {
		return branches[0]
	}
	return Branch{Series: branches}
}

// Parallel returns branches side by side.
func Parallel(branches ...Branch) Branch {
	if len(branches) == 1 {
		return branches[0]
	}
	return Branch{Parallel: branches}
}

// Parts returns the parts of b in the order of drawing.
func (b Branch) Parts() []Branch {
	if b.Symbol != "" {
		return []Branch{b}
	}
	var parts []Branch
	for _, inner := range append(b.Series[:len(b.Series):len(b.Series)], b.Parallel...) {
		parts = append(parts, inner.Parts()...)
	}
	return parts
}

// Way says how a step lies in the circuit.
type Way string

// The ways of steps.
const (
	Along       Way = "in series"                   // its branch from the input to the output
	Down        Way = "to ground"                   // its branch from the signal to ground
	Divider     Way = "divider"                     // a potentiometer: input on its upper end, output on its wiper
	Backwards   Way = "divider, input on the wiper" // a potentiometer the other way round
	Transformer Way = "transformer"
	Amplifier   Way = "amplifier"
	Terminal    Way = "terminal" // an end of the circuit
)

// Step is one column of the drawing. Name and Value are those of a potentiometer, transformer, amplifier
// or terminal. Branch of a potentiometer is what goes from its upper end to its wiper, that of an amplifier its feedback.
type Step struct {
	Way         Way
	Branch      Branch
	Name, Value string
}

// Ladder is a drawn circuit.
type Ladder struct {
	Title string
	Steps []Step
	Notes []string // what symbols do not say, such as which coils are coupled
}

// Source is anything that can be drawn as a Ladder.
type Source interface{ Ladder() (Ladder, error) }

// Ladder makes a Ladder a Source.
func (l Ladder) Ladder() (Ladder, error) { return l, nil }

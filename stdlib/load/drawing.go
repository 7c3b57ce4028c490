package load

import (
	"fmt"
	"slices"

	"lode/units"
	"lode/units/ladder"
)

// This file tells how chains, coils and selectors are drawn.

// Ladder returns the chain as it is drawn.
//
// Example: schematic.Of(load.From(c).Volume(500*kΩ).Cable(5*metre).Input(1*MΩ))
func (l Line) Ladder() (ladder.Ladder, error) {
	if l.err != nil {
		return ladder.Ladder{}, l.err
	}
	if _, err := l.network.Netlist(); err != nil {
		return ladder.Ladder{}, err
	}
	steps := append(l.steps[:len(l.steps):len(l.steps)], ladder.Step{Way: ladder.Terminal, Name: "out"})
	return ladder.Ladder{Title: l.label, Steps: steps, Notes: l.notes}, nil
}

// draw appends steps to the drawing.
func (l Line) draw(steps ...ladder.Step) Line {
	if l.err == nil {
		l.steps = append(l.steps[:len(l.steps):len(l.steps)], steps...)
	}
	return l
}

// down is a part from the signal to ground.
func down(symbol ladder.Symbol, name string, value fmt.Stringer) ladder.Step {
	return ladder.Step{Way: ladder.Down, Branch: ladder.Part(symbol, name, value.String())}
}

// along is a part in the signal's way.
func along(symbol ladder.Symbol, name string, value fmt.Stringer) ladder.Step {
	return ladder.Step{Way: ladder.Along, Branch: ladder.Part(symbol, name, value.String())}
}

// drawn returns the steps of something that may know how it is drawn.
func drawn(thing any, otherwise ladder.Step) []ladder.Step {
	if source, ok := thing.(ladder.Source); ok {
		if l, err := source.Ladder(); err == nil {
			return inside(l.Steps)
		}
	}
	return []ladder.Step{otherwise}
}

// inside returns steps without the terminals at their ends.
func inside(steps []ladder.Step) []ladder.Step {
	var kept []ladder.Step
	for _, s := range steps {
		if s.Way != ladder.Terminal {
			kept = append(kept, s)
		}
	}
	return kept
}

func (v VolumeWiring) step(name string) ladder.Step {
	s := ladder.Step{Way: ladder.Divider, Name: name, Value: v.Pot.String()}
	if v.Independent {
		s.Way = ladder.Backwards
	}
	if v.Bypass == 0 {
		return s
	}
	bypass := ladder.Part(ladder.Capacitor, "", v.Bypass.String())
	if v.BypassParallel > 0 {
		bypass = ladder.Parallel(bypass, ladder.Part(ladder.Resistor, "", v.BypassParallel.String()))
	}
	if v.BypassSeries > 0 {
		bypass = ladder.Series(ladder.Part(ladder.Resistor, "", v.BypassSeries.String()), bypass)
	}
	s.Branch = bypass
	return s
}

func (t ToneWiring) step(name string) ladder.Step {
	parts := []ladder.Branch{ladder.Part(ladder.Variable, name, t.Pot.String()), ladder.Part(ladder.Capacitor, "", t.Capacitance.String())}
	if t.Choke > 0 {
		parts = append(parts, ladder.Part(ladder.Inductor, "", t.Choke.String()))
	}
	if t.ChokeResistance > 0 && t.Choke > 0 {
		parts = append(parts, ladder.Part(ladder.Resistor, "", t.ChokeResistance.String()))
	}
	return ladder.Step{Way: ladder.Down, Branch: ladder.Series(parts...)}
}

// branch draws coils wired together; alone says that there is but one, drawn with all it is made of.
func (c Coils) branch(alone bool, count *int) ladder.Branch {
	b := ladder.Branch{}
	switch {
	case c.how == "one" && c.source != nil:
		*count++
		b = c.single(alone, *count)
	case c.how != "one":
		inner := make([]ladder.Branch, len(c.members))
		for i, m := range c.members {
			inner[i] = m.branch(alone, count)
		}
		b = together(c.how, inner)
	}
	if c.shorted {
		b = ladder.Parallel(b, ladder.Part(ladder.Closed, "", "shorted"))
	}
	return b
}

func together(how string, inner []ladder.Branch) ladder.Branch {
	switch {
	case len(inner) == 0:
		return ladder.Branch{}
	case how == "parallel":
		return ladder.Parallel(inner...)
	}
	return ladder.Series(inner...)
}

func (c Coils) single(alone bool, number int) ladder.Branch {
	name := c.name
	if name == "" {
		name = "coil"
		if number > 1 {
			name = fmt.Sprintf("coil %d", number)
		}
	}
	if c.reversed {
		name += ", reversed"
	}
	if c.tap != 1 {
		name += fmt.Sprintf(", tap at %s %%", units.Digits(100*c.tap, 3))
	}
	r, l, own := c.source.Resistance(), c.source.Inductance(), c.source.Capacitance()
	if !alone || c.tap != 1 {
		return ladder.Part(ladder.Inductor, name, values(r, l, own))
	}
	return equivalent(name, r, l, own, c.further != nil)
}

func values(r units.Resistance, l units.Inductance, own units.Capacitance) string {
	if own == 0 {
		return fmt.Sprintf("%v, %v", r, l)
	}
	return fmt.Sprintf("%v, %v, %v", r, l, own)
}

// equivalent is a coil as its EMF, resistance, inductance and capacitance.
func equivalent(name string, r units.Resistance, l units.Inductance, own units.Capacitance, lossy bool) ladder.Branch {
	parts := []ladder.Branch{ladder.Part(ladder.Resistor, "", r.String()), ladder.Part(ladder.Inductor, "", l.String())}
	if lossy {
		parts = append(parts, ladder.Part(ladder.Impedance, "", "loss"))
	}
	b := ladder.Series(append(parts, ladder.Part(ladder.VoltageSource, name, "EMF"))...)
	if own > 0 {
		b = ladder.Parallel(b, ladder.Part(ladder.Capacitor, "", own.String()))
	}
	return b
}

// count returns how many coils there are.
func (c Coils) count() int {
	if c.how == "one" {
		return 1
	}
	total := 0
	for _, m := range c.members {
		total += m.count()
	}
	return total
}

// notes tells what couples to what, and what lies near.
func (c Coils) notes() []string {
	var notes []string
	for _, m := range c.mutuals {
		notes = append(notes, fmt.Sprintf("The coils %q and %q are coupled, k = %s.", m.first, m.second, units.Digits(m.k, 3)))
	}
	for _, m := range c.metal {
		notes = append(notes, fmt.Sprintf("Metal near a coil: k = %s, corner %v.", units.Digits(m.k, 3), m.corner))
	}
	for _, m := range c.members {
		notes = append(notes, m.notes()...)
	}
	if c.count() > 1 && len(c.members) > 0 && c.top() {
		notes = append(notes, "Each coil is an EMF in series with its resistance and inductance, its capacitance across.")
	}
	return notes
}

// top reports whether c itself joins single coils.
func (c Coils) top() bool {
	for _, m := range c.members {
		if m.how != "one" {
			return false
		}
	}
	return true
}

// Ladder returns the coils as they are drawn.
func (c Coils) Ladder() (ladder.Ladder, error) { return FromCoils(c).Ladder() }

// Selector is a switch with the coils that each of its positions connects.
//
//	positions := load.Selector{{"neck", neck}, {"both", load.Parallel(neck, bridge)}, {"bridge", bridge}}
//	load.Responses(positions, chain, 20*Hz, 20*kHz)
//	schematic.Of(positions)
type Selector []Position

// Ladder returns the selector as it is drawn: a contact for each position, the first one closed. A coil
// that several positions use is drawn in each.
func (s Selector) Ladder() (ladder.Ladder, error) {
	l := ladder.Ladder{Title: "Selector", Notes: []string{"One contact is closed at a time; a coil that several positions use is drawn in each."}}
	for i, p := range s {
		one, err := p.Coils.Ladder()
		if err != nil {
			return ladder.Ladder{}, fmt.Errorf("position %q: %w", p.Name, err)
		}
		contact := ladder.Open
		if i == 0 {
			contact = ladder.Closed
		}
		count := 0
		coils := p.Coils.branch(false, &count)
		l.Steps = append(l.Steps, ladder.Step{Way: ladder.Down, Branch: ladder.Series(ladder.Part(contact, p.Name, ""), coils)})
		for _, note := range one.Notes {
			if !slices.Contains(l.Notes, note) {
				l.Notes = append(l.Notes, note)
			}
		}
	}
	l.Steps = append(l.Steps, ladder.Step{Way: ladder.Terminal, Name: "out"})
	return l, nil
}

var (
	_ ladder.Source = Line{}
	_ ladder.Source = Coils{}
	_ ladder.Source = Selector{}
)

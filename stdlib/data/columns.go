package data

import (
	"fmt"
	"math"
	"strings"

	"lode/units"
	"lode/units/frame"
)

// This file gives the columns of a sheet as lists to compute with.

// Texts returns a column of texts, or the cells of any other as they are shown.
func (s Sheet) Texts(name string) ([]string, error) {
	c, err := s.column(name)
	if err != nil || c.Texts != nil {
		return c.Texts, err
	}
	texts := make([]string, len(c.Values))
	for i, v := range c.Values {
		if !math.IsNaN(v) {
			texts[i] = units.Text(v, c.Kind)
		}
	}
	return texts, nil
}

// Numbers returns a column of numbers without a unit.
func (s Sheet) Numbers(name string) ([]float64, error) { return s.values(name, units.Number()) }

// Frequencies returns a column of frequencies.
func (s Sheet) Frequencies(name string) ([]units.Frequency, error) {
	return typed[units.Frequency](s, name)
}

// Levels returns a column of levels in dB.
func (s Sheet) Levels(name string) ([]units.Level, error) { return typed[units.Level](s, name) }

// VoltageLevels returns a column of voltage levels, in dBV or dBu.
func (s Sheet) VoltageLevels(name string) ([]units.VoltageLevel, error) {
	return typed[units.VoltageLevel](s, name)
}

// Angles returns a column of angles, such as phases.
func (s Sheet) Angles(name string) ([]units.Angle, error) { return typed[units.Angle](s, name) }

// Voltages returns a column of voltages.
func (s Sheet) Voltages(name string) ([]units.Voltage, error) { return typed[units.Voltage](s, name) }

// Currents returns a column of currents.
func (s Sheet) Currents(name string) ([]units.Current, error) { return typed[units.Current](s, name) }

// Resistances returns a column of resistances or of magnitudes of impedances.
func (s Sheet) Resistances(name string) ([]units.Resistance, error) {
	return typed[units.Resistance](s, name)
}

// Inductances returns a column of inductances.
func (s Sheet) Inductances(name string) ([]units.Inductance, error) {
	return typed[units.Inductance](s, name)
}

// Capacitances returns a column of capacitances.
func (s Sheet) Capacitances(name string) ([]units.Capacitance, error) {
	return typed[units.Capacitance](s, name)
}

// FluxDensities returns a column of flux densities.
func (s Sheet) FluxDensities(name string) ([]units.FluxDensity, error) {
	return typed[units.FluxDensity](s, name)
}

// Lengths returns a column of lengths.
func (s Sheet) Lengths(name string) ([]units.Length, error) { return typed[units.Length](s, name) }

// Masses returns a column of masses.
func (s Sheet) Masses(name string) ([]units.Mass, error) { return typed[units.Mass](s, name) }

// Times returns a column of times.
func (s Sheet) Times(name string) ([]units.Time, error) { return typed[units.Time](s, name) }

// Temperatures returns a column of temperatures.
func (s Sheet) Temperatures(name string) ([]units.Temperature, error) {
	return typed[units.Temperature](s, name)
}

// quantity is a type of package units over float64.
type quantity interface {
	~float64
	Kind() units.Kind
}

// typed returns a column as quantities of one kind.
func typed[T quantity](s Sheet, name string) ([]T, error) {
	values, err := s.values(name, T(0).Kind())
	if err != nil {
		return nil, err
	}
	list := make([]T, len(values))
	for i, v := range values {
		list[i] = T(v)
	}
	return list, nil
}

// values returns the SI values of a column of the kind, none of them a gap.
func (s Sheet) values(name string, want units.Kind) ([]float64, error) {
	c, err := s.column(name)
	if err != nil {
		return nil, err
	}
	if c.Texts != nil || c.Kind.Type != want.Type || c.Kind.Dim != want.Dim {
		return nil, fmt.Errorf("%s: column %q: wrong kind of values: got %s, want %s", s.name, name, kindText(c), inUnit(want))
	}
	for row, v := range c.Values {
		if math.IsNaN(v) {
			return nil, fmt.Errorf("%s: column %q: row %d has no value\nhint: Filled() leaves such rows out", s.name, name, row+1)
		}
	}
	return append([]float64(nil), c.Values...), nil
}

func kindText(c frame.Column) string {
	if c.Texts != nil {
		return "texts"
	}
	return inUnit(c.Kind)
}

func inUnit(k units.Kind) string {
	if k.Symbol == "" {
		return "numbers without a unit"
	}
	return k.Name + " in " + k.Symbol
}

func (s Sheet) column(name string) (frame.Column, error) {
	c, ok := s.Frame().Named(name)
	if !ok {
		return c, fmt.Errorf("%s: there is no such column: got %q, want one of %s", s.name, name, strings.Join(s.Names(), ", "))
	}
	return c, nil
}

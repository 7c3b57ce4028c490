package engine

import (
	"fmt"
	"slices"
	"strings"
)

// This file collects what values and calls warn of, until their statement is through.

// Mind takes a value that was given a name.
func (s *sink) Mind(spot int, value any) {
	s.mind(spot, value, Minds{Value: true, Defined: true})
}

func (s *sink) mind(spot int, value any, m Minds) {
	w, ok := value.(interface{ Warnings() []string })
	if !ok {
		return
	}
	if m.List, m.Of = w.Warnings(), s.n.program.Spots[spot].Made; m.Of == "" {
		m.Of = strings.TrimPrefix(fmt.Sprintf("%T", value), "*")
	}
	s.keep(spot, m)
}

// Left takes the warnings of a call.
func (s *sink) Left(spot, watched int, warnings []string, ofValue bool) {
	w := s.n.program.Watched[watched]
	s.keep(spot, Minds{Of: w.Name, Label: w.Label, Value: ofValue, List: warnings})
}

// keep holds warnings back; what a value on the way has warned of is left to the statement's own.
func (s *sink) keep(spot int, m Minds) {
	for i := range s.minds {
		if earlier := s.minds[i].Value.(Minds); earlier.Value && m.Value {
			s.minds[i].Value = earlier.without(func(text string) bool { return slices.Contains(m.List, text) })
		}
	}
	p := s.n.program.Spots[spot]
	s.minds = append(s.minds, Result{Cell: p.Cell, Label: p.Name, Value: m, From: p.From, Place: p.Place})
}

// flush hands on what was held back and is new.
func (s *sink) flush() {
	for _, r := range s.minds {
		m := r.Value.(Minds)
		if !s.shown {
			m.Label = place(r, m)
		}
		if m = m.without(s.known(m)); len(m.List) > 0 {
			r.Value, r.Label = m, m.Label
			s.show(r)
		}
	}
	s.minds, s.shown = nil, false
}

// place is the label of what stands under no result: the name that was defined, or the line, and the call.
func place(r Result, m Minds) string {
	at := r.Label
	if at == "" {
		at = fmt.Sprintf("line %d", r.Line)
	}
	if m.Label == "" {
		return at
	}
	return at + ", " + m.Label
}

// known tells what was told before: of the same thing or, for a value without a name, of any value.
func (s *sink) known(m Minds) func(text string) bool {
	return func(text string) bool {
		known := s.told[m.Label+": "+text] || m.Value && !m.Defined && s.told[text]
		s.told[m.Label+": "+text], s.told[text] = true, m.Value || s.told[text]
		return known
	}
}

func (m Minds) without(unwanted func(text string) bool) Minds {
	m.List = slices.DeleteFunc(slices.Clone(m.List), unwanted)
	return m
}

// Texts are the warnings as they are told, behind what they are about.
func (m Minds) Texts() []string {
	var list []string
	for _, text := range m.List {
		if m.Label != "" {
			text = m.Label + ": " + text
		}
		list = append(list, text)
	}
	return list
}

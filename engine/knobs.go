package engine

import (
	"lode/engine/dim"
	"lode/engine/issue"
	"lode/engine/library"
	"lode/engine/worked"
)

// Knob is a value of a notebook that may be turned. Values are in coherent units.
type Knob struct {
	issue.Place
	Source           string // the line it is in
	Name             string
	Value, Low, High float64
	Whole            bool   // takes whole numbers only
	Type             string // name of the quantity's type, "" for a plain number or a product without a name
	Vector           dim.Vector
	Form             library.Form
}

// Knobs lists the knobs of a notebook in order.
func (n *Notebook) Knobs() []Knob {
	if n.checked == nil {
		return nil
	}
	var all []Knob
	for _, k := range n.checked.Knobs {
		out := Knob{Place: k.Place, Source: k.Source, Name: k.Name, Value: k.Value, Low: k.Low, High: k.High, Whole: k.Whole}
		if q, ok := n.checked.World.Quantity(k.Type); ok {
			out.Vector, out.Form = q.Vector.Visible(), q.Form
			if q.Base != nil {
				out.Type = q.Base.Obj().Name()
			}
		}
		all = append(all, out)
	}
	return all
}

// Knob tells where a knob stands.
func (s *sink) Knob(i int) float64 {
	k := s.n.checked.Knobs[i]
	if x, ok := s.n.Turned[k.Name]; ok {
		return x
	}
	return k.Value
}

// Work tells how the result of a statement came about.
func (s *sink) Work(spot int, line worked.Line) {
	s.shown = true
	p := s.n.program.Spots[spot]
	s.show(Result{Cell: p.Cell, Label: p.Text, Value: &line, Place: p.Place})
}

package library

import (
	"regexp"
	"slices"
	"strings"

	"lode/units"
)

// This file completes the examples of the help, so that each can be typed as it stands: it
// puts what an example takes for granted in front of it, and makes one of a method's name and
// parameters where the comment of the method gives none.

// sample is a value that examples take for granted: a name, and the line that defines it.
type sample struct{ name, code string }

func samples() []sample {
	return []sample{
		{"c", "c := coil.Wind(coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}, wire.AWG(42), 6000)"},
		{"pair", "pair := coil.InSeries(coil.Placed{Winding: c}, coil.Placed{Winding: c, Y: 18*mm, Reversed: true})"},
		{"line", "line := load.From(c).Volume(500*kΩ).Cable(5*metre).Input(1*MΩ)"},
		{"short", "short := load.From(c).Volume(500*kΩ).Cable(3*metre).Input(1*MΩ)"},
		{"long", "long := load.From(c).Volume(500*kΩ).Cable(10*metre).Input(1*MΩ)"},
		{"sheet", "sheet := c.BuildSheet(coil.Order{})"},
		{"plate", "plate := coil.Flange(coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}, coil.Drilling{Strings: coil.Strings{Count: 8, Pitch: 9*mm}, Hole: 5*mm})"},
		{"disc", "disc := piezo.Disc{Material: piezo.SoftPZT(), Diameter: 20*mm, Thickness: 0.2*mm}.Element()"},
		{"saddle", "saddle := piezo.Strip{Material: piezo.SoftPZT(), Length: 8*mm, Width: 3*mm, Thickness: 0.5*mm}.Element()"},
		{"charge", "charge := piezo.ChargeAmplifier{FeedbackCapacitance: 1*nF, FeedbackResistance: 100*MΩ}"},
		{"step", "step := transformer.Nameplate{Primary: 150*ohm, Secondary: 15*kΩ, LowCorner: 20*Hz, HighCorner: 30*kHz}.Model()"},
		{"n", "n := circuit.New(\"divider\").VoltageSource(\"V\", \"in\", \"ground\", 1*V).Resistor(\"R1\", \"in\", \"out\", 10*kΩ).Resistor(\"R2\", \"out\", \"ground\", 10*kΩ).Capacitor(\"C\", \"out\", \"ground\", 10*nF).Inductor(\"L\", \"out\", \"ground\", 2*H)"},
		{"bench", "bench := data.Parse(\"bench\", \"name, frequency Hz, level dB, volts dBV, phase °, resistance kΩ, inductance H, capacitance pF, voltage mV, current mA, field mT, height mm, mass g, delay ms, shop °C, turns\\na, 82.4, -3.1, -40, 12, 6.1, 2.2, 95, 120, 1, 55, 10, 24, 1.5, 21, 6000\")"},
		{"d", "d := chance.Seed(7)"},
		{"run", "run := study.Over(func(d units.Length) units.Area { return π*d*d/4 }, 1*mm, 10*mm, 10)"},
		{"plot", "plot := figure.Response(line.Sweep(20*Hz, 20*kHz))"},
		{"drawing", "drawing := schematic.Of(line)"},
		{"variants", "variants := table.Of(table.Head(\"variant\", \"turns\"), table.Row(\"as found\", 8000), table.Row(\"rewound\", 6500))"},
		{"positions", "positions := load.Selector{{\"one\", load.One(c)}, {\"both\", load.Series(load.One(c), load.One(c).Named(\"second\"))}}"},
	}
}

// receivers tells an example of each type that has methods.
func receivers() map[string]string {
	return map[string]string{
		"coil.Winding": "c", "coil.Chain": "pair", "coil.Sheet": "sheet", "coil.Sheets": "pair.BuildSheet()", "coil.Compound": "coil.CompoundNamed(\"epoxy\")", "coil.Plate": "plate", "coil.Fit": "c.Fit()", "coil.Clearance": "c.Inside(coil.Cover{Length: 88*mm, Width: 20*mm, CornerRadius: 9*mm, Height: 14*mm})",
		"coil.Shape": "c.Shape()", "coil.Style": "c.Style()", "coil.Correction": "pair.Correction(coil.UniformField{FluxDensity: 0.1*µT}, 2)", "coil.FluxVector": "c.FieldAt(0*mm, 0*mm, 10*mm, 1*mA)",
		"coil.CapacitanceRange": "c.CapacitanceRange()", "coil.ResistanceRange": "c.ResistanceRange()", "coil.LengthRange": "c.BuildRange()", "coil.TurnsRange": "coil.TurnsThatFit(coil.Round{CoreDiameter: 12*mm, Height: 8*mm, FlangeDiameter: 24*mm}, wire.AWG(43))",
		"coil.Racetrack": "coil.Racetrack{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm, FlangeWidth: 17*mm}", "coil.Rectangle": "coil.Rectangle{CoreLength: 71*mm, CoreWidth: 6.5*mm, Height: 10*mm}",
		"coil.Round": "coil.Round{CoreDiameter: 12*mm, Height: 8*mm, FlangeDiameter: 24*mm}", "coil.Convex": "coil.Convex{Corners: []coil.Point{{0*mm, 0*mm}, {20*mm, 0*mm}, {10*mm, 15*mm}}, Height: 8*mm}",
		"coil.MainsWire": "coil.MainsWire{Current: 2*A, Distance: 0.6*metre}", "coil.UniformField": "coil.UniformField{FluxDensity: 0.1*µT}", "coil.Direction": "coil.Clockwise", "coil.Polarity": "coil.North", "coil.Lay": "coil.Layered", "coil.Lead": "coil.Start",
		"load.Line": "line", "load.Coils": "load.One(c)", "load.Pot": "load.Logarithmic(500*kΩ)", "load.Chains": "load.Compare(100*mV, short.Named(\"3 m\"), long.Named(\"10 m\"))", "load.Chain": "load.Compare(100*mV, short.Named(\"3 m\"))[0]",
		"load.Coil": "load.Coil{DCResistance: 6*kΩ, SelfInductance: 2.2*H, SelfCapacitance: 90*pF}", "load.Selector": "positions",
		"circuit.Network": "n", "circuit.Response": "line.Sweep(20*Hz, 20*kHz)", "circuit.Noise": "line.Noise(20*Hz, 20*kHz)", "circuit.Peak": "line.Peak()", "circuit.Sensitivities": "line.Sensitivities()",
		"circuit.Contributions": "line.Noise(20*Hz, 20*kHz).Contributions()", "circuit.Influences": "n.Influences(func(changed circuit.Network) float64 { return float64(changed.Sweep(\"out\", 20*Hz, 20*kHz).Plateau()) })",
		"transformer.Model": "step", "transformer.Bench": "transformer.Bench{PrimaryOpen: 0.8*H, PrimaryShorted: 2*mH, VoltageRatio: 9.9}", "transformer.Limits": "transformer.Limits{Voltage: 0.8*V, Frequency: 30*Hz}",
		"transformer.TapResults": "transformer.CompareTaps(200*ohm, 47*kΩ, transformer.Tap{\"1 to 10\", step})",
		"piezo.Element":          "disc", "piezo.ChargeAmplifier": "charge", "piezo.Strip": "piezo.Strip{Material: piezo.SoftPZT(), Length: 8*mm, Width: 3*mm, Thickness: 0.5*mm}",
		"wire.Wire": "wire.AWG(42)", "wire.Matches": "wire.FromBare(0.063*mm)", "wire.Match": "wire.FromBare(0.063*mm).List[0]", "wire.Diameters": "wire.AWG(42).BareLimits()", "wire.Forces": "wire.AWG(42).BreakingLoad()",
		"wire.Material": "wire.MaterialNamed(\"silver\")", "wire.Resistances": "wire.AWG(42).ResistanceLimits()", "wire.Stretch": "wire.AWG(42).Stretch(0.4*N)",
		"data.Sheet": "bench", "study.Run": "run", "figure.Figure": "plot", "schematic.Drawing": "drawing", "table.Table": "variants", "template.Template": "template.Draw(plate)", "frame.Frame": "variants.Frame()",
		"chance.Draws": "d", "circuit.Response.LowCutoff": "step.Sweep(150*ohm, 50*kΩ, 1*Hz, 100*kHz)", "circuit.Fault": "circuit.ErrValue", "frame.Column": "table.Column(\"turns\", []float64{6000, 6500})",
		"table.Grid": "variants.Grid()", "table.Cell": "variants.Grid().Rows[0][0]", "ladder.Branch": "ladder.Part(ladder.Resistor, \"R\", \"10 kΩ\")", "ladder.Ladder": "line.Ladder()",
		"circuit.Network.Sensitivities": "circuit.New(\"coil\").Coil(\"coil\", \"out\", \"ground\", circuit.Coil{Resistance: 6*kΩ, Inductance: 2*H, EMF: 1*V}).Capacitor(\"cable\", \"out\", \"ground\", 600*pF).Resistor(\"input\", \"out\", \"ground\", 1*MΩ)",
		"load.Coils.Coupled":            "load.Series(load.One(c), load.One(c).Named(\"second\"))",
	}
}

// arguments tells an example of each parameter, by its name and type or by its type alone.
func arguments() map[string]string {
	return map[string]string{
		"low units.Frequency": "20*Hz", "high units.Frequency": "20*kHz", "units.Frequency": "1*kHz", "units.Resistance": "10*kΩ", "source units.Resistance": "150*ohm", "load units.Resistance": "50*kΩ",
		"units.Capacitance": "22*nF", "...units.Capacitance": "", "units.Inductance": "2*H", "units.Voltage": "100*mV", "units.Current": "1*mA", "units.Length": "2*mm", "length units.Length": "5*metre", "units.Level": "-3*dB", "by units.Level": "6*dB",
		"units.Temperature": "35*degC", "units.Conductance": "2e-3*siemens", "units.VoltageNoise": "units.VoltageNoise(5e-9)", "units.CurrentNoise": "units.CurrentNoise(0.5e-12)", "units.Impedance": "units.Impedance(complex(100, 50))",
		"share float64": "0.5", "position float64": "0.7", "k float64": "0.9", "gain float64": "2", "e Element": "disc", "d Desk": "load.Desk{}", "p Pot": "load.Logarithmic(500*kΩ)", "c Coils": "load.One(c)", "c Source": "c", "...Coils": "load.One(c), load.One(c)",
		"node string": "\"out\"", "against string": "\"in\"", "title string": "\"another\"", "label string": "\"another\"", "caption string": "\"As measured.\"", "from string": "\"out\"", "to string": "\"ground\"", "plus string": "\"in\"", "minus string": "\"ground\"", "through string": "\"V\"",
		"total units.Resistance": "500*kΩ", "source frame.Source": "c", "f units.Frequency": "1*kHz", "frequencies []units.Frequency": "[]units.Frequency{100*Hz, 1*kHz}", "i units.Current": "1*mA", "cells ...any": "\"as found\", 8000", "names ...string": "\"variant\", \"turns\"",
		"low units.Quantity": "100*Hz", "high units.Quantity": "10*kHz", "cable units.Capacitance": "500*pF", "id string": "\"plot\"", "problem error": "errors.New(\"burnt\")", "n circuit.Network": "n", "in string": "\"out\"", "out string": "\"far\"", "cells []any": "[]any{6000, 6500}", "kind units.Kind": "(3*mm).Kind()", "values []float64": "[]float64{0.003, 0.004}",
		"typeName string": "\"Length\"", "cell any": "3*mm", "f frame.Frame": "variants.Frame()", "text string": "\"22 µF\"", "symbol Symbol": "ladder.Resistor", "value string": "\"10 kΩ\"", "branches ...Branch": "ladder.Part(ladder.Resistor, \"R\", \"10 kΩ\")",
		"c Coil": "circuit.Coil{Resistance: 6*kΩ, Inductance: 2*H, EMF: 1*V}",
	}
}

// Complete returns the topic with an example that runs as it stands, where there can be one.
func (t Topic) Complete() Topic {
	if t.Example == "" {
		t.Example = t.made()
	}
	if t.Example != "" {
		t.Example = takenForGranted(t.Example) + t.Example
	}
	return t
}

var parameters = regexp.MustCompile(`^[\w.]*\((.*?)\)(?: |$)`)

// made is an example made of a function's name and parameters.
func (t Topic) made() string {
	m := parameters.FindStringSubmatch(t.Signature)
	if m == nil || strings.HasPrefix(t.Signature, "type ") {
		return ""
	}
	i := strings.LastIndexByte(t.Name, '.')
	call := receivers()[t.Name]
	if call == "" {
		call = receivers()[t.Name[:i]]
	}
	if strings.Count(t.Name, ".") == 1 {
		call = t.Name[:i]
	}
	list, ok := t.given(m[1])
	if call == "" || !ok {
		return ""
	}
	return several(t.Signature) + call + t.Name[i:] + "(" + list + ")"
}

var results = regexp.MustCompile(`\) \(([^()]*), ([^(),]*)\)$`)

// several names the results of a function that has two of them, none an error.
func several(signature string) string {
	if m := results.FindStringSubmatch(signature); m == nil || m[2] == "error" {
		return ""
	}
	if strings.Count(results.FindString(signature), ",") > 1 {
		return "x, y, z := "
	}
	return "x, y := "
}

// given writes arguments for parameters.
func (t Topic) given(written string) (string, bool) {
	var list []string
	for _, p := range strings.Split(written, ", ") {
		name, kind, _ := strings.Cut(p, " ")
		if p == "" {
			continue
		}
		if strings.HasPrefix(t.Name, "data.Sheet.") && kind == "string" {
			list = append(list, "\""+columnOf(t.Name)+"\"")
			continue
		}
		if parsed, ok := strings.CutPrefix(t.Name, "units.Parse"); ok && kind == "string" && parsed != "" {
			list = append(list, amountOf(parsed))
			continue
		}
		value, ok := special(t.Name)[name]
		for _, key := range []string{p, kind} {
			if !ok {
				value, ok = arguments()[key]
			}
		}
		if !ok {
			return "", false
		}
		if value != "" {
			list = append(list, value)
		}
	}
	return strings.Join(list, ", "), true
}

// amountOf writes an amount of a kind of quantity as a text.
func amountOf(kindType string) string {
	k, _ := units.KindNamed(kindType)
	if k.Form == "point" && k.Symbol == "K" {
		return `"21 °C"`
	}
	return `"3 ` + k.Symbol + `"`
}

// columnOf names the column of the sample sheet that a method of data.Sheet reads.
func columnOf(method string) string {
	columns := map[string]string{
		"Angles": "phase", "Capacitances": "capacitance", "Currents": "current", "FluxDensities": "field", "Frequencies": "frequency", "Inductances": "inductance", "Lengths": "height", "Levels": "level",
		"Masses": "mass", "Numbers": "turns", "Resistances": "resistance", "Temperatures": "shop", "Texts": "name", "Times": "delay", "VoltageLevels": "volts", "Voltages": "voltage",
	}
	return columns[method[strings.LastIndexByte(method, '.')+1:]]
}

// special gives the arguments that depend on more than their type.
func special(function string) map[string]string {
	switch function[strings.LastIndexByte(function, '.')+1:] {
	case "WithCapacitance":
		return map[string]string{"name": `"C"`}
	case "WithInductance":
		return map[string]string{"name": `"L"`}
	case "WithResistance":
		return map[string]string{"name": `"R1"`}
	case "WithEMF":
		return map[string]string{"name": `"V"`}
	case "Within":
		return map[string]string{"low": "-20*dB", "high": "10*dB"}
	case "Coupled":
		return map[string]string{"first": "c.String()", "second": `"second"`}
	case "Couple":
		return map[string]string{"first": `"L"`, "second": `"L2"`}
	case "Named":
		return map[string]string{"name": `"another"`}
	}
	return map[string]string{"name": `"new"`}
}

var word = regexp.MustCompile(`(?:^|[^\w."])([a-zA-Z]\w*)`)

// takenForGranted are the definitions of the samples that code uses, each line once.
func takenForGranted(code string) string {
	used := map[string]bool{}
	var mark func(code string)
	mark = func(code string) {
		for _, m := range word.FindAllStringSubmatch(code, -1) {
			i := slices.IndexFunc(samples(), func(s sample) bool { return s.name == m[1] && s.code != "" })
			if i < 0 || used[m[1]] || strings.Contains(code, "func("+m[1]+" ") || strings.Contains(code, m[1]+" :=") {
				continue
			}
			used[m[1]] = true
			_, value, _ := strings.Cut(samples()[i].code, ":=")
			mark(value)
		}
	}
	mark(code)
	var lines strings.Builder
	for _, s := range samples() {
		if used[s.name] {
			lines.WriteString(s.code + "\n")
		}
	}
	return lines.String()
}

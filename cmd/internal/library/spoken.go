package library

import (
	"strings"
	"unicode"

	"lode/units"
)

// spoken lists how people spell units that are spelt otherwise in notebooks: the short
// symbols that would be taken for variables, and the words.
func spoken() map[string]string {
	all := map[string]string{"celsius": "degC", "centigrade": "degC", "feet": "foot", "henrie": "H", "mm²": "mm2", "mm³": "mm3"}
	for _, u := range units.Units() {
		best := written(u.Symbols())
		word := strings.ToLower(u.Const)
		all[word], all[strings.Replace(word, "metre", "meter", 1)] = best, best
		for _, s := range u.Spellings()[len(u.Symbols()):] {
			all[s] = best
		}
	}
	return all
}

// alike lists words that people use for what the library calls otherwise.
func alike() map[string]string {
	return map[string]string{
		"weight": "Mass", "dcr": "Resistance", "dc": "Resistance", "ohms": "Resistance", "diameter": "Bare Overall CoreDiameter", "thickness": "Build Overall",
		"depth": "Build", "frequency": "Resonance", "freq": "Resonance", "peakfrequency": "Resonance", "f0": "Resonance", "henries": "Inductance",
		"layercount": "Layers", "gain": "LevelAt", "output": "LevelAgainst Level", "cost": "WireLength", "plot": "Sweep", "response": "Sweep", "temperature": "ResistanceAt",
		"width": "CoreWidth FlangeWidth", "q": "Q Peak", "rewind": "Wind With", "loudness": "LevelAgainst", "volume": "Volume CompoundVolume", "impedance": "Impedance ResistanceAC",
	}
}

// written names the best spelling and, where no keyboard has it, one that every keyboard has.
func written(spellings []string) string {
	for i, s := range spellings {
		if !strings.ContainsFunc(s, func(r rune) bool { return r > unicode.MaxASCII }) {
			return strings.Join(append(spellings[:min(i, 1):1], s), " or ")
		}
	}
	return spellings[0]
}

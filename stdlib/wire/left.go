package wire

import "fmt"

// This file says where calls leave the range they are valid for and still have a result.

// Ranges returns, under the name of a function or method, what tells where a call of it left its range. It takes
// what the call took, the receiver first, and returns the warnings: "what: got X, valid Y".
func Ranges() map[string]any {
	return map[string]any{
		"Wire.BreakingLoad":   Wire.breakingLoadLeft,
		"Wire.WindingTension": Wire.windingTensionLeft,
	}
}

func (w Wire) breakingLoadLeft() []string {
	if m := w.material; m.Weakest > 0 && m.Strongest > 0 || w.check() != nil {
		return nil
	}
	return []string{fmt.Sprintf("strength of %s: got none, valid with Weakest and Strongest of its wire.Material", w.material.Name)}
}

func (w Wire) windingTensionLeft() []string {
	if w.material.WindingStress > 0 || w.check() != nil {
		return nil
	}
	return []string{fmt.Sprintf("winding stress of %s: got none, valid with WindingStress of its wire.Material", w.material.Name)}
}

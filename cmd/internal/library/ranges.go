package library

import (
	"lode/stdlib/coil"
	"lode/stdlib/load"
	"lode/stdlib/transformer"
	"lode/stdlib/wire"
)

// This file joins what the packages know of calls that leave the range they are valid for.

func ranges() map[string]any {
	all := map[string]any{}
	for name, checks := range map[string]map[string]any{
		"coil": coil.Ranges(), "load": load.Ranges(), "transformer": transformer.Ranges(), "wire": wire.Ranges(),
	} {
		for function, check := range checks {
			all[name+"."+function] = check
		}
	}
	return all
}

// tries tells the functions that look for an argument: what they try on the way is no result.
func tries(name string) bool {
	return name == "study.Solve" || name == "study.Least" || name == "study.Greatest"
}

package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// This file turns knobs on the command line, rightly and wrongly.

// manyKnobs is a notebook with a knob of each sort, on lines 4 to 7.
var manyKnobs = cell(`turns := knob("turns", 5000, 1000, 9000)
tone := knob("tone", 500*kΩ, 100*kΩ, 1*MΩ)
level := knob("level", -6*dB, -20*dB, 0)
share := knob("share", 0.5, 0.0, 1.0)
turns
tone
level
share`)

// refused are settings that a knob does not take, and what is told: where, what, got, want.
var refused = map[string][4]string{
	"turns=999":        {"a.md:4:15", `knob "turns": the value lies outside of its bounds`, "999", "a whole number from 1000 to 9000"},
	"turns=9001":       {"a.md:4:15", `knob "turns": the value lies outside of its bounds`, "9001", "a whole number from 1000 to 9000"},
	"turns=-5000":      {"a.md:4:15", `knob "turns": the value lies outside of its bounds`, "-5000", "a whole number from 1000 to 9000"},
	"turns=5000.5":     {"a.md:4:15", `knob "turns": the knob takes whole numbers`, "5000.5", "a whole number from 1000 to 9000"},
	"turns=many":       {"a.md:4:15", `knob "turns": no number`, "many", "a whole number from 1000 to 9000"},
	"turns=NaN":        {"a.md:4:15", `knob "turns": no number`, "NaN", "a whole number from 1000 to 9000"},
	"turns=-Inf":       {"a.md:4:15", `knob "turns": no number`, "-Inf", "a whole number from 1000 to 9000"},
	"turns=5,000":      {"a.md:4:15", `knob "turns": decimal comma`, "5,000", "a whole number from 1000 to 9000"},
	"turns=5000 mm":    {"a.md:4:15", `knob "turns": the knob takes numbers without a unit`, "5000 mm", "a whole number from 1000 to 9000"},
	"turns==5000":      {"a.md:4:15", `knob "turns": no number`, "=5000", "a whole number from 1000 to 9000"},
	"tone=470":         {"a.md:5:14", `knob "tone": the unit is missing`, "470", "a value from 100 kΩ to 1 MΩ"},
	"tone=470 H":       {"a.md:5:14", `knob "tone": the unit does not fit`, "470 H", "a value from 100 kΩ to 1 MΩ"},
	"tone=470 furlong": {"a.md:5:14", `knob "tone": unknown unit`, "470 furlong", "a value from 100 kΩ to 1 MΩ"},
	"tone=2 MΩ":        {"a.md:5:14", `knob "tone": the value lies outside of its bounds`, "2 MΩ", "a value from 100 kΩ to 1 MΩ"},
	"level=-6":         {"a.md:6:15", `knob "level": the unit is missing`, "-6", "a value from -20 dB to 0 dB"},
	"level=-30 dB":     {"a.md:6:15", `knob "level": the value lies outside of its bounds`, "-30 dB", "a value from -20 dB to 0 dB"},
	"level=-3 dBu":     {"a.md:6:15", `knob "level": the unit does not fit`, "-3 dBu", "a value from -20 dB to 0 dB"},
	"share=-6 dB":      {"a.md:7:15", `knob "share": the knob takes numbers without a unit`, "-6 dB", "a value from 0 to 1"},
	"share=1.01":       {"a.md:7:15", `knob "share": the value lies outside of its bounds`, "1.01", "a value from 0 to 1"},
	"turms=5000":       {"a.md", "the notebook has no such knob", "turms", "one of turns, tone, level, share"},
	"Turns=5000":       {"a.md", "the notebook has no such knob", "Turns", "one of turns, tone, level, share"},
}

// TestKnobRefusals wants each to be told in full, nothing to run and no page to be written.
func TestKnobRefusals(t *testing.T) {
	file := writeFile(t, "a.md", manyKnobs)
	for setting, told := range refused {
		out, err, code := call("run", "-knob", "turns=5000", "-knob", setting, file)
		if want := told[0] + ": " + told[1] + "\n"; code != exitIssues || out != "" || !strings.Contains(err, want) {
			t.Errorf("%s: exit code %d, %q and\n%s\nwant %d, nothing shown and %q", setting, code, out, err, exitIssues, want)
		}
		if want := "\n  got   " + told[2] + "\n  want  " + told[3] + "\n"; !strings.Contains(err, want) || !strings.HasSuffix(err, "1 issue. Nothing was run.\n") {
			t.Errorf("%s: got\n%s\nwant %q in it", setting, err, want)
		}
	}
	if _, err := os.Stat(strings.TrimSuffix(file, ".md") + ".html"); err == nil {
		t.Error("a page was written")
	}
}

// TestKnobWithoutKnobs wants a way on where a notebook has none.
func TestKnobWithoutKnobs(t *testing.T) {
	_, err, code := call("run", "-knob", "turns=5000", writeFile(t, "a.md", cell("3*mm")))
	for _, want := range []string{"a.md: the notebook has no such knob", "got   turns", `hint  knob("turns", 6800, 5000, 9000) in a cell makes one`} {
		if code != exitIssues || !strings.Contains(err, want) {
			t.Errorf("exit code %d and\n%s\nwant %q in it", code, err, want)
		}
	}
}

// TestKnobUsage wants what is no setting at all to be told as wrong use.
func TestKnobUsage(t *testing.T) {
	file := writeFile(t, "a.md", manyKnobs)
	for _, setting := range []string{"turns", "=5", "turns=", "turns=  ", " =5", ""} {
		out, err, code := call("run", file, "-knob", setting)
		if code != exitUsage || out != "" || !strings.Contains(err, "want a name, an equals sign and a value") || !strings.Contains(err, "-knob NAME=VALUE") {
			t.Errorf("%q: exit code %d, %q and\n%s", setting, code, out, err)
		}
	}
	if _, err, code := call("run", file, "-knob"); code != exitUsage || !strings.Contains(err, "-knob: no value") {
		t.Errorf("without a setting: exit code %d and\n%s", code, err)
	}
}

var leader = regexp.MustCompile(` ·+ `)

// TestKnobSettings wants settings to reach the results, as people write them; the last one counts.
func TestKnobSettings(t *testing.T) {
	file := writeFile(t, "a.md", manyKnobs)
	for _, c := range []struct {
		settings []string
		want     string
	}{
		{nil, "turns · 5000\ntone · 500 kΩ\nlevel · -6 dB\nshare · 0.5\n"},
		{[]string{"turns=1000", "tone=1 MΩ", "level=0 dB", "share=1"}, "turns · 1000\ntone · 1 MΩ\nlevel · 0 dB\nshare · 1\n"},
		{[]string{" turns = 9000 ", "tone=250kohm", "level=−12 dB"}, "turns · 9000\ntone · 250 kΩ\nlevel · -12 dB\nshare · 0.5\n"},
		{[]string{"turns=6000", "turns=7e3"}, "turns · 7000\ntone · 500 kΩ\nlevel · -6 dB\nshare · 0.5\n"},
	} {
		args := []string{"run", file}
		for _, s := range c.settings {
			args = append(args, "-knob", s)
		}
		out, err, code := call(args...)
		if code != exitFine || !strings.HasPrefix(leader.ReplaceAllString(out, " · "), c.want) {
			t.Errorf("%q: exit code %d\n%s%s\nwant\n%s", c.settings, code, out, err, c.want)
		}
	}
}

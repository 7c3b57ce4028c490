package tables

import (
	"strings"
	"testing"
)

// A new table is one text like this one.
const small = `# system: BWG
# title: a small table
# builds: thin; thick
# source: invented for this test
size,a,b,c,d,e,f,g,h,i
20,0.88,0.889,0.90,0.93,0.94,0.95,0.96,0.97,0.98
21,,0.813,,,,,,,
`

func TestParseGauge(t *testing.T) {
	gauge, err := ParseGauge(small)
	if err != nil {
		t.Fatal(err)
	}
	if gauge.System != "BWG" || len(gauge.Builds) != 2 || gauge.Builds[1] != "thick" || len(gauge.Sizes) != 2 {
		t.Errorf("got %+v", gauge)
	}
	first, second := gauge.Sizes[0], gauge.Sizes[1]
	if first.Size != 20 || first.Bare.Nominal != 0.889e-3 || first.Overall[1].Max != 0.98e-3 || !first.Overall[0].Stated() {
		t.Errorf("first row %+v", first)
	}
	if second.Bare.Min != 0 || second.Overall[0].Stated() {
		t.Errorf("gaps are filled: %+v", second)
	}
}

func TestParseGaugeRefuses(t *testing.T) {
	for wrong, says := range map[string]string{
		strings.Replace(small, "# source: invented for this test\n", "", 1): "source",
		strings.Replace(small, "0.889", "-0.889", 1):                        "size 20: column 3",
		strings.Replace(small, "0.889", "NaN", 1):                           "size 20: column 3",
		strings.Replace(small, "20,0.88,", "20,", 1):                        "wrong number of fields",
		strings.Replace(small, "thin; thick", "thin", 1):                    "1 builds",
		"": "system",
	} {
		if _, err := ParseGauge(wrong); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("error %v, want one about %q", err, says)
		}
	}
}

func TestParseMaterialsRefuses(t *testing.T) {
	lines := strings.SplitN(materialsFile, "\n", 4)
	for _, wrong := range []string{
		strings.Replace(materialsFile, "copper,17", "copper,x17", 1),
		lines[1] + "\nlead,1,2\n",
		lines[1] + "\nlead,208,0.004,11340,12,17,16,4,0.2,-60,150,\n",
	} {
		if _, err := ParseMaterials(wrong); err == nil {
			t.Errorf("accepted: %.80q", wrong)
		}
	}
}

// The files themselves: a source each, sizes once each, borrowed enamel from a table there is.
func TestFilesAreSound(t *testing.T) {
	systems := map[string]bool{}
	for _, gauge := range Gauges() {
		systems[gauge.System] = true
		seen := map[float64]bool{}
		for _, size := range gauge.Sizes {
			if seen[size.Size] || !size.Bare.Stated() {
				t.Errorf("%s %g: twice or without a diameter", gauge.System, size.Size)
			}
			seen[size.Size] = true
		}
	}
	for _, gauge := range Gauges() {
		if gauge.Enamel != "" && !systems[gauge.Enamel] {
			t.Errorf("%s borrows from %q, which is no table", gauge.System, gauge.Enamel)
		}
	}
	if first := Materials()[0].Name; first != "copper" {
		t.Errorf("first material is %s", first)
	}
}

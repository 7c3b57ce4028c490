package wire

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"lode/stdlib/internal/evidence"
	"lode/stdlib/wire/internal/kernel"
	"lode/units"
)

// Map of mutual checks of this package:
//
//	AWG bare             magnet-wire data sheet (18-36); AWG/SWG comparison table (18-44); formula of ASTM B258
//	AWG enamel           NEMA figures of an open data set; another works' page for single film (18-40)
//	metric               IEC figures of an open data set, grades 1 to 3; tolerances of a general-data page; contiguous grades
//	SWG                  table quoting BS 3737, inch and printed millimetres
//	resistance           data sheet (min, nominal, max, printed digits); 1/58 rule; CRC wire tables (silver, nichrome)
//	mass                 single-film page, bare and enamelled; mass resistivity (kernel)
//	temperature          ratios of IEC 60028; zero resistance at -234.5 °C as handbooks print (kernel)
//	breaking load        printed largest strengths of soft wire, 30-36; 35 000 psi, which a chart has for annealed wire, lies within
//	winding tension      tension chart, 18-43; ten thousand psi
//	stretch              bisection (kernel, laws_test); volume law; Hooke's law by hand; where soft copper yields
//	turns per length     times the diameter it is one; printed 2.8 mil of gauge 42
//	current density      one ampere in a square millimetre by hand; odd in the current
//	amounts              inverses of each other; printed Ω and lb per 1000 ft
//	identify             every table row finds itself; random wire within its limits fits its own gauge; one case by hand
//
// The last four have their checks in laws_test.go.
//
// Every reference file names its own source and says whether it was read, computed or recalled.

// book keeps what tests compared; DEVELOPERS.md tells how to print it.
var book evidence.Book

type row map[string]string

// reference reads a table of published figures.
func reference(t *testing.T, name string) []row {
	t.Helper()
	file, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s: %d lines, %v", name, len(lines), err)
	}
	rows := make([]row, len(lines)-1)
	for i, line := range lines[1:] {
		rows[i] = row{}
		for j, field := range line {
			rows[i][lines[0][j]] = field
		}
	}
	return rows
}

func (r row) number(t *testing.T, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s of %v: %v", column, r, err)
	}
	return x
}

// printed checks a value against a figure to its last printed digit. Half a unit of it is the
// rounding of the printer; slack is more of it for a figure rounded twice.
func (r row) printed(t *testing.T, what, column string, got, slack float64) {
	t.Helper()
	text := r[column]
	if text == "" {
		return
	}
	want := r.number(t, column)
	decimals := 0
	if i := strings.Index(text, "."); i >= 0 {
		decimals = len(text) - i - 1
	}
	if want != 0 {
		book.Note(t, strings.ReplaceAll(column, "_", " "), math.Abs(got/want-1))
	}
	if half := (0.5 + slack) * math.Pow(10, -float64(decimals)); math.Abs(got-want) > half*(1+1e-9) {
		t.Errorf("%s: %s = %.8g, printed %s", what, column, got, text)
	}
}

func must[T any](value T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return value
	}
}

const mm = float64(units.Millimetre)

func TestPrintedSheetOfBareCopper(t *testing.T) {
	for _, r := range reference(t, "wire_awg_bare_resistance_printed.csv") {
		w := must(AWG(r.number(t, "awg")))(t)
		perThousandFeet := float64(1000 * units.Foot)
		r.printed(t, w.Name(), "bare_nom_inch", float64(w.Bare()/units.Inch), 0)
		r.printed(t, w.Name(), "bare_min_inch", float64(w.BareLimits().Min/units.Inch), 0)
		limits := w.ResistanceLimits()
		// A tenth of a unit in the last printed digit more than rounding, since the sheet counts
		// with 10.371 Ω per circular mil-foot, rounded before.
		r.printed(t, w.Name(), "resistance_nom_ohm_per_1000ft_20C", float64(limits.Nominal)*perThousandFeet, 0.1)
		r.printed(t, w.Name(), "resistance_max_ohm_per_1000ft_20C", float64(limits.Max)*perThousandFeet, 0.1)
		if same := math.Abs(float64(w.BareLimits().Max/units.Inch)-r.number(t, "bare_max_inch")) < 1e-9; same {
			r.printed(t, w.Name(), "resistance_min_ohm_per_1000ft_20C", float64(limits.Min)*perThousandFeet, 0.1)
		} else if g := r.number(t, "awg"); g < 24 || g > 26 {
			t.Errorf("%s: largest bare diameter differs from the sheet outside 24 to 26", w.Name())
		}
	}
}

func TestNominalBareAgainstComparisonTable(t *testing.T) {
	for _, r := range reference(t, "wire_awg_rounded_nominal.csv") {
		gauge := r.number(t, "awg")
		w := must(AWG(gauge))(t)
		formula := must(AWGDiameter(gauge))(t)
		off := math.Abs(float64(w.Bare()/formula) - 1)
		book.Note(t, "bare diameter, rounded against the formula", off)
		if off > 0.0142 {
			t.Errorf("%s is %.3g off the formula, documented as at most 1.4 %%", w.Name(), off)
		}
		if gauge >= 45 { // renumbered in 1961 (NBS Handbook 100): finer than this table's steps
			continue
		}
		book.Close(t, "bare diameter", float64(w.Bare()/units.Inch), r.number(t, "diameter_nominal_inch"), 1e-9)
	}
}

func TestFormula(t *testing.T) {
	for _, r := range reference(t, "wire_awg_formula.csv") {
		d := must(AWGDiameter(r.number(t, "awg")))(t)
		w := must(Measured(d, d))(t)
		for column, got := range map[string]float64{
			"diameter_mm":               float64(d) / mm,
			"area_mm2":                  float64(w.Conductor()) * 1e6,
			"resistance_ohm_per_km_20C": float64(w.ResistancePerLength()) * 1e3,
			"mass_kg_per_km":            float64(w.MassPerLength()) * 1e3,
		} {
			book.Close(t, strings.ReplaceAll(column, "_", " "), got, r.number(t, column), 1e-7)
		}
	}
}

func TestEnamelledSizesOfTheStandard(t *testing.T) {
	for _, r := range reference(t, "wire_awg_enamelled_nema.csv") {
		w := must(AWG(r.number(t, "awg")))(t)
		if r["build"] == "heavy" {
			w = must(w.Heavy())(t)
		}
		bare, overall := w.BareLimits(), w.OverallLimits()
		for column, got := range map[string]units.Length{
			"bare_min_mm": bare.Min, "bare_nom_mm": bare.Nominal, "bare_max_mm": bare.Max,
			"overall_min_mm": overall.Min, "overall_nom_mm": overall.Nominal, "overall_max_mm": overall.Max,
		} {
			r.printed(t, w.Name(), column, float64(got)/mm, 0)
		}
	}
}

// An independent page for single film gives the least increase and the largest diameter in
// mils, and the mass of bare and enamelled wire.
func TestSingleFilmPage(t *testing.T) {
	const poundPerThousandFeet = 0.45359237 / 304.8
	for _, r := range reference(t, "wire_single_film_printed.csv") {
		w := must(AWG(r.number(t, "awg")))(t)
		overall := w.OverallLimits()
		r.printed(t, w.Name(), "least_increase_mil", float64((overall.Min-w.BareLimits().Min)/units.Mil), 0.02)
		r.printed(t, w.Name(), "largest_overall_mil", float64(overall.Max/units.Mil), 0.02)
		// The page prints 0.04882 lb beside 16.00 circular mils and 0.3027 lb beside 100.0: its own
		// masses scatter by up to 0.8 % around its own areas.
		bare := r.number(t, "mass_bare_lb_per_1000ft") * poundPerThousandFeet
		book.Close(t, "mass of bare wire", float64(w.Uncoated().MassPerLength()), bare, 0.009)
		enamelled := r.number(t, "mass_single_film_lb_per_1000ft") * poundPerThousandFeet
		book.Close(t, "mass of enamelled wire", float64(w.MassPerLength()), enamelled, 0.01) // as documented
	}
}

func TestMetricSizesOfTheStandard(t *testing.T) {
	for _, r := range reference(t, "wire_metric_enamelled_iec.csv") {
		d := r.number(t, "conductor_nom_mm")
		thin := must(Metric(units.Length(d) * units.Millimetre))(t)
		thick := must(thin.Heavy())(t)
		bare, one, two := thin.BareLimits(), thin.OverallLimits(), thick.OverallLimits()
		figures := map[string]units.Length{"conductor_nom_mm": bare.Nominal,
			"conductor_min_mm": bare.Min, "conductor_max_mm": bare.Max,
			"grade1_overall_min_mm": one.Min, "grade1_overall_max_mm": one.Max,
			"grade2_overall_min_mm": two.Min, "grade2_overall_max_mm": two.Max}
		if d > 0.5 { // one figure a grade: it continues the column of largest diameters
			figures["grade1_overall_nom_mm"], figures["grade2_overall_nom_mm"] = one.Max, two.Max
		}
		for column, got := range figures {
			r.printed(t, thin.Name(), column, float64(got)/mm, 0)
		}
		book.Close(t, "resistance", float64(thin.ResistancePerLength()), r.number(t, "resistance_nominal_ohm_per_m_20C"), 1e-6)
	}
}

// The recalled least increases above 0.5 mm must agree with the largest diameters read: grade 2
// begins where grade 1 ends, to the micrometre.
func TestGradesAreContiguous(t *testing.T) {
	for _, r := range reference(t, "wire_metric_enamelled_iec.csv") {
		d := units.Length(r.number(t, "conductor_nom_mm")) * units.Millimetre
		if d < 25*units.Micrometre { // the figures are too coarse there
			continue
		}
		thin := must(Metric(d))(t)
		thick := must(thin.Heavy())(t)
		if gap := float64((thick.OverallLimits().Min - thin.OverallLimits().Max) / units.Micrometre); math.Abs(gap-1) > 1e-6 {
			t.Errorf("%v: grade 2 begins %.3g µm above the end of grade 1, want 1", d, gap)
		}
	}
}

// Grade 3 as read, and to the micrometre where grade 2 ends.
func TestGradeThree(t *testing.T) {
	for _, r := range reference(t, "wire_metric_grade3_iec.csv") {
		w := must(Metric(units.Length(r.number(t, "conductor_nom_mm")) * units.Millimetre))(t)
		thick := must(w.Grade(3))(t)
		limits := thick.OverallLimits()
		r.printed(t, thick.Name(), "grade3_overall_min_mm", float64(limits.Min)/mm, 0)
		r.printed(t, thick.Name(), "grade3_overall_max_mm", float64(limits.Max)/mm, 0)
		if gap := float64((limits.Min - must(w.Grade(2))(t).OverallLimits().Max) / units.Micrometre); math.Abs(gap-1) > 1e-6 {
			t.Errorf("%v begins %.3g µm above grade 2, want 1", thick.Name(), gap)
		}
		if must(w.Grade(1))(t) != w || must(w.Grade(2))(t) != must(w.Heavy())(t) {
			t.Errorf("%v: grades 1 and 2 are not the thin and the thick build", w.Name())
		}
	}
}

func TestConductorTolerancePage(t *testing.T) {
	for _, r := range reference(t, "wire_metric_conductor_tolerance_printed.csv") {
		w := must(Metric(units.Length(r.number(t, "conductor_mm")) * units.Millimetre))(t)
		limits := w.BareLimits()
		r.printed(t, w.Name(), "tolerance_mm", float64(limits.Max-limits.Nominal)/mm, 0)
		r.printed(t, w.Name(), "tolerance_mm", float64(limits.Nominal-limits.Min)/mm, 0)
		if limits.Estimate {
			t.Errorf("%s: limits marked as an estimate", w.Name())
		}
	}
}

func TestBritishGauge(t *testing.T) {
	for _, r := range reference(t, "wire_swg.csv") {
		w := must(SWG(r.number(t, "swg")))(t)
		book.Close(t, "bare diameter", float64(w.Bare()/units.Inch), r.number(t, "diameter_inch"), 1e-9)
		r.printed(t, w.Name(), "diameter_mm_printed", float64(w.Bare())/mm, 0)
	}
}

func TestCopperConstants(t *testing.T) {
	metal := must(MaterialNamed("copper"))(t)
	got := map[string]float64{
		"resistivity_annealed_copper_20C":               float64(metal.Resistivity),
		"conductivity_annealed_copper":                  1 / float64(metal.Resistivity),
		"temp_coefficient_resistance_20C_constant_mass": float64(metal.Coefficient),
		"density_annealed_copper_20C":                   float64(metal.Density),
	}
	for _, r := range reference(t, "wire_copper_constants.csv") {
		if value, ok := got[r["id"]]; ok {
			delete(got, r["id"])
			book.Close(t, strings.ReplaceAll(r["id"], "_", " "), value, r.number(t, "value"), 3e-8)
		}
	}
	if len(got) != 0 {
		t.Errorf("not in the reference: %v", got)
	}
}

// CRC Handbook, wire tables: silver from the same resistivity to the printed digit, nichrome
// within the 1 % between its 1075 and our rounded 1080 nΩ·m.
func TestWireTablesOfElements(t *testing.T) {
	for _, r := range reference(t, "wire_elements_printed.csv") {
		if r["material"] == "copper" { // of another purity than the annealed standard
			continue
		}
		metal := must(MaterialNamed(r["material"]))(t)
		got := kernel.ResistancePerLength(float64(metal.Resistivity), r.number(t, "diameter_mm")*mm)
		book.Close(t, "resistance of "+r["material"], got, r.number(t, "resistance_ohm_per_m_20C"), 0.0055)
	}
}

// The high end of the breaking load is what a chart prints as the largest for soft wire, to its two digits; what another has as
// the strength of annealed copper, 35 000 psi (chart "Tensile strength chart for wire & cable", brimelectronics.com), lies within.
func TestBreakingStrength(t *testing.T) {
	const pound, psi = 4.4482216152605, 6894.757
	for _, r := range reference(t, "wire_breaking_strength_printed.csv") {
		w := must(AWG(r.number(t, "awg")))(t)
		load := w.BreakingLoad()
		if got, want := float64(load.High), r.number(t, "soft_largest_breaking_strength_lb")*pound; math.Abs(got/want-1) > 0.06 { // two printed digits, and the chart rounds on its own
			t.Errorf("%s: largest breaking load %v, printed %.4g N", w.Name(), load.High, want)
		}
		inch := r.number(t, "diameter_inch") * 0.0254
		if typical := 35000 * psi * math.Pi / 4 * inch * inch; typical < float64(load.Low) || typical > float64(load.High) {
			t.Errorf("%s: %v, want %.4g N within", w.Name(), load, typical)
		}
	}
}

func TestTensionChart(t *testing.T) {
	const pound = 4.4482216152605
	for _, r := range reference(t, "wire_winding_tension_printed.csv") {
		gauge := r.number(t, "awg")
		if gauge == 44 { // see the note of that row
			continue
		}
		most := r.number(t, "largest_tension_lbf") * pound
		w := must(AWG(gauge))(t)
		tension := w.WindingTension()
		// Two printed digits, and the chart's rounding from gauge to gauge: 6 %.
		book.Close(t, "winding tension, high end", float64(tension.High), 0.8*most, 0.06)
		book.Close(t, "winding tension, low end", float64(tension.Low), 0.5*most, 0.06)
		if tension.High > w.BreakingLoad().Low/2 {
			t.Errorf("%s: winding tension %v above half the breaking load", w.Name(), tension.High)
		}
	}
}

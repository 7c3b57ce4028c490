package tables

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

//go:embed materials.csv
var materialsFile string

// Material is one conductor material, soft (annealed) unless its name says otherwise, in
// SI units with temperatures in degrees Celsius.
type Material struct {
	Name              string
	Resistivity       float64 // Ω·m at 20 °C
	Coefficient       float64 // of the resistance at 20 °C, per kelvin
	Density           float64 // kg/m³
	WeakestStrength   float64 // tensile strength in Pa, low end
	StrongestStrength float64 // tensile strength in Pa, high end
	Modulus           float64 // of elasticity, Pa
	WindingStress     float64 // highest stress at which winding leaves the wire as it was, Pa
	Hardening         float64 // exponent n of σ = K·εⁿ
	Coldest, Hottest  float64 // between which the coefficient may be used, °C
	Source            string
}

// Materials returns all conductor materials, copper first.
var Materials = sync.OnceValue(func() []Material {
	all, err := ParseMaterials(materialsFile)
	if err != nil {
		panic("wire: tables: materials.csv: " + err.Error())
	}
	return all
})

// ParseMaterials reads the table of conductor materials.
func ParseMaterials(text string) ([]Material, error) {
	_, body := cutHead(text)
	rows, err := csv.NewReader(strings.NewReader(body)).ReadAll()
	if err != nil {
		return nil, err
	}
	var all []Material
	for _, row := range rows[min(1, len(rows)):] {
		material, err := parseMaterial(row)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", row[0], err)
		}
		all = append(all, material)
	}
	return all, nil
}

func parseMaterial(row []string) (Material, error) {
	if len(row) != 12 || row[11] == "" {
		return Material{}, fmt.Errorf("got %d columns, want 12 and a source in the last", len(row))
	}
	x := make([]float64, len(row))
	for i := 1; i < 11; i++ {
		value, err := strconv.ParseFloat(row[i], 64)
		if err != nil {
			return Material{}, fmt.Errorf("column %d: got %q, want a number", i+1, row[i])
		}
		x[i] = value
	}
	return Material{Name: row[0], Resistivity: x[1] * 1e-9, Coefficient: x[2], Density: x[3],
		WeakestStrength: x[4] * 1e6, StrongestStrength: x[5] * 1e6, Modulus: x[6] * 1e9,
		WindingStress: x[7] * 1e6, Hardening: x[8], Coldest: x[9], Hottest: x[10], Source: row[11]}, nil
}

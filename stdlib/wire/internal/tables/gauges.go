// Package tables holds the wire tables and the conductor materials. Every file in the
// folder gauges is one wire table and every row of materials.csv is one material: adding
// either is adding that file or that row, with its source.
package tables

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

//go:embed gauges/*.csv
var gaugeFiles embed.FS

// Limits is a diameter in metres with the limits its standard allows; zero is "not stated".
type Limits struct{ Min, Nominal, Max float64 }

// Stated reports whether there is a nominal figure.
func (l Limits) Stated() bool { return l.Nominal > 0 }

// Size is one row of a wire table. Overall runs parallel to the builds of the table.
type Size struct {
	Size    float64
	Bare    Limits
	Overall []Limits
}

// Gauge is one wire table.
type Gauge struct {
	System string   // how the sizes are called, such as AWG
	Title  string   // what the table is
	Builds []string // names of the enamel builds, thin first
	Enamel string   // system whose enamel is borrowed where the table has none
	Source string   // publication and what was seen of it
	Note   string   // unit and rounding
	Sizes  []Size   // in the order of the file
}

// Gauges returns all wire tables in the order of their file names.
var Gauges = sync.OnceValue(func() []Gauge {
	entries, err := gaugeFiles.ReadDir("gauges")
	if err != nil {
		panic("wire: tables: " + err.Error())
	}
	var all []Gauge
	for _, entry := range entries {
		text, err := gaugeFiles.ReadFile("gauges/" + entry.Name())
		if err != nil {
			panic("wire: tables: " + err.Error())
		}
		gauge, err := ParseGauge(string(text))
		if err != nil {
			panic("wire: tables: " + entry.Name() + ": " + err.Error())
		}
		all = append(all, gauge)
	}
	return all
})

// ParseGauge reads one wire table: lines "# key: value", a header line, and rows of
// millimetres with three columns for the bare wire and three for every build.
func ParseGauge(text string) (Gauge, error) {
	head, body := cutHead(text)
	gauge := Gauge{System: head["system"], Title: head["title"], Enamel: head["enamel"],
		Source: head["source"], Note: head["note"], Builds: splitList(head["builds"])}
	if gauge.System == "" || gauge.Source == "" {
		return gauge, fmt.Errorf("head: got no system or no source, want both")
	}
	rows, err := csv.NewReader(strings.NewReader(body)).ReadAll()
	if err != nil {
		return gauge, err
	}
	if len(rows) < 2 || len(rows[0]) != 4+3*len(gauge.Builds) {
		return gauge, fmt.Errorf("rows: got %d lines of another width, want size, bare and %d builds", len(rows), len(gauge.Builds))
	}
	for _, row := range rows[1:] {
		size, err := parseSize(row)
		if err != nil {
			return gauge, fmt.Errorf("size %s: %w", row[0], err)
		}
		gauge.Sizes = append(gauge.Sizes, size)
	}
	return gauge, nil
}

// cutHead separates the "# key: value" lines at the start from the rest.
func cutHead(text string) (map[string]string, string) {
	head := map[string]string{}
	for strings.HasPrefix(text, "#") {
		line, rest, _ := strings.Cut(text, "\n")
		key, value, _ := strings.Cut(strings.TrimPrefix(line, "#"), ":")
		head[strings.TrimSpace(key)] = strings.TrimSpace(value)
		text = rest
	}
	return head, text
}

func splitList(text string) []string {
	var list []string
	for _, item := range strings.Split(text, ";") {
		if item = strings.TrimSpace(item); item != "" {
			list = append(list, item)
		}
	}
	return list
}

func parseSize(row []string) (Size, error) {
	numbers := make([]float64, len(row))
	for i, field := range row {
		if field == "" {
			continue
		}
		x, err := strconv.ParseFloat(field, 64)
		if err != nil || !(x > 0) {
			return Size{}, fmt.Errorf("column %d: got %q, want a positive number", i+1, field)
		}
		numbers[i] = x
	}
	size := Size{Size: numbers[0], Bare: millimetres(numbers[1:])}
	for i := 4; i < len(numbers); i += 3 {
		size.Overall = append(size.Overall, millimetres(numbers[i:]))
	}
	return size, nil
}

func millimetres(x []float64) Limits { return Limits{x[0] / 1e3, x[1] / 1e3, x[2] / 1e3} }

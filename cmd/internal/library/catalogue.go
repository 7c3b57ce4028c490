// Package library is the one place that knows everything a notebook may use. It joins the
// generated declarations, symbols and help into the value that the engine is handed.
package library

//go:generate go run ./generate

// Package is one package that notebooks may use.
type Package struct {
	Path string
	Only string // names in scope where not all are, separated by spaces
}

// Catalogue lists the packages of the library, and what is let in of Go's own: nothing
// that reads a clock, a file, the network or the environment.
func Catalogue() []Package {
	return []Package{
		{"lode/units", ""},
		{"lode/units/frame", ""},
		{"lode/units/ladder", ""},
		{"lode/stdlib/wire", ""},
		{"lode/stdlib/coil", ""},
		{"lode/stdlib/circuit", ""},
		{"lode/stdlib/load", ""},
		{"lode/stdlib/transformer", ""},
		{"lode/stdlib/piezo", ""},
		{"lode/stdlib/study", ""},
		{"lode/stdlib/data", ""},
		{"lode/stdlib/chance", ""},
		{"lode/render/figure", ""},
		{"lode/render/schematic", ""},
		{"lode/render/table", ""},
		{"lode/render/template", ""},
		{"math", ""},
		{"math/cmplx", ""},
		{"fmt", "Sprint Sprintf Sprintln Print Printf Println Errorf"},
		{"strings", "Builder Contains ContainsAny ContainsRune Count Cut CutPrefix CutSuffix EqualFold Fields HasPrefix HasSuffix Index IndexByte Join LastIndex Map NewReplacer Repeat Replace ReplaceAll Replacer Split SplitN Title ToLower ToUpper Trim TrimFunc TrimLeft TrimPrefix TrimRight TrimSpace TrimSuffix"},
		{"strconv", "Atoi FormatFloat FormatInt Itoa ParseBool ParseFloat ParseInt Quote"},
		{"sort", "Float64s Ints Search SearchFloat64s SearchInts Slice SliceIsSorted SliceStable Strings"},
		{"errors", "As Is Join New Unwrap"},
	}
}

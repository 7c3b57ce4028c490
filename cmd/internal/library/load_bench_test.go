package library_test

import (
	"testing"
)

// BenchmarkLoad reads the library's declarations and symbols, as every child does once.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		load(b)
	}
}

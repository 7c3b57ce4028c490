package library_test

import "testing"

// BenchmarkWatched calls a function that is looked at for its range ten thousand times, and the same
// with nothing to look for.
func BenchmarkWatched(b *testing.B) {
	const cell = `
c := coil.Wind(coil.Racetrack{CoreLength: 60*mm, CoreWidth: 6*mm, Height: 8*mm, FlangeWidth: 20*mm}, wire.AWG(42), 5000)
sum := 0 * ohm
for i := range 10000 {
	sum += c.ResistanceAC(1*kHz + float64(i)*0.1*Hz)
}
sum`
	lib := load(b)
	b.Run("looked at", func(b *testing.B) { benchmarkCell(b, lib, cell) })
	plain := *lib
	plain.Ranges = nil
	b.Run("left alone", func(b *testing.B) { benchmarkCell(b, &plain, cell) })
}

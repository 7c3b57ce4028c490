// Command search looks for the series colours of a theme: the set of hues and lightnesses
// whose least distance under every kind of colour vision is largest, with enough contrast
// against the paper. It prints rows for the table in theme.go. The seed is fixed.
package main

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"

	"lode/render/internal/colour"
)

type triple struct{ l, c, h float64 }

type limits struct {
	paper                           colour.RGB
	contrast, first, chroma, bright float64
}

func main() {
	paper := flag.String("paper", "#ffffff", "background")
	count := flag.Int("n", 6, "number of colours")
	contrast := flag.Float64("contrast", 4.6, "least contrast against the paper")
	first := flag.Float64("first", 250, "hue in degrees of the first colour")
	seed := flag.Uint64("seed", 1, "random seed")
	chroma := flag.Float64("chroma", 0.17, "most chroma")
	bright := flag.Float64("bright", 0.88, "most lightness")
	flag.Parse()
	background, err := colour.Hex(*paper)
	if err != nil {
		panic("search: " + err.Error())
	}
	random := rand.New(rand.NewPCG(*seed, 7))
	best, score := climb(random, limits{background, *contrast, *first, *chroma, *bright}, *count)
	fmt.Printf("// least distance %.4f\n", score)
	for _, t := range best {
		fmt.Printf("{%.3f, %.3f, %.0f}, // %s\n", t.l, t.c, t.h, colour.LCh(t.l, t.c, t.h).RGB().Hex())
	}
}

// climb is simulated search with restarts: one colour of the set is moved at a time and the
// move kept when the set does not get worse.
func climb(random *rand.Rand, within limits, n int) ([]triple, float64) {
	var best []triple
	score := 0.0
	for range 40 {
		set := make([]triple, n)
		for i := range set {
			set[i] = draw(random, within)
		}
		now := apart(set)
		for step := range 6000 {
			size := 1 - float64(step)/6000
			i := random.IntN(n)
			old := set[i]
			set[i] = triple{old.l + 0.2*size*random.NormFloat64(), old.c + 0.08*size*random.NormFloat64(), old.h + 90*size*random.NormFloat64()}
			if i == 0 {
				set[i].h = within.first + 10*random.NormFloat64()
			}
			next := apart(set)
			if !allowed(set[i], within) || next < now {
				set[i] = old
				continue
			}
			now = next
		}
		if now > score {
			best, score = append([]triple(nil), set...), now
		}
	}
	return best, score
}

func draw(random *rand.Rand, within limits) triple {
	for {
		t := triple{0.3 + 0.6*random.Float64(), 0.05 + 0.15*random.Float64(), 360 * random.Float64()}
		if allowed(t, within) {
			return t
		}
	}
}

// allowed keeps colours that a screen can show, that read as a colour rather than as grey or
// neon, and that stand out from the paper.
func allowed(t triple, within limits) bool {
	c := colour.LCh(t.l, t.c, t.h).RGB()
	return c.Shown() && t.c > 0.06 && t.c < within.chroma && t.l > 0.34 && t.l < within.bright &&
		colour.Contrast(c, within.paper) >= within.contrast
}

// apart scores a set: its least distance under every vision, held back when two hues come
// closer than 36 degrees, so that each colour also has a name of its own.
func apart(set []triple) float64 {
	colours, gap := make([]colour.RGB, len(set)), 180.0
	for i, t := range set {
		colours[i] = colour.LCh(t.l, t.c, t.h).RGB()
		for _, o := range set[:i] {
			gap = min(gap, math.Abs(math.Remainder(t.h-o.h, 360)))
		}
	}
	return min(colour.Apart(colours), gap/36*0.12)
}

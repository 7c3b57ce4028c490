// Package chance gives random numbers that are the same in every run: a sequence begins
// with a seed that stands in the notebook, and nothing else decides it.
//
//	d := chance.Seed(7)
//	r := 500*kΩ * d.Around(1, 0.05)
//
// The numbers are factors without a unit; a quantity is multiplied by one.
package chance

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// Draws is a sequence of random numbers. Each draw takes the next one.
type Draws struct {
	source *rand.PCG
	spare  float64
	spared bool
}

// Seed begins a sequence. The same seed always gives the same sequence; two seeds give
// sequences that have nothing to do with each other.
//
// Source: permuted congruential generator with 128 bits of state and the output function
// DXSM. M. E. O'Neill, PCG: A Family of Simple Fast Space-Efficient Statistically Good
// Algorithms for Random Number Generation, Harvey Mudd College HMC-CS-2014-0905, 2014.
//
// Caution: the numbers are for simulations; they keep no secrets.
//
// Example: d := chance.Seed(7)
func Seed(seed int) *Draws {
	return &Draws{source: rand.NewPCG(uint64(seed), streams)}
}

// streams is the second half of every seed: the fraction of the golden ratio in 64 bits.
const streams = 0x9e3779b97f4a7c15

// Products are rounded before they are added, so that no processor joins the two steps.

// unit draws a number from 0 to below 1, each of 2^53 steps equally likely.
func (d *Draws) unit() float64 { return float64(d.source.Uint64()>>11) / (1 << 53) }

// Between draws a number from low to high, each equally likely.
//
// Example: d.Between(0.9, 1.1)
func (d *Draws) Between(low, high float64) (float64, error) {
	if !(low <= high) || math.IsInf(low, 0) || math.IsInf(high, 0) {
		return 0, fmt.Errorf("chance.Between: low and high: got %g and %g, want two finite numbers, the lower one first", low, high)
	}
	u := d.unit()
	return min(float64(low*(1-u))+float64(high*u), high), nil
}

// Around draws from the normal distribution with this mean and standard deviation.
//
// Source: G. E. P. Box and M. E. Muller, A Note on the Generation of Random Normal Deviates,
// Annals of Mathematical Statistics 29 (1958), pp. 610-611.
//
// Example: d.Around(1, 0.05)
func (d *Draws) Around(mean, deviation float64) (float64, error) {
	if math.IsNaN(mean) || math.IsInf(mean, 0) || !(deviation >= 0) || math.IsInf(deviation, 0) {
		return 0, fmt.Errorf("chance.Around: mean and deviation: got %g and %g, want two finite numbers, the deviation 0 or more", mean, deviation)
	}
	return mean + float64(deviation*d.normal()), nil
}

// normal gives the two deviates that come of each pair of draws one after the other.
func (d *Draws) normal() float64 {
	if d.spared {
		d.spared = false
		return d.spare
	}
	radius := math.Sqrt(-2 * math.Log(1-d.unit()))
	sin, cos := math.Sincos(2 * math.Pi * d.unit())
	d.spare, d.spared = radius*sin, true
	return radius * cos
}

// Whole draws a whole number from low to high, both included, each equally likely.
//
// Example: d.Whole(1, 6)
func (d *Draws) Whole(low, high int) (int, error) {
	if low > high {
		return 0, fmt.Errorf("chance.Whole: low and high: got %d and %d, want the lower one first", low, high)
	}
	span := uint64(high) - uint64(low) + 1
	if span == 0 {
		return int(d.source.Uint64()), nil
	}
	// What lies beyond the last whole multiple of span is drawn again.
	last := math.MaxUint64 - (math.MaxUint64%span+1)%span
	for {
		if x := d.source.Uint64(); x <= last {
			return int(uint64(low) + x%span), nil
		}
	}
}

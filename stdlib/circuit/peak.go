package circuit

import (
	"fmt"
	"math"

	"lode/units"
)

// This file reads what people ask of a response. The points of the curve only say where to
// look; each answer is then refined on the network until its frequency stands to 1e-9.

// Peak is the resonance of a response.
type Peak struct {
	Frequency units.Frequency // where the level is highest
	Height    units.Level     // above the plateau
	Level     units.Level     // relative to the source
	Q         float64         // quality factor, from the height
}

// String writes frequency, height and quality factor.
func (p Peak) String() string {
	return fmt.Sprintf("%v, %v above the plateau, Q %s", p.Frequency, p.Height, units.Digits(p.Q, 3))
}

// smallest is the height in dB that makes a maximum a resonance and not a curve gone flat.
const smallest = 0.005

// Peak returns the highest resonance: its frequency, its height over the plateau at lower
// frequencies, its level and its quality factor.
//
// Source: the quality factor is that of the two-pole low-pass with a peak of the same height h,
// h² = Q²/(1 - 1/(4Q²)), a textbook relation (such as Van Valkenburg, Analog Filter Design, 1982).
func (r Response) Peak() (Peak, error) {
	if r.curve == nil {
		return Peak{}, r.empty()
	}
	plateau, best, at := r.plateau(), math.Inf(-1), -1
	levels := make([]float64, len(r.values))
	for i, v := range r.values {
		levels[i] = decibels(v)
	}
	for i := 1; i+1 < len(levels); i++ {
		if level := levels[i]; level > best && level >= levels[i-1] && level >= levels[i+1] {
			best, at = level, i
		}
	}
	if at < 0 {
		return Peak{}, r.noPeak()
	}
	f := maximum(r.level, r.points[at-1], r.points[at+1])
	level := r.level(f)
	if !(level-plateau >= smallest) {
		return Peak{}, r.noPeak()
	}
	return Peak{units.Frequency(f), units.Level(level - plateau), units.Level(level), quality(level - plateau)}, nil
}

func (r Response) noPeak() error {
	return fmt.Errorf("%s: no resonance: the level has no peak from %v to %v\nhint: a heavily loaded coil has none; the Cutoff of a sweep is its -3 dB point", called("response", r.label), r.Low(), r.High())
}

// quality inverts the height of a two-pole low-pass's peak.
func quality(height float64) float64 {
	h2 := math.Pow(10, height/10)
	return math.Sqrt((h2 + math.Sqrt(h2*(h2-1))) / 2)
}

// Resonance returns the frequency of the highest peak.
func (r Response) Resonance() (units.Frequency, error) {
	p, err := r.Peak()
	return p.Frequency, err
}

// Q returns the quality factor of the resonance, from its height.
func (r Response) Q() (float64, error) {
	p, err := r.Peak()
	return p.Q, err
}

// Plateau returns the level that heights and corners are counted from: the one towards zero
// frequency if the curve is flat there, else the one in the middle of the flattest octave.
func (r Response) Plateau() (units.Level, error) {
	if r.curve == nil {
		return 0, r.empty()
	}
	return units.Level(r.plateau()), nil
}

func (r Response) plateau() float64 {
	low := r.points[0]
	if rest := r.level(low / 1e3); math.Abs(rest-r.level(low)) < 0.5 {
		return rest
	}
	return r.flattest()
}

// octave is how many steps an octave has where the flattest one is looked for.
const octave = 8

// flattest returns the level in the middle of the flattest octave.
func (r Response) flattest() float64 {
	levels := r.eighths()
	flattest, best, floor := math.Inf(1), r.level(r.points[0]), r.highest()-quiet
	for i := 0; i+octave < len(levels); i++ {
		middle := levels[i+octave/2]
		change := math.Max(math.Abs(levels[i]-middle), math.Abs(levels[i+octave]-middle))
		if change < flattest && middle > floor {
			flattest, best = change, middle
		}
	}
	return best
}

// eighths returns the levels at each eighth of an octave.
func (r Response) eighths() []float64 {
	low, last := r.points[0], r.points[len(r.points)-1]
	var levels []float64
	for f := low; f <= last*(1+fine); f = low * math.Pow(2, float64(len(levels))/octave) {
		levels = append(levels, r.level(f))
	}
	return levels
}

// quiet is how many dB below the highest level a plateau is not looked for.
const quiet = 20

func (r Response) highest() float64 {
	top := 0.0
	for _, v := range r.values {
		top = math.Max(top, power(v))
	}
	return 10*math.Log10(top) + decibels(complex(r.scale, 0))
}

// halfPower is the -3 dB that means half the power.
var halfPower = units.Level(-10 * math.Log10(2))

// Cutoff returns the highest frequency at which the level is 3 dB (half the power) below the
// plateau: the upper end of what the circuit lets through.
func (r Response) Cutoff() (units.Frequency, error) {
	all, err := r.Crossings(halfPower)
	if err != nil {
		return 0, err
	}
	for i := len(all) - 1; i >= 0; i-- {
		if r.falling(all[i]) {
			return all[i], nil
		}
	}
	return 0, fmt.Errorf("%s: no upper -3 dB point from %v to %v\nhint: sweep to a higher frequency", called("response", r.label), r.Low(), r.High())
}

// LowCutoff returns the lowest frequency at which the level comes within 3 dB (half the power)
// of the plateau from below: the lower end of what the circuit lets through.
func (r Response) LowCutoff() (units.Frequency, error) {
	all, err := r.Crossings(halfPower)
	if err != nil {
		return 0, err
	}
	for _, f := range all {
		if !r.falling(f) {
			return f, nil
		}
	}
	return 0, fmt.Errorf("%s: no lower -3 dB point from %v to %v\nhint: sweep from a lower frequency", called("response", r.label), r.Low(), r.High())
}

func (r Response) falling(f units.Frequency) bool {
	return r.level(f.SI()*(1+1e-6)) < r.level(f.SI()*(1-1e-6))
}

// Crossings returns all frequencies of the range at which the level crosses the given one, counted from
// the plateau.
func (r Response) Crossings(level units.Level) ([]units.Frequency, error) {
	if r.curve == nil {
		return nil, r.empty()
	}
	if math.IsNaN(level.SI()) {
		return nil, fmt.Errorf("%s: level: %w: got %v, want a number of dB", called("response", r.label), ErrValue, level)
	}
	target := r.plateau() + level.SI()
	over := func(hertz float64) float64 { return r.level(hertz) - target }
	var found []units.Frequency
	below := func(i int) bool { return r.ratio(r.values[i])-target < 0 }
	was := below(0)
	for i := 1; i < len(r.points); i++ {
		is := below(i)
		if is != was {
			found = append(found, units.Frequency(root(over, r.points[i-1], r.points[i])))
		}
		was = is
	}
	return found, nil
}

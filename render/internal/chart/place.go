package chart

import (
	"math"
	"sort"
)

// Box is a rectangle on the drawing, X to the right and Y downwards.
type Box struct{ Left, Top, Right, Bottom float64 }

// Overlaps reports whether the boxes share more than an edge.
func (b Box) Overlaps(o Box) bool {
	return b.Left < o.Right && o.Left < b.Right && b.Top < o.Bottom && o.Top < b.Bottom
}

// Within reports whether b lies in o.
func (b Box) Within(o Box) bool {
	return b.Left >= o.Left && b.Right <= o.Right && b.Top >= o.Top && b.Bottom <= o.Bottom
}

func (b Box) moved(p Point) Box {
	return Box{b.Left + p.X, b.Top + p.Y, b.Right + p.X, b.Bottom + p.Y}
}

// Stack moves intervals that want to be centred at want so that none overlap and all lie
// between low and high, with the least sum of squared moves. It returns the new centres in
// the given order; ok is false when they do not fit at all, and then they are spread evenly.
//
// Sorted by where they want to be, neighbours that collide are merged into a block that
// moves as one to its members' mean; blocks that collide merge in turn. This is the "pool
// adjacent violators" method of isotonic regression (R. E. Barlow and others, Statistical
// Inference under Order Restrictions, 1972), after taking off the lengths before each one.
func Stack(want, size []float64, low, high float64) (centres []float64, ok bool) {
	order := make([]int, len(want))
	total := 0.0
	for i := range order {
		order[i] = i
		total += size[i]
	}
	sort.SliceStable(order, func(i, j int) bool { return want[order[i]] < want[order[j]] })
	room := high - low - total
	goals, before := make([]float64, len(order)), 0.0
	for n, i := range order {
		goals[n] = want[i] - size[i]/2 - low - before
		before += size[i]
	}
	shifts, before := pooled(goals), 0.0
	centres = make([]float64, len(want))
	for n, i := range order {
		shift := min(max(shifts[n], 0), max(room, 0))
		if room < 0 {
			shift = room * float64(n) / max(1, float64(len(order)-1))
		}
		centres[i] = low + shift + before + size[i]/2
		before += size[i]
	}
	return centres, room >= 0
}

// pooled returns the non-decreasing sequence nearest to goals in least squares.
func pooled(goals []float64) []float64 {
	type block struct{ sum, count float64 }
	var blocks []block
	for _, g := range goals {
		blocks = append(blocks, block{g, 1})
		for k := len(blocks) - 1; k > 0 && blocks[k-1].sum/blocks[k-1].count > blocks[k].sum/blocks[k].count; k-- {
			blocks[k-1].sum += blocks[k].sum
			blocks[k-1].count += blocks[k].count
			blocks = blocks[:k]
		}
	}
	var result []float64
	for _, b := range blocks {
		for range int(b.count) {
			result = append(result, b.sum/b.count)
		}
	}
	return result
}

// Field is a panel on the drawing with what labels must keep clear of.
type Field struct {
	Frame  Box
	Taken  []Box // labels
	Rings  []Box // marked points
	Curves [][]Point
}

// Label finds a place for a label of the given size beside p: the free place that covers
// least of the curves and lies nearest. The place is taken from then on; ok is false when
// every place would run into another label or out of the frame.
func (f *Field) Label(p Point, width, height float64) (place Box, ok bool) {
	best := math.Inf(1)
	for _, c := range candidates(width, height) {
		box := c.moved(p)
		if !box.Within(f.Frame) || meets(box, f.Taken) || meets(box, f.Rings) {
			continue
		}
		dx, dy := (c.Left+c.Right)/2, (c.Top+c.Bottom)/2
		cost := 4*f.covered(box) + 0.2*math.Hypot(dx/width, dy/height) + f.crossed(p, box)
		if cost < best {
			best, place, ok = cost, box, true
		}
	}
	if ok {
		f.Taken = append(f.Taken, place)
	}
	return place, ok
}

// candidates are the places around the origin, near ones first.
func candidates(width, height float64) []Box {
	var places []Box
	for _, gap := range []float64{7, 14, 26, 42, 64} {
		for _, c := range []Point{
			{gap, -height / 2}, {-width / 2, -gap - height}, {gap * 0.7, -gap*0.7 - height}, {-width - gap*0.7, -gap*0.7 - height},
			{-width - gap, -height / 2}, {gap * 0.7, gap * 0.7}, {-width - gap*0.7, gap * 0.7}, {-width / 2, gap},
		} {
			places = append(places, Box{c.X, c.Y, c.X + width, c.Y + height})
		}
	}
	return places
}

// Nearest returns the point of b nearest to p.
func (b Box) Nearest(p Point) Point {
	return Point{min(max(p.X, b.Left), b.Right), min(max(p.Y, b.Top), b.Bottom)}
}

// crossed counts what the way from p to a label at b runs over, other than p's own ring.
func (f *Field) crossed(p Point, b Box) float64 {
	to, count := b.Nearest(p), 0.0
	for _, r := range append(append([]Box(nil), f.Taken...), f.Rings...) {
		own := p.X > r.Left && p.X < r.Right && p.Y > r.Top && p.Y < r.Bottom
		if !own && under(p, to, r, 1) > 0 {
			count += 1.5
		}
	}
	return count
}

func meets(b Box, taken []Box) bool {
	for _, t := range taken {
		if b.Overlaps(t) {
			return true
		}
	}
	return false
}

// covered measures the length of curve under b, as a share of the box's width.
func (f *Field) covered(b Box) float64 {
	const step = 3
	length := 0.0
	for _, curve := range f.Curves {
		for i := 1; i < len(curve); i++ {
			length += under(curve[i-1], curve[i], b, step)
		}
	}
	return length / (b.Right - b.Left)
}

func under(a, c Point, b Box, step float64) float64 {
	if max(a.X, c.X) < b.Left || min(a.X, c.X) > b.Right || max(a.Y, c.Y) < b.Top || min(a.Y, c.Y) > b.Bottom {
		return 0
	}
	long := math.Hypot(c.X-a.X, c.Y-a.Y)
	n := int(long/step) + 1
	inside := 0
	for i := range n {
		t := (float64(i) + 0.5) / float64(n)
		x, y := a.X+t*(c.X-a.X), a.Y+t*(c.Y-a.Y)
		if x > b.Left && x < b.Right && y > b.Top && y < b.Bottom {
			inside++
		}
	}
	return long * float64(inside) / float64(n)
}

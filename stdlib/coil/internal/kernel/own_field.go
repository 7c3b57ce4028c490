package kernel

import "math"

// The field of a winding at its own wires decides the proximity losses. The window is cut into
// cells with a closed filament through the middle of each, and the field is taken at the
// corners of the cells, where the pull of the filaments around cancels. Filaments are made of
// straight pieces, whose field is Biot and Savart's law in closed form.

// OwnSquare returns the mean over the wire of B² for one ampere-turn in the window, in T².
// Windows up to some thirty times as high as deep are cut into cells that are about square.
func (w Window) OwnSquare() float64 {
	const deep = 4
	high := 4 * int(math.Ceil(math.Max(1, math.Min(32, w.Height/w.Build*deep/4))))
	sum, total := 0.0, 0.0
	filaments := w.filaments(deep, high)
	for i := range deep + 1 {
		t, wt := w.Build*float64(i)/deep, simpsonWeight(i, deep)
		for j := range high/2 + 1 {
			z, wz := w.Height*float64(j)/float64(high), simpsonWeight(j, high/2)
			w.along(w.Radius+t, func(x, y, length float64) {
				B := Vector{}
				for _, f := range filaments {
					B = B.Plus(1/float64(len(filaments)), polygonField(f, Vector{x, y, z}))
				}
				sum, total = sum+wt*wz*length*B.Dot(B), total+wt*wz*length
			})
		}
	}
	return sum / total
}

// Turn is where the middle of a wire lies: how deep over the core, how high over the middle.
type Turn struct{ Depth, Z float64 }

// OwnSquareOf is OwnSquare for turns that lie in known places: the mean of B² that each has from all others. Of many it looks at
// some, spread over the winding.
func (w Window) OwnSquareOf(turns []Turn) float64 {
	const most = 97 // prime, so that it meets no rows
	filaments := make([][]Vector, len(turns))
	for i, t := range turns {
		filaments[i] = w.corners(w.Radius+t.Depth, t.Z)
	}
	sum, total, looked := 0.0, 0.0, min(most, len(turns))
	for i := range looked {
		own := (2*i + 1) * len(turns) / (2 * looked)
		w.onPolygon(filaments[own], func(at Vector, length float64) {
			B := Vector{}
			for j, f := range filaments {
				if j != own {
					B = B.Plus(1/float64(len(turns)), polygonField(f, at))
				}
			}
			sum, total = sum+length*B.Dot(B), total+length
		})
	}
	return sum / total
}

// simpsonWeight is the weight of place i in Simpson's rule over an even number n of steps.
func simpsonWeight(i, n int) float64 {
	if i == 0 || i == n {
		return 1
	}
	return float64(2 + 2*(i%2))
}

// along visits points of a quarter of the turn with corners of radius R, with the length that each stands for.
func (w Window) along(R float64, visit func(x, y, length float64)) {
	rule(2, 0, w.Along/2, func(x, length float64) { visit(x, w.Across/2+R, length) })
	rule(2, 0, math.Pi/2, func(φ, weight float64) {
		visit(w.Along/2+R*math.Cos(φ), w.Across/2+R*math.Sin(φ), R*weight)
	})
	rule(1, 0, w.Across/2, func(y, length float64) { visit(w.Along/2+R, y, length) })
}

// onPolygon visits points of a quarter of a turn on the chords that stand for it, which those of its neighbours run along, with
// the length that each stands for.
func (w Window) onPolygon(points []Vector, visit func(at Vector, length float64)) {
	middle := func(a, b Vector) (Vector, float64) {
		d := b.Plus(-1, a)
		return a.Plus(0.5, d), math.Sqrt(d.Dot(d))
	}
	for _, i := range []int{1, 4} {
		at, length := middle(points[i], points[i+1])
		visit(at, length*chords/2)
	}
	rule(2, 0, w.Along/2, func(x, length float64) { visit(Vector{x, points[chords][1], points[0][2]}, length) })
	rule(1, 0, w.Across/2, func(y, length float64) { visit(Vector{points[0][0], y, points[0][2]}, length) })
}

// chords stand for a quarter of a circle.
const chords = 6

// filaments returns the corners of the closed filament through each cell.
func (w Window) filaments(deep, high int) [][]Vector {
	var list [][]Vector
	for i := range deep {
		for j := range high {
			R := w.Radius + w.Build*(float64(i)+0.5)/float64(deep)
			list = append(list, w.corners(R, w.Height*((float64(j)+0.5)/float64(high)-0.5)))
		}
	}
	return list
}

// corners walks around a turn, its arcs in chords that lie as much outside as inside of them.
func (w Window) corners(R, z float64) []Vector {
	step := math.Pi / 2 / chords
	R /= (2 + math.Cos(step/2)) / 3
	var points []Vector
	for q, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		for i := range chords + 1 {
			sin, cos := math.Sincos(math.Pi/2*float64(q) + step*float64(i))
			points = append(points, Vector{c[0]*w.Along/2 + R*cos, c[1]*w.Across/2 + R*sin, z})
		}
	}
	return points
}

// polygonField returns the flux density at r of 1 A around a level polygon, in tesla.
//
// Source: M. A. Hanson, S. P. Hirshman, Compact expressions for the Biot-Savart fields of a filamentary segment,
// Physics of Plasmas 9 (2002) 4410-4412.
func polygonField(points []Vector, r Vector) Vector {
	last := points[len(points)-1]
	x, y, z := r[0]-last[0], r[1]-last[1], r[2]-last[2]
	a := math.Sqrt(x*x + y*y + z*z)
	var across, along, axial float64
	for i := range points {
		nx, ny := r[0]-points[i][0], r[1]-points[i][1]
		b := math.Sqrt(nx*nx + ny*ny + z*z)
		if down := a * b * (a*b + x*nx + y*ny + z*z); down > 0 {
			scale := 1e-7 * (a + b) / down
			across += scale * (y - ny)
			along += scale * (nx - x)
			axial += scale * (x*ny - y*nx)
		}
		x, y, a = nx, ny, b
	}
	return Vector{across * z, along * z, axial}
}

package induct

import "math"

// selfTasks lists the pairs of a skeleton with itself. A rectangle is mapped to itself by two
// reflections, a line by one half turn, so one corner stands for all.
func selfTasks(pieces []piece) []task {
	n := len(pieces)
	switch n {
	case 2: // a circle has one arc and no side
		return []task{{0, 0, 1}}
	case 4, 8:
		return symmetricTasks(n)
	}
	return allTasks(n, n)
}

// symmetricTasks: pieces 0, 2, ... are equal corners, 1, 3, ... sides equal in opposite pairs.
func symmetricTasks(n int) []task {
	corners := float64(n / 2)
	tasks := make([]task, 0, 2*n)
	for j := range n {
		times := corners
		if j%2 == 1 {
			times *= 2 // the side with the corner, and the corner with the side
		}
		tasks = append(tasks, task{0, j, times})
	}
	for i := 1; i <= n/2; i += 2 {
		tasks = append(tasks, task{i, i, 2}, task{i, (i + n/2) % n, 2})
	}
	return tasks
}

func allTasks(np, nq int) []task {
	tasks := make([]task, 0, np*nq)
	for i := range np {
		for j := range nq {
			tasks = append(tasks, task{i, j, 1})
		}
	}
	return tasks
}

func (s Section) size() float64 {
	return math.Max(math.Max(s.CoreLength, s.CoreWidth)+2*s.Build, s.Height)
}

func selfAt(s Section, digits float64) float64 {
	a, b := s.straights()
	pieces := skeletonPieces(rectangleSkeleton(a, b))
	w := s.window()
	e := engine{
		k: axial(s.Height, s.Height, 0, s.size()), p: pieces, q: pieces, wp: w, wq: w,
		common: true, height: s.Height, digits: digits,
	}
	tasks := selfTasks(pieces)
	return Mu0 / (4 * math.Pi) * e.total(tasks)
}

// Self is the inductance of a winding in henry and an estimate of its relative error.
func Self(s Section, turns float64) (inductance, relative float64) {
	l := selfAt(s, 15)
	rough := selfAt(s, 12)
	return turns * turns * l, math.Abs(rough/l - 1)
}

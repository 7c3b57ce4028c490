package induct

// This file lists pairs of pieces, using the symmetry of the outlines: a rectangle is
// mapped to itself by two reflections, so one corner stands for all four. Pieces 0, 2, ... are
// corners, 1, 3, ... sides.

// A task is a pair of pieces and the number of pairs that equal it by symmetry.
type task struct {
	p, q  int
	times float64
}

// selfTasks is for a winding with itself: a corner with a side is a side with a corner.
func selfTasks(pieces int) []task {
	tasks := coaxialTasks(pieces)
	if pieces != 4 && pieces != 8 {
		return tasks
	}
	kept := tasks[:0]
	for _, t := range tasks {
		switch {
		case t.p%2 == 1 && t.q%2 == 0:
			continue
		case t.p%2 == 0 && t.q%2 == 1:
			t.times *= 2
		}
		kept = append(kept, t)
	}
	return kept
}

// coaxialTasks is for two windings on one skeleton.
func coaxialTasks(pieces int) []task {
	switch pieces {
	case 1:
		return []task{{0, 0, 1}}
	case 4:
		return []task{{0, 0, 2}, {0, 2, 2}, {0, 1, 4}, {1, 0, 4}, {1, 1, 2}, {1, 3, 2}}
	case 8:
		return rectangleTasks()
	}
	return allTasks(pieces, pieces)
}

// rectangleTasks is for two outlines of four corners each with the axes in common.
func rectangleTasks() []task {
	tasks := make([]task, 0, 20)
	for j := range 8 {
		tasks = append(tasks, task{0, j, 4})
		if j%2 == 1 {
			tasks = append(tasks, task{j, 0, 4})
		}
	}
	return append(tasks, task{1, 1, 2}, task{1, 5, 2}, task{3, 3, 2}, task{3, 7, 2})
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

// An image is where the pieces of quarters go when an outline is mapped to itself.
type image [8]int

var (
	mirrors = [2]image{{2, 1, 0, 7, 6, 5, 4, 3}, {6, 5, 4, 3, 2, 1, 0, 7}} // length or width turned round
	halfWay = image{4, 5, 6, 7, 0, 1, 2, 3}                                // half a turn
)

// parallelTasks is for two outlines of four corners, one of which may lie on the width's or the length's axis of the
// other, or on both, and level with it.
func parallelTasks(onWidth, onLength, level bool) []task {
	tasks := allTasks(8, 8)
	switch {
	case onWidth && onLength:
		return halved(tasks, halfWay)
	case onWidth && level:
		return halved(tasks, mirrors[0])
	case onLength && level:
		return halved(tasks, mirrors[1])
	}
	return tasks
}

// halved is for two outlines that are both mapped to themselves at once: of two pairs that are mapped to each other only one
// is kept.
func halved(tasks []task, mirror image) []task {
	kept := tasks[:0]
	for _, t := range tasks {
		p, q := mirror[t.p], mirror[t.q]
		switch {
		case p == t.p && q == t.q:
			kept = append(kept, t)
		case t.p < p || t.p == p && t.q < q:
			t.times *= 2
			kept = append(kept, t)
		}
	}
	return kept
}

package induct

import (
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"lode/stdlib/pace"
)

// This file shares out the work of one integral among processors. What each part gives does
// not depend on who did it, and the parts are added in order, so that the sum is the same to
// the last digit on any machine.

// mostWorkers is the number of processors that one integral takes.
const mostWorkers = 4

// workers is how many do n parts.
func workers(n int) int { return min(mostWorkers, runtime.GOMAXPROCS(0), n) }

// share calls part for 0 to n-1; worker tells which of some workers does it.
func share(n int, part func(worker, i int)) {
	count := workers(n)
	tell, done := pace.Claim()
	defer done()
	var next atomic.Int64
	work := func(worker int) {
		for i := int(next.Add(1)) - 1; i < n && !pace.Stopped(); i = int(next.Add(1)) - 1 {
			if worker == 0 {
				tell(float64(i) / float64(n))
			}
			part(worker, i)
		}
	}
	var others sync.WaitGroup
	for worker := 1; worker < count; worker++ {
		others.Go(func() { work(worker) })
	}
	work(0)
	others.Wait()
}

// Sum adds up parts that are worked out side by side.
func Sum(parts ...func() float64) float64 {
	values := make([]float64, len(parts))
	share(len(parts), func(_, i int) { values[i] = parts[i]() })
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum
}

// shared is total with several engines at work, where there is enough to do.
func (e *engine) shared(tasks []task) float64 {
	if e.quick && e.common {
		if s, ok := e.k.(*sheets); ok {
			e.k = s.tabled()
		}
		return e.total(tasks)
	}
	engines, values := [mostWorkers]engine{}, make([]float64, len(tasks))
	for i := range workers(len(tasks)) {
		engines[i] = *e
		engines[i].nodes, engines[i].joints, engines[i].corners = nil, nil, nil
		if s, ok := e.k.(*sheets); ok && e.quick {
			engines[i].k = s.tabled()
		}
	}
	share(len(tasks), func(worker, i int) { values[i] = tasks[i].times * engines[worker].pair(tasks[i].p, tasks[i].q) })
	sum := 0.0
	for _, v := range values {
		sum, e.parts = sum+v, e.parts+math.Abs(v)
	}
	return sum
}

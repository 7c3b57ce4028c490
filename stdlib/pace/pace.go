// Package pace lets a long calculation of the library say how far it is, and end early when it is
// asked to. It holds the only state that packages of ours share: a request to stop, and who
// watches. Neither changes what a calculation gives that is let run to its end.
//
// After Stop, what a calculation returns is of no use, and whoever asked throws it away.
package pace

import (
	"iter"
	"sync/atomic"
)

var (
	stopped atomic.Bool
	told    atomic.Bool // some calculation is being told of; those within it are not
	watcher atomic.Pointer[func(part float64)]
)

// Watch takes back an earlier request to stop, and has watch told how far the outermost long
// calculation is, from 0 to 1, until forget is called. It is told often, from the goroutine of the
// calculation, and has to be quick.
func Watch(watch func(part float64)) (forget func()) {
	stopped.Store(false)
	told.Store(false)
	watcher.Store(&watch)
	return func() { watcher.CompareAndSwap(&watch, nil) }
}

// Stop asks the calculations that are running to end.
func Stop() { stopped.Store(true) }

// Stopped reports whether calculations are asked to end.
func Stopped() bool { return stopped.Load() }

// Of is a loop over 0 to n-1 that ends early when it is asked to, and tells how far it is.
func Of(n int) iter.Seq[int] {
	return func(yield func(int) bool) {
		tell, done := Claim()
		defer done()
		for i := range n {
			if Stopped() {
				return
			}
			tell(float64(i) / float64(n))
			if !yield(i) {
				return
			}
		}
	}
}

// Claim gives the outermost calculation the ear of who watches: tell is for saying how far it is,
// done for its end. Within another calculation tell does nothing.
func Claim() (tell func(part float64), done func()) {
	w := watcher.Load()
	if w == nil || !told.CompareAndSwap(false, true) {
		return func(float64) {}, func() {}
	}
	return *w, func() { told.Store(false) }
}

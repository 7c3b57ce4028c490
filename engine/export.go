package engine

import (
	"lode/engine/check"
	"lode/engine/lower"
)

// Export returns a notebook without issues as a plain Go program that prints the same shown
// results.
func (n *Notebook) Export() ([]byte, error) {
	program, _ := check.Check(n.lib, n.Book)
	return lower.Export(program)
}

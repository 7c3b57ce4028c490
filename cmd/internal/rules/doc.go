// Package rules holds the tests that police how the repository is built: who may import
// whom, what must not be in a package, what lies at the top. It has no code of its own. A
// failure says which rule is broken and why there is one.
package rules

//go:build !unix

package evaluate_test

import "testing"

func special(*testing.T, string) {}

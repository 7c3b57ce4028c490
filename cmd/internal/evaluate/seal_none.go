//go:build darwin || (linux && !amd64 && !arm64)

package evaluate

// seal has nothing to add to the bounds here.
func seal() error { return nil }

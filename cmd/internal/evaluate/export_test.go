package evaluate

// Confine lets a test try what a confined process can still do.
func Confine() error { return confine(Defaults()) }

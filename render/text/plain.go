package text

// Plain writes printed text as it is, without control characters.
func (s Style) Plain(t string) string { return clean(t) }

// Quiet writes a remark that should not catch the eye.
func (s Style) Quiet(t string) string { return s.in(quiet, clean(t)) }

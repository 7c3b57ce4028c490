package text

// Plain writes printed text as it is, without control characters.
func (s Style) Plain(t string) string { return clean(t) }

// Package browser looks at the sample page in a real browser. It holds nothing but tests,
// and they run only where LODE_OUTSIDE=1 is set, for they need chromium and poppler-utils.
package browser

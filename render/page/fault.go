package page

import "io"

// WriteFault writes a fault alone, to be put into a page that stands already.
func WriteFault(w io.Writer, f Fault) error {
	p := &writer{}
	return p.template().ExecuteTemplate(w, "fault", &f)
}

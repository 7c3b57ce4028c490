package page

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// This file puts data into a finished page for programs to read: a block of JSON that no
// browser runs or shows.

const (
	attachmentOpen  = `<script type="application/json" id="attachment">`
	attachmentClose = `</script>`
)

// Attach returns the page with data in it. The data must be what encoding/json can write.
func Attach(html []byte, data any) ([]byte, error) {
	text, err := json.Marshal(data) // writes < as \u003c, so that nothing in it can end the block
	if err != nil {
		return nil, err
	}
	end := bytes.LastIndex(html, []byte("</body>"))
	if end < 0 {
		return nil, fmt.Errorf("page: no end of the body to attach data to")
	}
	var out bytes.Buffer
	out.Write(html[:end])
	out.WriteString(attachmentOpen)
	out.Write(text)
	out.WriteString(attachmentClose + "\n")
	out.Write(html[end:])
	return out.Bytes(), nil
}

// Attached reads what Attach put into a page. It reports false where there is nothing, and
// an error where it cannot be read.
func Attached(html []byte, into any) (bool, error) {
	start := bytes.LastIndex(html, []byte(attachmentOpen))
	if start < 0 {
		return false, nil
	}
	rest := html[start+len(attachmentOpen):]
	end := bytes.Index(rest, []byte(attachmentClose))
	if end < 0 {
		return false, nil
	}
	return true, json.Unmarshal(rest[:end], into)
}

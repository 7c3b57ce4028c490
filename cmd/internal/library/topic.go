package library

import (
	_ "embed"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"sync"

	"lode/engine/check"
)

// Topic is the help for one name of the library, cut from its doc comment.
type Topic struct {
	Name      string // such as coil.Wind or coil.Winding.Inductance
	Signature string
	Summary   string // the first sentence
	Text      string `json:",omitempty"` // the rest, without the parts below
	Source    string `json:",omitempty"` // where the method comes from
	Valid     string `json:",omitempty"` // its range
	Accuracy  string `json:",omitempty"`
	Caution   string `json:",omitempty"`
	Example   string `json:",omitempty"` // code
}

//go:embed help.json
var helpText []byte

// Topics returns the help for every name of the library's own packages, sorted by name.
func Topics() []Topic {
	return append([]Topic(nil), readTopics()...)
}

var readTopics = sync.OnceValue(func() []Topic {
	var topics []Topic
	if err := json.Unmarshal(helpText, &topics); err != nil {
		panic("library: generated help does not parse: " + err.Error())
	}
	return slices.DeleteFunc(topics, twin(topics))
})

// twin reports the functions on plain numbers that stand for generic ones when a notebook runs.
func twin(topics []Topic) func(Topic) bool {
	known := map[string]bool{}
	for _, t := range topics {
		known[t.Name] = true
	}
	return func(t Topic) bool {
		base, ok := strings.CutSuffix(t.Name, check.TwinSuffix)
		return ok && known[base] && strings.Contains(t.Signature, "units.Kind")
	}
}

// WriteTopics writes help in the form that Topics reads.
func WriteTopics(file string, topics []Topic) error {
	text, err := json.MarshalIndent(topics, "", "\t")
	if err != nil {
		return err
	}
	return os.WriteFile(file, append(text, '\n'), 0o644)
}

// NewTopic cuts a doc comment into its parts.
func NewTopic(name, signature, comment string) Topic {
	t := Topic{Name: name, Signature: signature}
	parts := map[string]*string{"Source:": &t.Source, "Valid:": &t.Valid, "Accuracy:": &t.Accuracy, "Caution:": &t.Caution, "Example:": &t.Example}
	var rest []string
	for i, paragraph := range strings.Split(strings.TrimSpace(comment), "\n\n") {
		head, body, _ := strings.Cut(strings.TrimSpace(paragraph)+" ", " ")
		if line, more, ok := strings.Cut(paragraph, "\n"); ok && parts[strings.TrimSpace(line)] != nil {
			head, body = strings.TrimSpace(line), more
		}
		if part := parts[head]; part != nil {
			*part = partText(head, body)
			continue
		}
		if i == 0 {
			t.Summary, paragraph = firstSentence(paragraph)
		}
		rest = append(rest, strings.TrimRight(strings.Trim(paragraph, "\n"), " \t\n"))
	}
	t.Text = strings.Trim(strings.Join(rest, "\n\n"), "\n ")
	return t
}

// partText joins the lines of a part; code keeps its lines.
func partText(head, body string) string {
	if head != "Example:" {
		return strings.Join(strings.Fields(body), " ")
	}
	lines := strings.Split(body, "\n")
	for i, l := range lines {
		lines[i] = strings.TrimPrefix(l, "\t")
	}
	return strings.TrimSpace(strings.Join(lines, "\n"))
}

// firstSentence cuts a paragraph behind its first sentence.
func firstSentence(s string) (first, rest string) {
	s = strings.Join(strings.Fields(s), " ")
	for i := 0; i+1 < len(s); i++ {
		if s[i] == '.' && s[i+1] == ' ' && (i < 3 || s[i-2] != '.') && i+2 < len(s) && s[i+2] >= 'A' && s[i+2] <= 'Z' {
			return s[:i+1], s[i+2:]
		}
	}
	return s, ""
}

package main

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"lode/cmd/internal/evaluate"
)

// options are what the words behind run say.
type options struct {
	file, page string
	record     bool
	knobs      []string
	size       int64
	limits     evaluate.Limits
}

// option is one option of run: how it is written, what it does, and how its value is read.
type option struct {
	name, value, summary string
	set                  func(o *options, value string) error
}

// runOptions is the list that reading and help come from.
func runOptions() []option {
	d := evaluate.Defaults()
	return []option{
		{"-o", "PAGE", "write the page to this file", func(o *options, v string) error { o.page = v; return nil }},
		{"-record", "", "write a record of every result beside the notebook, for lode verify", func(o *options, _ string) error { o.record = true; return nil }},
		{"-knob", "NAME=VALUE", "turn a knob of the notebook, such as -knob \"tone=250 kΩ\"", func(o *options, v string) error {
			if name, value, ok := strings.Cut(v, "="); !ok || strings.TrimSpace(name) == "" || strings.TrimSpace(value) == "" {
				return fmt.Errorf("got %q, want a name, an equals sign and a value", v)
			}
			o.knobs = append(o.knobs, v)
			return nil
		}},
		{"-page-size", "KB", fmt.Sprintf("size that positions of knobs may bring the page to; default %d", evaluate.DefaultPageSize/1000), func(o *options, v string) error {
			n, err := strconv.ParseInt(v, 10, 32)
			if err != nil || n < 1 {
				return fmt.Errorf("got %q, want a whole number of kB from 1", v)
			}
			o.size = n * 1000
			return nil
		}},
		{"-time", "SECONDS", fmt.Sprintf("longest run; default %g", d.Time.Seconds()), func(o *options, v string) error {
			seconds, err := strconv.ParseFloat(v, 64)
			if err != nil || !(seconds > 0 && seconds < 1e6) {
				return fmt.Errorf("got %q, want a number of seconds", v)
			}
			o.limits.Time = time.Duration(seconds * float64(time.Second))
			return nil
		}},
		{"-memory", "MIB", fmt.Sprintf("most memory; default %d", d.Memory>>20), mebibytes(func(o *options) *int64 { return &o.limits.Memory })},
		{"-output", "MIB", fmt.Sprintf("most text shown and printed; default %d", d.Output>>20), mebibytes(func(o *options) *int64 { return &o.limits.Output })},
		{"-steps", "N", fmt.Sprintf("most turns of loops and calls of functions; default %d", d.Steps), number(func(o *options) *int { return &o.limits.Steps })},
		{"-depth", "N", fmt.Sprintf("most calls within calls; default %d", d.Depth), number(func(o *options) *int { return &o.limits.Depth })},
	}
}

func number(field func(*options) *int) func(*options, string) error {
	return func(o *options, v string) error {
		n, err := strconv.Atoi(v)
		if err != nil || n < 1 {
			return fmt.Errorf("got %q, want a whole number from 1", v)
		}
		*field(o) = n
		return nil
	}
}

func mebibytes(field func(*options) *int64) func(*options, string) error {
	return func(o *options, v string) error {
		n, err := strconv.ParseInt(v, 10, 32)
		if err != nil || n < 1 {
			return fmt.Errorf("got %q, want a whole number of MiB from 1", v)
		}
		*field(o) = n << 20
		return nil
	}
}

// readOptions reads the words behind run; options may stand anywhere.
func (p *program) readOptions(args []string) (options, int) {
	var o options
	for i := 0; i < len(args); i++ {
		if !strings.HasPrefix(args[i], "-") || args[i] == "-" {
			if o.file != "" {
				return o, p.usage("run: more than one notebook", "one notebook", "")
			}
			o.file = args[i]
			continue
		}
		name, value, joined := strings.Cut(args[i], "=")
		opt, ok := findOption(name)
		if !ok {
			return o, p.usage(name+": no such option of run", "one of "+optionNames(), "")
		}
		if opt.value == "" {
			if joined {
				return o, p.usage(name+": takes no value", name, "")
			}
		} else if !joined {
			if i++; i == len(args) {
				return o, p.usage(name+": no value", name+" "+opt.value, "")
			}
			value = args[i]
		}
		if err := opt.set(&o, value); err != nil {
			return o, p.usage(name+": "+err.Error(), name+" "+opt.value, "")
		}
	}
	return o, p.completeOptions(&o)
}

// completeOptions fills in the page's name and refuses what would do harm.
func (p *program) completeOptions(o *options) int {
	if o.file == "" {
		return p.usage("run: no notebook", "the file name of a notebook", "lode run notebooks/first-rewind.md")
	}
	if isPage(o.file) && o.page == "" {
		_, code := p.source(o.file)
		return code
	}
	if o.page == "" {
		o.page = strings.TrimSuffix(o.file, filepath.Ext(o.file)) + ".html"
	}
	if filepath.Clean(o.page) == filepath.Clean(o.file) {
		return p.usage("-o: the page would replace the notebook", "another file name", "")
	}
	return exitFine
}

func findOption(name string) (option, bool) {
	for _, o := range runOptions() {
		if o.name == name || "-"+o.name == name {
			return o, true
		}
	}
	return option{}, false
}

func optionNames() string {
	var names []string
	for _, o := range runOptions() {
		names = append(names, o.name)
	}
	return strings.Join(names, ", ")
}

// optionsText lists the options for the help.
func optionsText() string {
	var b strings.Builder
	for _, o := range runOptions() {
		fmt.Fprintf(&b, "  %-17s  %s\n", o.name+" "+o.value, o.summary)
	}
	return b.String()
}

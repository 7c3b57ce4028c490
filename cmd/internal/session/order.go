package session

import (
	"context"
	"regexp"
	"slices"
	"strings"

	"lode/engine"
	"lode/engine/book"
	"lode/engine/issue"
)

// This file finds an order for a definition that was entered anew and needs what stands below
// it: the definitions that it needs move up, in front of it, as far as they can.

// mostMoves is how many definitions move for one entry.
const mostMoves = 50

// ordered tries a text, and others in which definitions that come too late stand higher. What
// was not in the notebook before is shown: it stands in a cell behind the others.
func (s *Session) ordered(ctx context.Context, text string) Outcome {
	before := len(s.Book().Cells())
	first := s.try(ctx, text, before)
	out := first
	var moved []string
	for range mostMoves {
		name := tooLate(out.Issues)
		if out.Taken || name == "" {
			break
		}
		next, ok := raised(book.Parse(s.file, []byte(text)), name, out.Issues[0].Line)
		if !ok || slices.Contains(moved, name) {
			return circle(first, moved)
		}
		moved, text = append(moved, name), next
		out = s.try(ctx, text, before)
	}
	if out.Taken {
		return out
	}
	return first
}

var late = regexp.MustCompile(`^(?:(\S+): used before it is defined|\S+: needs (\S+) before it is defined)$`)

// tooLate returns the name that the first issue misses above, if that is what it is about.
func tooLate(issues []issue.Issue) string {
	if len(issues) == 0 || issues[0].Code != "used-early" {
		return ""
	}
	m := late.FindStringSubmatch(issues[0].What)
	if m == nil {
		return ""
	}
	return m[1] + m[2]
}

// circle says of definitions that they need each other.
func circle(first Outcome, chain []string) Outcome {
	if len(chain) > 1 {
		first.Issues[0].Hint = strings.Join(chain, " needs ") + ": definitions that need each other cannot be worked out"
	}
	return first
}

// raised moves the statement that defines a name in front of the one at a line.
func raised(b book.Book, name string, line int) (string, bool) {
	items := engine.Outline(b)
	below, above := -1, -1
	for i, it := range items {
		from, to := lines(b, it)
		if above < 0 && from <= line && line <= to {
			above = i
		}
		if len(shared(it.Names, []string{name})) > 0 {
			below = i
		}
	}
	if above < 0 || below <= above {
		return "", false
	}
	statement := cut(&b, items[below])
	target := items[above]
	code := b.Cells()[target.Cell].Code
	b.Replace(target.Cell, code[:target.From]+strings.TrimSpace(statement)+"\n"+code[target.From:])
	return b.String(), true
}

// lines are those of the file that a statement stands in.
func lines(b book.Book, it engine.Item) (from, to int) {
	cell := b.Cells()[it.Cell]
	from = cell.Line + strings.Count(cell.Code[:it.From], "\n")
	return from, from + strings.Count(strings.TrimRight(cell.Code[it.From:it.To], "\n"), "\n")
}

// cut takes a statement out of its cell, with its line if it stands alone there.
func cut(b *book.Book, it engine.Item) string {
	code := b.Cells()[it.Cell].Code
	before, after := code[:it.From], code[it.To:]
	if strings.HasSuffix(strings.TrimRight(before, " \t"), "\n") || strings.TrimSpace(before) == "" {
		after = strings.TrimPrefix(strings.TrimLeft(after, " \t;"), "\n")
	}
	b.Replace(it.Cell, before+after)
	return code[it.From:it.To]
}

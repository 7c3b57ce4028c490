package chart

import "strings"

// TextWidth returns how wide text may become at a size in any of the fonts a reader's
// system is likely to set it in: each character counts with its advance in the widest
// common one, DejaVu Sans (widths in thousandths of the size, from memory; a test in a real
// browser checks that nothing is wider).
func TextWidth(text string, size float64) float64 {
	total := 0
	for _, r := range text {
		total += advance(r)
	}
	return size * float64(total) / 1000
}

var advances = []struct {
	letters string
	width   int
}{
	{"ijlI'|", 296}, {" .,:;!·fJrt()[]/\u00a0", 412}, {"-s°czLFE*", 636}, {"µ≤≥±=+<>−~", 838},
	{"mwMW@%…—", 1000}, {"ADGHKNOQRUVXCΩΔ&", 788},
}

func advance(r rune) int {
	for _, a := range advances {
		if strings.ContainsRune(a.letters, r) {
			return a.width
		}
	}
	switch {
	case r < 0x1100:
		return 686
	case r < 0x2E80:
		return 850
	}
	return 1050
}

// Wrap breaks text at spaces into at most lines lines of a width, and ends it with an
// ellipsis where it is longer than that.
func Wrap(text string, size, width float64, lines int) []string {
	words := strings.Fields(text)
	var result []string
	for len(words) > 0 {
		n := 1
		for n < len(words) && TextWidth(strings.Join(words[:n+1], " "), size) <= width {
			n++
		}
		last := len(result) == lines-1
		if last {
			n = len(words)
		}
		result = append(result, shorten(strings.Join(words[:n], " "), size, width))
		if last {
			break
		}
		words = words[n:]
	}
	return result
}

func shorten(text string, size, width float64) string {
	if TextWidth(text, size) <= width {
		return text
	}
	letters := []rune(text)
	for len(letters) > 1 && TextWidth(string(letters)+"…", size) > width {
		letters = letters[:len(letters)-1]
	}
	return strings.TrimRight(string(letters), " ") + "…"
}

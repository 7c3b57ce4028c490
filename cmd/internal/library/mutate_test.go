package library_test

import (
	"go/scanner"
	"go/token"
	"math/rand/v2"
	"strings"
)

// This file makes cells up out of the tokens and lines of others.

type piece struct {
	from, to int
	tok      token.Token
}

// pieces cuts code into tokens.
func pieces(code string) []piece {
	var s scanner.Scanner
	file := token.NewFileSet().AddFile("", -1, len(code))
	s.Init(file, []byte(code), func(token.Position, string) {}, 0)
	var all []piece
	for {
		pos, tok, text := s.Scan()
		if tok == token.EOF {
			return all
		}
		if text == "" {
			text = tok.String()
		}
		from := file.Offset(pos)
		if text != "\n" && from+len(text) <= len(code) {
			all = append(all, piece{from, from + len(text), tok})
		}
	}
}

// mutate takes tokens and lines away, doubles them, and puts others from the corpus there.
func mutate(code string, all []string, r *rand.Rand) string {
	for range 1 + r.IntN(2) {
		other := all[r.IntN(len(all))]
		if r.IntN(4) == 0 {
			code = mutateLines(code, other, r)
			continue
		}
		mine, theirs := pieces(code), pieces(other)
		if len(mine) == 0 || len(theirs) == 0 {
			return other
		}
		p, q := mine[r.IntN(len(mine))], theirs[r.IntN(len(theirs))]
		for range 20 { // rather one of the same kind
			if q.tok == p.tok {
				break
			}
			q = theirs[r.IntN(len(theirs))]
		}
		switch r.IntN(12) {
		case 0:
			code = code[:p.from] + code[p.to:]
		case 1:
			code = code[:p.to] + " " + code[p.from:]
		default:
			code = code[:p.from] + other[q.from:q.to] + code[p.to:]
		}
	}
	return code
}

func mutateLines(code, other string, r *rand.Rand) string {
	mine, theirs := strings.Split(code, "\n"), strings.Split(other, "\n")
	i, j := r.IntN(len(mine)), r.IntN(len(theirs))
	switch r.IntN(3) {
	case 0:
		mine = append(mine[:i:i], mine[i+1:]...)
	case 1:
		mine = append(mine[:i:i], append([]string{theirs[j]}, mine[i:]...)...)
	default:
		mine[i] = theirs[j]
	}
	return strings.Join(mine, "\n")
}

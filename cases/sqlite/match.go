package sqlite

import (
	"strings"
	"unicode"
)

// mostWords bounds a search: who pastes a page means its first words.
const mostWords = 64

// matchOf makes an FTS5 expression of what a person typed: every word is a
// prefix, all must be there. It is empty where the text holds no word (only
// signs: somebody is about to type one).
func matchOf(text string) string {
	var b strings.Builder
	seen := map[string]bool{}
	for _, word := range strings.FieldsFunc(text, apart) {
		if seen[word] {
			continue
		}
		if len(seen) == mostWords {
			break
		}
		seen[word] = true
		b.WriteString(`"` + word + `"* `) // a word holds no quotation mark
	}
	return b.String()
}

// apart tells what stands between words, as FTS5's unicode61 does.
func apart(r rune) bool {
	return !unicode.In(r, unicode.L, unicode.N, unicode.M, unicode.Co)
}

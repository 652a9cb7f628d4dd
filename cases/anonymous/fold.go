package anonymous

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// folded is a text's letters without case and marks, each with the place in the
// text where it comes from.
type folded struct {
	letters  []rune
	from, to []int // bytes of the text
}

func fold(text string) folded {
	var f folded
	for at, r := range text {
		end := at + len(string(r))
		if r == unicode.ReplacementChar {
			end = at + 1 // a byte that is no UTF-8
		}
		for _, letter := range norm.NFKD.String(string(unicode.ToLower(r))) {
			if unicode.IsMark(letter) {
				continue
			}
			for _, l := range base(letter) {
				f.letters = append(f.letters, l)
				f.from, f.to = append(f.from, at), append(f.to, end)
			}
		}
	}
	return f
}

// signs are the letters and figures alone, without what stands between them.
func (f folded) signs() folded {
	var out folded
	for i, r := range f.letters {
		if !apart(r) {
			out.letters = append(out.letters, r)
			out.from, out.to = append(out.from, f.from[i]), append(out.to, f.to[i])
		}
	}
	return out
}

// base is a letter as it is typed where the keyboard lacks it (those that NFKD
// leaves whole).
func base(r rune) string {
	switch unicode.ToLower(r) {
	case 'ß':
		return "ss"
	case 'æ':
		return "ae"
	case 'œ':
		return "oe"
	case 'ø':
		return "o"
	case 'đ', 'ð':
		return "d"
	case 'ł':
		return "l"
	case 'þ':
		return "th"
	case 'ı':
		return "i"
	case 'ς': // as a capital it is any sigma
		return "σ"
	}
	return string(unicode.ToLower(r))
}

// plainly is the text as it is looked for.
func plainly(text string) string { return strings.TrimSpace(string(fold(text).letters)) }

// spelled is the text with German vowels written out: Müller as mueller.
func spelled(text string) string {
	return plainly(strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue", "å", "aa", "ø", "oe").Replace(strings.ToLower(norm.NFC.String(text))))
}

// ringSpelled is the text with the Scandinavian å alone written out: Ødegård as odegaard.
func ringSpelled(text string) string {
	return plainly(strings.ReplaceAll(strings.ToLower(norm.NFC.String(text)), "å", "aa"))
}

// plainVowels is the other way round: mueller as muller.
func plainVowels(folded string) string {
	return strings.NewReplacer("ae", "a", "oe", "o", "ue", "u").Replace(folded)
}

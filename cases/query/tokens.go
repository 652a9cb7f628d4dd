package query

import (
	"slices"
	"strings"
	"unicode"

	"loopbook/cases"
)

// token is a piece of the text between blanks.
type token struct {
	text     string
	not      bool
	from, to int // bytes of the text
}

// tokens cuts a text at its blanks, save those between quotation marks.
func tokens(text string) []token {
	var out []token
	from, quoted := -1, false
	end := func(to int) {
		if from >= 0 {
			out = append(out, token{text: text[from:to], not: text[from] == '-', from: from, to: to})
		}
		from = -1
	}
	for i, r := range text {
		if r == '"' {
			quoted = !quoted
		}
		switch {
		case unicode.IsSpace(r) && !quoted:
			end(i)
		case from < 0:
			from = i
		}
	}
	end(len(text))
	return out
}

// filter is the field and what stands behind its colon, with its quotation marks; it is false of a word.
func (t token) filter() (name, value string, ok bool) {
	name, value, ok = strings.Cut(strings.TrimPrefix(t.text, "-"), ":")
	name = strings.ToLower(name)
	ok = ok && (name == sortField || slices.Contains(fields(), cases.Field(name)))
	return name, value, ok
}

// bare is a text without its quotation marks.
func bare(text string) string { return strings.ReplaceAll(text, `"`, "") }

// wordsOf parts what stands behind a colon at its commas, save those between quotation marks.
func wordsOf(value string) (out []string) {
	quoted := false
	for _, part := range strings.FieldsFunc(value, func(r rune) bool {
		if r == '"' {
			quoted = !quoted
		}
		return r == ',' && !quoted
	}) {
		if w := strings.TrimSpace(bare(part)); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// quoted is a word as it stands behind a colon.
func quoted(word string) string {
	word = bare(word)
	if strings.ContainsFunc(word, func(r rune) bool { return unicode.IsSpace(r) || r == ',' }) {
		return `"` + word + `"`
	}
	return word
}

// meant is the field that a word with a colon is one slip away from, or nothing.
func (t token) meant() string {
	name, value, _ := strings.Cut(strings.ToLower(strings.TrimPrefix(t.text, "-")), ":")
	if value == "" || len(name) < 3 {
		return ""
	}
	for _, f := range append(fields(), sortField) {
		if against := cases.Slips(name, string(f)); against[len(against)-1] <= 1 {
			return string(f)
		}
	}
	return ""
}

// Has reports whether the text filters by exactly that word.
func Has(text string, f cases.Field, word string) bool { return find(text, f, word) >= 0 }

func find(text string, f cases.Field, word string) int {
	return slices.IndexFunc(tokens(text), func(t token) bool {
		name, value, ok := t.filter()
		return ok && !t.not && name == string(f) && strings.EqualFold(bare(value), bare(word))
	})
}

// Toggle adds the filter to the text, or takes it out where it is there. The other
// words stay as they were typed.
func Toggle(text string, f cases.Field, word string) string {
	if i := find(text, f, word); i >= 0 {
		t := tokens(text)[i]
		return strings.Join(strings.Fields(text[:t.from]+" "+text[t.to:]), " ")
	}
	return set(text, string(f), word, false)
}

// SortBy names the order; the zero order takes it out.
func SortBy(text string, by cases.Sort) string { return set(text, sortField, string(by), true) }

// set writes a filter at the text's end, in the place of those of its name where
// only one can be; an empty word takes them out.
func set(text, name, word string, single bool) string {
	var kept []string
	for _, t := range tokens(text) {
		if n, _, ok := t.filter(); !single || !ok || n != name {
			kept = append(kept, shut(t.text))
		}
	}
	if word != "" {
		kept = append(kept, name+":"+quoted(word))
	}
	return strings.Join(kept, " ")
}

// shut ends a quotation that somebody is still typing.
func shut(text string) string {
	if strings.Count(text, `"`)%2 == 1 {
		return text + `"`
	}
	return text
}

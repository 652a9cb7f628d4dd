package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"strings"

	"loopbook/cases"
)

// around is how many bytes of a text stand before and after the first hit.
const around = 60

// Snippets show where the words of text stand in the cases of those ids. A case
// whose title holds them all, or that is gone, has none.
func (s *Store) Snippets(ctx context.Context, ids []string, text string) (map[string]cases.Snippet, error) {
	var words []string
	for _, w := range strings.FieldsFunc(text, apart) {
		words = append(words, plain(w))
	}
	out := map[string]cases.Snippet{}
	if len(words) == 0 {
		return out, nil
	}
	return answer(ctx, s.view, "looking up where words stand", func(tx *sql.Tx) (map[string]cases.Snippet, error) {
		for _, id := range ids {
			at, err := findAlive(ctx, tx, id)
			if errors.Is(err, cases.ErrNotFound) {
				continue
			}
			if err != nil {
				return nil, err
			}
			c, err := cases.Decode([]byte(at.doc.text))
			if err != nil {
				return nil, err
			}
			if snippet, ok := snippetOf(c, words); ok {
				out[id] = snippet
			}
		}
		return out, nil
	})
}

// snippetOf is the line of the case that holds the most of the words, cut to what is
// around the first.
func snippetOf(c cases.Case, words []string) (best cases.Snippet, ok bool) {
	if _, n := hits(c.Title, words); n == len(words) {
		return best, false
	}
	most := 0
	for _, line := range strings.Split(bodyText(c), "\n") {
		marks, n := hits(line, words)
		if n > most {
			best, most = cut(line, marks), n
		}
	}
	return best, most > 0
}

// hits are the places in a line where a word of it begins with one that is looked
// for, and how many of those there are.
func hits(line string, words []string) (marks [][2]int, different int) {
	found := map[string]bool{}
	from := -1
	end := func(to int) {
		if from < 0 {
			return
		}
		for _, w := range words {
			if strings.HasPrefix(plain(line[from:to]), w) {
				marks = append(marks, [2]int{from, to})
				found[w] = true
				break
			}
		}
		from = -1
	}
	for at, r := range line {
		switch {
		case apart(r):
			end(at)
		case from < 0:
			from = at
		}
	}
	end(len(line))
	return marks, len(found)
}

func cut(line string, marks [][2]int) cases.Snippet {
	from, to := max(marks[0][0]-around, 0), min(marks[0][1]+around, len(line))
	for from > 0 && line[from-1] != ' ' {
		from-- // to the beginning of a word
	}
	for to < len(line) && line[to] != ' ' {
		to++
	}
	s := cases.Snippet{Text: line[from:to]}
	shift := from
	if from > 0 {
		s.Text, shift = "…"+s.Text, from-len("…")
	}
	if to < len(line) {
		s.Text += "…"
	}
	for _, m := range marks {
		if m[0] >= from && m[1] <= to {
			s.Marks = append(s.Marks, [2]int{m[0] - shift, m[1] - shift})
		}
	}
	return s
}

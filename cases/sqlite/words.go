package sqlite

import (
	"context"
	"database/sql"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"loopbook/cases"
)

// The words that are looked up when they were mistyped: of three letters and fewer
// everything is near everything.
const (
	shortestWord = 4
	longestWord  = 40
)

// plain is a word as the index holds it: lower case, without marks.
func plain(word string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsMark(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, norm.NFD.String(word))
}

// learn keeps the words of a text that were never seen before. Only words of
// letters: nobody can tell a mistyped number from another.
func (s *Store) learn(ctx context.Context, tx *sql.Tx, text string) error {
	for _, word := range strings.FieldsFunc(text, apart) {
		if utf8.RuneCountInString(word) < shortestWord || len(word) > 2*longestWord || strings.IndexFunc(word, notLetter) >= 0 {
			continue
		}
		word = plain(word)
		if _, known := s.words.Load(word); known {
			continue
		}
		done, err := tx.ExecContext(ctx, `INSERT OR IGNORE INTO words (word) VALUES (?)`, word)
		if err != nil {
			return err
		}
		s.words.Store(word, true) // tx forgets them all where it is taken back
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			continue
		}
		key, err := done.LastInsertId()
		if err != nil {
			return err
		}
		if _, err := tx.ExecContext(ctx, `INSERT INTO trigrams (rowid, word) VALUES (?, ?)`, key, word); err != nil {
			return err
		}
	}
	return nil
}

func notLetter(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) }

// nearest is the word of a living case that the typed one was most likely meant to
// be, or "". Words stay known when the last case that had them is gone: such a one
// must not stand before one that finds something.
func nearest(ctx context.Context, tx *sql.Tx, typed string) (string, error) {
	typed = plain(typed)
	if n := utf8.RuneCountInString(typed); n < shortestWord || n > longestWord || strings.IndexFunc(typed, notLetter) >= 0 {
		return "", nil
	}
	near, err := knownNear(ctx, tx, typed)
	if err != nil {
		return "", err
	}
	for _, words := range near {
		for _, word := range words {
			if held, err := isHeld(ctx, tx, word); held || err != nil {
				return word, err
			}
		}
	}
	return "", nil
}

// knownNear are the known words within so many slips of the typed one, by their
// number.
func knownNear(ctx context.Context, tx *sql.Tx, typed string) ([][]string, error) {
	near := make([][]string, mostSlips(typed)+1)
	err := eachRow(ctx, tx, `SELECT word FROM trigrams WHERE trigrams MATCH ? ORDER BY rank LIMIT 60`, func(scan func(...any) error) error {
		var word string
		err := scan(&word)
		if n := slips(typed, word); n < len(near) {
			near[n] = append(near[n], word)
		}
		return err
	}, trigramsOf(typed))
	return near, err
}

// trigramsOf asks for words that share any three letters with the typed one, or
// with it when two neighbours have changed places.
func trigramsOf(word string) string {
	var list []string
	add := func(r []rune) {
		for i := 0; i+3 <= len(r); i++ {
			if t := `"` + string(r[i:i+3]) + `"`; !slices.Contains(list, t) {
				list = append(list, t)
			}
		}
	}
	r := []rune(word)
	add(r)
	for i := 0; i+1 < len(r); i++ {
		swapped := slices.Clone(r)
		swapped[i], swapped[i+1] = r[i+1], r[i]
		add(swapped)
	}
	return strings.Join(list, " OR ")
}

// mostSlips a word may hold: one in a short word, two in a longer one.
func mostSlips(word string) int {
	if utf8.RuneCountInString(word) < 7 {
		return 1
	}
	return 2
}

// slips are those of cases.Slips against the beginning of word that comes closest: somebody may still be typing.
func slips(typed, word string) int {
	against := cases.Slips(typed, word)
	shortest := max(utf8.RuneCountInString(typed)-1, 1)
	return slices.Min(against[min(shortest, len(against)-1):])
}

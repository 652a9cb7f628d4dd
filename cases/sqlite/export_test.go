//go:build sqlite_fts5 || fts5

package sqlite

import "testing"

// Statements are what a search for the text asks of full-text search: the whole
// number, and a page of rows in the order that so many have.
func Statements(text string, total int) (count, page, match string) {
	return countMatches, matchesBy(total), matchOf(text)
}

// Full lets the notebook have no room for anything more.
func (s *Store) Full(t *testing.T) { s.pragma(t, `PRAGMA max_page_count = 1`) }

// WriteProtected lets nothing be written in it.
func (s *Store) WriteProtected(t *testing.T) { s.pragma(t, `PRAGMA query_only = ON`) }

// Impatient lets it not wait for another program.
func (s *Store) Impatient(t *testing.T) { s.pragma(t, `PRAGMA busy_timeout = 1`) }

func (s *Store) pragma(t *testing.T, text string) {
	t.Helper()
	if _, err := s.write.Exec(text); err != nil {
		t.Fatal(err)
	}
}

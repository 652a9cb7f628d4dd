//go:build sqlite_fts5 || fts5

package sqlite

// Statements are what a search for the text asks of full-text search: the whole
// number, and a page of rows in the order that so many have.
func Statements(text string, total int) (count, page, match string) {
	return countMatches, matchesBy(total), matchOf(text)
}

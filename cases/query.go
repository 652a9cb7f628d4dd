package cases

import "time"

// Query asks the notebook for cases. The zero Query is every case, the newest
// first.
type Query struct {
	Text   string      // any text a person may type; each word is a prefix, all must be found
	Where  []Condition // all of them must hold
	Sort   Sort
	Limit  int // rows of the page; 0 is 50
	Offset int // rows to skip
}

// IsZero reports whether the query asks for everything.
func (q Query) IsZero() bool { return q.Text == "" && len(q.Where) == 0 && q.Sort == Best }

// Sort is the order of an answer.
type Sort string

// The orders. Best is the best match first, and without words the newest.
const (
	Best     Sort = ""
	Newest   Sort = "newest" // opened last
	Oldest   Sort = "oldest"
	Recently Sort = "changed" // changed last
)

// Summary is one line of the notebook.
type Summary struct {
	Key     int64 // of its row in the notebook, as a digest's
	ID      string
	Title   string
	Vehicle string // make, model, engine, year: what is known of them
	Layout  string
	Cause   Cause // empty while the case is open
	Opened  time.Time
	Changed time.Time
}

// Page is a part of an answer, with the length of the whole.
type Page struct {
	Total  int
	Items  []Summary
	ReadAs string // the words that were looked for where those typed are found nowhere; "": as typed
}

// Count is how many of an answer's cases have a word in a field.
type Count struct {
	Word string
	N    int
}

// Facets are the counts beside the filters, the most frequent first.
type Facets map[Field][]Count

// Snippet is a piece of a case's text with the bytes that were searched for.
type Snippet struct {
	Text  string
	Marks [][2]int // from and to
}

package cases

import "time"

// Query asks the notebook for cases. The zero Query is every case, the newest
// first.
type Query struct {
	Text   string    // any text a person may type; each word is a prefix, all must be found
	Cause  Cause     // the verdict's cause; empty is any
	Stage  Stage     // has a round, log or test of this stage; empty is any
	Layout string    // the loop's layout; empty is any
	Open   *bool     // true: without a verdict; false: with one; nil: any
	From   time.Time // opened at or after; zero is any
	To     time.Time // opened before; zero is any
	Limit  int       // rows of the page; 0 is 50
	Offset int       // rows to skip
}

// Summary is one line of the notebook.
type Summary struct {
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
	Total int
	Items []Summary
}

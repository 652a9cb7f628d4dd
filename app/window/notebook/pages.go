package notebook

import (
	"context"

	"fyne.io/fyne/v2"

	"loopbook/cases"
)

// pageRows is how many rows of the notebook are read at once.
const pageRows = 100

// searcher finds cases; *sqlite.Store satisfies it.
type searcher interface {
	Search(ctx context.Context, q cases.Query) (cases.Page, error)
	Snippets(ctx context.Context, ids []string, text string) (map[string]cases.Snippet, error)
	Facets(ctx context.Context, q cases.Query) (cases.Facets, error)
}

// pages holds the answer to the search that is shown, page by page as the list
// asks for them. A newer search drops the one before it. All of it is called
// on the Fyne goroutine; only the reading itself is elsewhere.
type pages struct {
	store  searcher
	start  func(func()) // runs the reading apart from the window
	query  cases.Query
	total  int
	readAs string // the words that were looked for in place of those typed
	rows   map[int]cases.Summary
	found  map[string]cases.Snippet // by id: where the words stand
	asked  map[int]bool
	cancel context.CancelFunc
	ctx    context.Context

	changed func() // the answer is another one
	filled  func() // more rows of it have come in
	told    func(error)
}

func newPages(store searcher, start func(func())) *pages {
	p := &pages{store: store, start: start, changed: func() {}, filled: func() {}, told: func(error) {}}
	p.ctx, p.cancel = context.WithCancel(context.Background())
	return p
}

// ask searches anew.
func (p *pages) ask(q cases.Query) {
	p.cancel()
	p.ctx, p.cancel = context.WithCancel(context.Background())
	p.query, p.rows, p.asked, p.found = q, map[int]cases.Summary{}, map[int]bool{}, map[string]cases.Snippet{}
	p.read(0, func() { p.changed() })
}

// row is a line of the answer; one that isn't here yet is fetched.
func (p *pages) row(i int) (cases.Summary, bool) {
	s, ok := p.rows[i]
	if !ok {
		p.read(i/pageRows, func() { p.filled() })
	}
	return s, ok
}

// find is the row of a case among those read, or -1.
func (p *pages) find(id string) int {
	for i, s := range p.rows {
		if s.ID == id {
			return i
		}
	}
	return -1
}

func (p *pages) read(page int, done func()) {
	if p.asked[page] {
		return
	}
	p.asked[page] = true
	q, ctx := p.query, p.ctx
	q.Limit, q.Offset = pageRows, page*pageRows
	p.start(func() {
		answer, err := p.store.Search(ctx, q)
		fyne.Do(func() {
			if ctx.Err() != nil {
				return // a newer search has begun
			}
			if err != nil {
				p.told(err)
				return
			}
			p.total, p.readAs = answer.Total, answer.ReadAs
			for i, s := range answer.Items {
				p.rows[q.Offset+i] = s
			}
			done()
		})
		p.look(ctx, q, answer)
	})
}

// look tells where the words stand in a page's cases, once its rows are in sight.
func (p *pages) look(ctx context.Context, q cases.Query, answer cases.Page) {
	text := q.Text
	if answer.ReadAs != "" {
		text = answer.ReadAs
	}
	if text == "" || ctx.Err() != nil {
		return
	}
	ids := make([]string, len(answer.Items))
	for i, s := range answer.Items {
		ids[i] = s.ID
	}
	found, err := p.store.Snippets(ctx, ids, text)
	fyne.Do(func() {
		if ctx.Err() != nil || err != nil {
			return // without them the rows are as good
		}
		for id, s := range found {
			p.found[id] = s
		}
		p.filled()
	})
}

// count counts the words of each field among the cases that are shown.
func (p *pages) count(show func(cases.Facets)) {
	q, ctx := p.query, p.ctx
	if p.readAs != "" {
		q.Text = p.readAs
	}
	p.start(func() {
		facets, err := p.store.Facets(ctx, q)
		fyne.Do(func() {
			switch {
			case ctx.Err() != nil: // a newer search has begun
			case err != nil:
				p.told(err)
			default:
				show(facets)
			}
		})
	})
}

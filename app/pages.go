package main

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
}

// pages holds the answer to the search that is shown, page by page as the list
// asks for them. A newer search drops the one before it. All of it is called
// on the Fyne goroutine; only the reading itself is elsewhere.
type pages struct {
	store  searcher
	start  func(func()) // runs the reading apart from the window
	query  cases.Query
	total  int
	rows   map[int]cases.Summary
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
	p.query, p.rows, p.asked = q, map[int]cases.Summary{}, map[int]bool{}
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
			p.total = answer.Total
			for i, s := range answer.Items {
				p.rows[q.Offset+i] = s
			}
			done()
		})
	})
}

package benchtest

// Queue holds what was to run apart from the window, to be run when the test says so.
type Queue []func()

// Start keeps work to be run.
func (q *Queue) Start(work func()) { *q = append(*q, work) }

// Next lets the oldest of it run.
func (q *Queue) Next() {
	first := (*q)[0]
	*q = (*q)[1:]
	first()
}

// RunAll runs it all, and what comes of it.
func (q *Queue) RunAll() {
	for len(*q) > 0 {
		q.Next()
	}
}

package desk

// Apart is how work is done that takes a while: apart from the goroutine that the desk is
// called on, and what comes of it back on that one.
type Apart struct {
	Start func(work func()) // runs work that touches nothing of the desk
	Do    func(end func())  // runs what takes its outcome, on the desk's goroutine
}

package photos

import (
	"context"

	view "loopbook/app/ui/photos"
)

// album is the open case's pictures as far as they were read.
type album struct {
	of      string                // the case that they belong to
	small   map[string]view.Photo // by the file's name and hash
	says    string
	reading context.Context // ends when another case's are shown
	drop    func()          // ends it
}

// follow drops what belongs to another case.
func (a *album) follow(ctx context.Context, id string) {
	if a.of == id {
		return
	}
	a.drop()
	a.of, a.small, a.says = id, map[string]view.Photo{}, ""
	a.reading, a.drop = context.WithCancel(ctx)
}

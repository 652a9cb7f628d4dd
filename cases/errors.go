package cases

import (
	"errors"
	"fmt"
	"strings"
)

// Errors that every floor knows by name.
var (
	// ErrNotFound says that the notebook has no such case.
	ErrNotFound = errors.New("no such case")
	// ErrNothingToUndo and ErrNothingToRedo end a walk through the revisions.
	ErrNothingToUndo = errors.New("nothing to undo")
	ErrNothingToRedo = errors.New("nothing to redo")
	// ErrForeign says that a file is no notebook of this program.
	ErrForeign = errors.New("this file is no notebook of this program")
	// ErrNewer says that a newer program wrote the notebook.
	ErrNewer = errors.New("a newer version of this program wrote this notebook: open it with that one, or build this one anew")
	// ErrDamaged says that a notebook's file is cut short or overwritten.
	ErrDamaged = errors.New("the notebook's file is damaged: leave it as it is, and work on with your last copy of it")
	// ErrFull says that there is no room for what was to be written.
	ErrFull = errors.New("the disk is full: make room on it")
	// ErrReadOnly says that nothing can be written where the notebook lies, which reading it needs too.
	ErrReadOnly = errors.New("nothing may be written in its file or in the folder where it lies: allow it, or copy the notebook into a folder of your own")
	// ErrBusy says that another program wrote into the notebook for longer than one waits.
	ErrBusy = errors.New("another program is writing into the notebook: wait until it has ended")
	// ErrDisk says that the disk itself failed.
	ErrDisk = errors.New("the disk can't be read or written: see that it is plugged in, sound, and not full")
	// ErrChanged says that another program has changed the case since it was read.
	ErrChanged = errors.New("another program has changed this case meanwhile")
	// ErrGone says that an open notebook's file isn't where it was opened.
	ErrGone = errors.New("the notebook's file is gone from where it was opened: it was moved, renamed or deleted, or its drive was taken out")
	// ErrNoFile says that the notebook keeps no file with such content.
	ErrNoFile = errors.New("no such file in the notebook")
	// ErrFileName says that a name can't be a file's in a bundle.
	ErrFileName = errors.New("must be a plain path inside the bundle, as photos/1.jpg")

	errSurface = errors.New("must be a surface such as rubber or tape, or an emissivity above 0 and up to 1")
)

// FieldError is what is wrong at one place of a case file.
type FieldError struct {
	Path    string // as rounds[1].readings[0].shown_c; empty for the whole document
	Problem string // what is wrong and what would be right
}

func (e FieldError) Error() string {
	if e.Path == "" {
		return e.Problem
	}
	return e.Path + ": " + e.Problem
}

// Invalid is every fault of a document at once.
type Invalid []FieldError

func (e Invalid) Error() string {
	const shown = 5
	lines := make([]string, 0, shown+1)
	for i, f := range e {
		if i == shown {
			lines = append(lines, fmt.Sprintf("and %d more", len(e)-shown))
			break
		}
		lines = append(lines, f.Error())
	}
	return strings.Join(lines, "; ")
}

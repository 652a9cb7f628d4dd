package asking

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage/repository"
)

// files are what the toolkit knows of the computer's files.
type files interface {
	repository.AppendableRepository
	repository.CopyableRepository
	repository.DeleteAllRepository
	repository.HierarchicalRepository
	repository.ListableRepository
	repository.MovableRepository
}

// lateFiles touch a file only once something is written to it. The toolkit empties a file as soon as it is chosen to
// be written over; when the writing then failed, what had been there was lost.
type lateFiles struct{ files }

// Writer opens nothing yet.
func (l lateFiles) Writer(at fyne.URI) (fyne.URIWriteCloser, error) {
	return &late{files: l.files, at: at}, nil
}

type late struct {
	files  files
	at     fyne.URI
	opened fyne.URIWriteCloser // nil: nothing was written
}

func (l *late) URI() fyne.URI { return l.at }

func (l *late) Write(p []byte) (int, error) {
	if l.opened == nil {
		w, err := l.files.Writer(l.at)
		if err != nil {
			return 0, err
		}
		l.opened = w
	}
	return l.opened.Write(p)
}

func (l *late) Close() error {
	if l.opened == nil {
		return nil
	}
	return l.opened.Close()
}

// touchLate has the toolkit's dialogs leave a file alone that is only chosen.
func touchLate() {
	const scheme = "file"
	now, err := repository.ForScheme(scheme)
	if err != nil {
		return
	}
	if all, ok := now.(files); ok {
		if _, had := now.(lateFiles); !had {
			repository.Register(scheme, lateFiles{all})
		}
	}
}

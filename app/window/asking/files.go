package asking

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
)

// filesSize is the size of a dialog of files: a name is long, and cut in the toolkit's own size.
func filesSize() fyne.Size { return fyne.NewSize(900, 600) }

// OpenFile asks for a file with one of the endings.
func (a *Asker) OpenFile(endings []string, take func(fyne.URI)) {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil {
			a.Tell(err)
			return
		}
		if r != nil {
			r.Close()
			take(r.URI())
		}
	}, a.over)
	d.SetFilter(storage.NewExtensionFileFilter(endings))
	d.Resize(filesSize())
	a.Show(d)
}

// OpenFolder asks for a folder.
func (a *Asker) OpenFolder(take func(path string)) {
	d := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		switch {
		case err != nil:
			a.Tell(err)
		case folder != nil:
			take(folder.Path())
		}
	}, a.over)
	d.Resize(filesSize())
	a.Show(d)
}

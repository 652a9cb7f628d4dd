package asking

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
)

// A file that is chosen to be written over stays as it is until something is written, and one that isn't there isn't made.
func TestAChosenFileIsNotTouched(t *testing.T) {
	test.NewTempApp(t)
	touchLate()
	touchLate() // each dialog asks for it
	path := filepath.Join(t.TempDir(), "notebook.zip")
	if err := os.WriteFile(path, []byte("last week's"), 0o644); err != nil {
		t.Fatal(err)
	}
	holds := func(path, want string) {
		t.Helper()
		if got, err := os.ReadFile(path); string(got) != want {
			t.Errorf("%s holds %q, want %q (%v)", filepath.Base(path), got, want, err)
		}
	}
	w, err := storage.Writer(storage.NewFileURI(path))
	if err != nil || w.Close() != nil {
		t.Fatal(err)
	}
	holds(path, "last week's")
	fresh := path + ".new"
	if w, err = storage.Writer(storage.NewFileURI(fresh)); err != nil || w.Close() != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(fresh); !os.IsNotExist(err) {
		t.Errorf("a file that was only named is there: %v", err)
	}
	if w, err = storage.Writer(storage.NewFileURI(path)); err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write([]byte("today's")); err != nil || w.Close() != nil {
		t.Fatal(err)
	}
	holds(path, "today's")
}

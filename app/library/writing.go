package library

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// WriteFile writes a whole file or none: first beside it, then in its place.
func WriteFile(path string, write func(*os.File) error) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".loopbook-*")
	if err != nil {
		var why *fs.PathError
		if errors.As(err, &why) {
			err = why.Err // its path is that of a temporary file
		}
		return fmt.Errorf("%s can't be written: %w", path, err)
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if err := write(f); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	if err := os.Chmod(f.Name(), 0o644); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

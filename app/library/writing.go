package library

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand"
	"os"
	"path/filepath"
	"syscall"

	"loopbook/cases"
)

// errFolder refuses to write a file where a folder lies.
var errFolder = errors.New("a folder has that name: choose another one")

// WriteFile writes a whole file or none: first beside it, then in its place. Where a link lies, the file that it leads
// to is written; a device or a pipe takes it as it comes.
func WriteFile(path string, write func(*os.File) error) error {
	err := writeTo(path, write)
	if why := faultOfFile(err); why != nil {
		return fmt.Errorf("%s can't be written: %w", path, why)
	}
	return err
}

func writeTo(path string, write func(*os.File) error) error {
	info, err := os.Stat(path)
	switch {
	case err != nil: // there is none
	case info.IsDir():
		return &fs.PathError{Op: "write", Path: path, Err: errFolder}
	case !info.Mode().IsRegular():
		f, err := os.OpenFile(path, os.O_WRONLY, 0)
		if err != nil {
			return err
		}
		return errors.Join(write(f), f.Close())
	default:
		if path, err = filepath.EvalSymlinks(path); err != nil {
			return err
		}
	}
	mode := fs.FileMode(0o666) // less what a person's files are kept from others by
	if info != nil {
		mode = info.Mode().Perm()
	}
	return writeBeside(path, mode, write)
}

func writeBeside(path string, mode fs.FileMode, write func(*os.File) error) (err error) {
	f, err := createBeside(path, mode)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if err := errors.Join(write(f), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// createBeside makes a new file in the folder of another. It has its mode from the beginning, since some drives of a
// network don't let it be changed.
func createBeside(path string, mode fs.FileMode) (*os.File, error) {
	for {
		name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".loopbook-%08x", rand.Uint32()))
		f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, mode)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// faultOfFile is why a file can't be written, without the path, which is a temporary file's; nil where it is something
// else that failed.
func faultOfFile(err error) error {
	var link *os.LinkError
	var path *fs.PathError
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return cases.ErrFull
	case errors.As(err, &link):
		return link.Err
	case errors.As(err, &path):
		return path.Err
	}
	return nil
}

package photo

import (
	"fmt"
	"os"
	"path/filepath"
)

// ReadFile reads a picture's file, or answers ErrTooLarge with its name without reading it.
func ReadFile(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err == nil && info.Size() > MaxBytes {
		err = fmt.Errorf("%s: %w", filepath.Base(path), ErrTooLarge)
	}
	if err != nil {
		return nil, err
	}
	return os.ReadFile(path)
}

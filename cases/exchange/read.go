// Package exchange reads and writes case files: one case as JSON, or a bundle,
// which is a zip of case.json and the files that the case names.
//
// Many cases travel as a collection: a zip of bundles. What a file is, is told by
// its content, never by its ending. A file from a stranger takes bounded memory:
// a document up to cases.MaxBytes, files up to cases.MaxBundleBytes together,
// and MaxEntries names; of a collection one bundle is in memory at a time.
package exchange

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"loopbook/cases"
)

// Bundle is a case with its files.
type Bundle = cases.Bundle

// MaxEntries bounds the names in a bundle.
const MaxEntries = 10_000

// maxZip bounds a bundle as it lies on the disk: its files and its directory.
const maxZip = cases.MaxBundleBytes + 16<<20

// ErrNoCase says that a file is neither a case nor a bundle.
var ErrNoCase = errors.New("is neither a case (JSON) nor a bundle (zip)")

// ReadFile is Read for the file at path.
func ReadFile(path string) (Bundle, error) {
	f, err := os.Open(path)
	if err != nil {
		return Bundle{}, err
	}
	defer f.Close()
	return Read(path, f)
}

// Read reads one case from r, which stands at its start. A plain JSON case has
// no files, even where it names some; a bundle must hold all that its case
// names. The error begins with name and holds the place: "NAME: rounds[1].…".
// It is ErrNoCase, cases.Invalid, cases.ErrFileName, or tells what is wrong
// with the zip.
func Read(name string, r io.Reader) (Bundle, error) {
	b, err := read(r)
	return b, within(name, err)
}

func read(r io.Reader) (Bundle, error) {
	buffered, head, err := begin(r)
	switch {
	case err != nil:
		return Bundle{}, err
	case isZip(head):
		return unzipFrom(r, buffered)
	}
	return plain(buffered, head)
}

// begin looks at the first bytes, which tell what a file is.
func begin(r io.Reader) (buffered *bufio.Reader, head []byte, err error) {
	buffered = bufio.NewReaderSize(r, 512)
	head, err = buffered.Peek(512)
	if err == io.EOF {
		err = nil
	}
	return buffered, head, err
}

func isZip(head []byte) bool { return bytes.HasPrefix(head, []byte("PK")) }

// plain reads a case that stands alone.
func plain(buffered io.Reader, head []byte) (Bundle, error) {
	if begin := afterBlanks(head); len(begin) > 0 && begin[0] != '{' {
		return Bundle{}, ErrNoCase // without reading the rest of it
	}
	text, err := readUpTo(buffered, cases.MaxBytes)
	if err != nil {
		return Bundle{}, err
	}
	c, err := cases.Decode(text)
	return Bundle{Case: c}, err
}

func afterBlanks(text []byte) []byte {
	return bytes.TrimLeft(bytes.TrimPrefix(text, []byte("\uFEFF")), " \t\r\n")
}

// readUpTo is io.ReadAll that stops at the limit, in bytes.
func readUpTo(r io.Reader, limit int64) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, limit+1))
	if err == nil && int64(len(text)) > limit {
		err = tooLarge(limit)
	}
	return text, err
}

func tooLarge(limit int64) error { return fmt.Errorf("is larger than %d MB", limit>>20) }

// randomAccess is r itself where it is a file, or else a copy of what it holds
// that is gone when done is called: a bundle in a pipe needn't fit into memory.
func randomAccess(r io.Reader, buffered *bufio.Reader, limit int64) (at io.ReaderAt, size int64, done func(), err error) {
	if f, ok := r.(interface {
		io.ReaderAt
		io.Seeker
	}); ok {
		size, err := f.Seek(0, io.SeekEnd)
		switch { // a pipe can't seek
		case err == nil && size > limit:
			return nil, 0, nil, tooLarge(limit)
		case err == nil:
			return f, size, func() {}, nil
		}
	}
	f, err := os.CreateTemp("", "loopbook-*")
	if err != nil {
		return nil, 0, nil, err
	}
	done = func() {
		f.Close()
		os.Remove(f.Name())
	}
	size, err = io.Copy(f, io.LimitReader(buffered, limit+1))
	if err == nil && size > limit {
		err = tooLarge(limit)
	}
	if err != nil {
		done()
		return nil, 0, nil, err
	}
	return f, size, done, nil
}

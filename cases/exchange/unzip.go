package exchange

import (
	"archive/zip"
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"loopbook/cases"
)

// caseFile is the document's name in a bundle.
const caseFile = "case.json"

// mostUnpacked bounds the document and the files together, in bytes.
const mostUnpacked = cases.MaxBytes + cases.MaxBundleBytes

var (
	errEntries   = fmt.Errorf("has more than %d entries, or they overlap", MaxEntries)
	errNoDoc     = errors.New("holds no " + caseFile + " at its top: it is no bundle")
	errTwice     = errors.New("is there twice")
	errNoFile    = errors.New("is no plain file")
	errEncrypted = errors.New("is encrypted")
)

// unzipFrom reads the bundle in r, of which the beginning may be buffered.
func unzipFrom(r io.Reader, buffered *bufio.Reader) (Bundle, error) {
	zipped, size, done, err := randomAccess(r, buffered, maxZip)
	if err != nil {
		return Bundle{}, err
	}
	defer done()
	return unzip(zipped, size)
}

func unzip(r io.ReaderAt, size int64) (Bundle, error) {
	entries, err := directory(r, size)
	if err != nil {
		return Bundle{}, err
	}
	document, ok := entries[caseFile]
	if !ok {
		return Bundle{}, errNoDoc
	}
	delete(entries, caseFile)
	text, err := content(document, cases.MaxBytes)
	if err != nil {
		return Bundle{}, err
	}
	b := Bundle{Files: map[string][]byte{}}
	if b.Case, err = cases.Decode(text); err != nil {
		return Bundle{}, fmt.Errorf("%s: %w", caseFile, err)
	}
	left := int64(cases.MaxBundleBytes)
	for name, entry := range entries {
		if b.Files[name], err = content(entry, left); err != nil {
			return Bundle{}, err
		}
		left -= int64(len(b.Files[name]))
	}
	if err := complete(b); err != nil {
		return Bundle{}, fmt.Errorf("%s: %w", caseFile, err)
	}
	return b, nil
}

// directory lists a bundle's files by name, and refuses names and kinds that a
// bundle can't have.
func directory(r io.ReaderAt, size int64) (map[string]*zip.File, error) {
	z, err := list(r, size)
	if err != nil {
		return nil, err
	}
	entries := make(map[string]*zip.File, len(z.File))
	var claimed uint64
	for _, f := range z.File {
		if err := acceptable(f); err != nil {
			return nil, err
		}
		claimed += min(f.UncompressedSize64, mostUnpacked+1) // no overflow
		if f.Mode().IsDir() {
			continue
		}
		if entries[f.Name] != nil {
			return nil, fmt.Errorf("entry %q: %w", f.Name, errTwice)
		}
		entries[f.Name] = f
	}
	if claimed > mostUnpacked {
		return nil, tooLarge(mostUnpacked)
	}
	return entries, nil
}

// list reads a zip's directory within bounds.
func list(r io.ReaderAt, size int64) (*zip.Reader, error) {
	const perEntry = 512 // bytes, ample: 46, a name of up to 200, its times
	bounded := &budget{r, MaxEntries * perEntry}
	z, err := zip.NewReader(bounded, size)
	if err != nil {
		return nil, fmt.Errorf("the zip is cut short or damaged: %w", err)
	}
	if len(z.File) > MaxEntries {
		return nil, errEntries
	}
	bounded.left = size + 4*maxZip // for the files themselves
	return z, nil
}

func acceptable(f *zip.File) error {
	if f.Name == caseFile && f.Mode().IsRegular() {
		return nil
	}
	if err := cases.CheckFileName(strings.TrimSuffix(f.Name, "/")); err != nil {
		return err
	}
	if kind := f.Mode().Type(); kind != 0 && kind != fs.ModeDir {
		return fmt.Errorf("entry %q: %w", f.Name, errNoFile)
	}
	return nil
}

// content unpacks an entry of at most limit bytes, whatever size it claims.
func content(f *zip.File, limit int64) ([]byte, error) {
	data, err := unpack(f, limit)
	if err != nil {
		return nil, fmt.Errorf("entry %q: %w", f.Name, err)
	}
	return data, nil
}

func unpack(f *zip.File, limit int64) ([]byte, error) {
	r, err := open(f, limit)
	if err != nil {
		return nil, err
	}
	defer r.Close()
	var data bytes.Buffer // in one piece where the claim can be true, or it would grow past it
	if most := mostOf(f.CompressedSize64); f.UncompressedSize64 <= most {
		data.Grow(int(f.UncompressedSize64) + bytes.MinRead)
	}
	n, err := data.ReadFrom(io.LimitReader(r, limit+1))
	if err == nil && n > limit {
		err = tooLarge(limit)
	}
	return data.Bytes(), err
}

// open opens an entry that says of itself that it can be read and has at most limit bytes.
func open(f *zip.File, limit int64) (io.ReadCloser, error) {
	const encrypted = 1 // flag bit 0
	switch {
	case f.Flags&encrypted != 0:
		return nil, errEncrypted
	case f.UncompressedSize64 > uint64(limit):
		return nil, tooLarge(limit)
	}
	return f.Open()
}

// mostOf is how many bytes so many packed ones can give: deflate stores 258 bytes
// in two bits at best (RFC 1951, 3.2.5 and 3.2.6).
func mostOf(packed uint64) uint64 { return 1032*packed + 1032 }

// complete tells which files the case names that the bundle doesn't hold.
func complete(b Bundle) error {
	var missing cases.Invalid
	for i, p := range b.Case.Photos {
		if _, ok := b.Files[p.File]; !ok && p.File != "" {
			missing = append(missing, cases.FieldError{
				Path:    fmt.Sprintf("photos[%d].file", i),
				Problem: fmt.Sprintf("%q is not in the bundle", p.File),
			})
		}
	}
	if missing == nil {
		return nil
	}
	return missing
}

// budget is a ReaderAt that hands out so many bytes: the directory of a zip is
// read whole before its length can be known.
type budget struct {
	io.ReaderAt
	left int64
}

func (b *budget) ReadAt(p []byte, at int64) (int, error) {
	if b.left -= int64(len(p)); b.left < 0 {
		return 0, errEntries
	}
	return b.ReaderAt.ReadAt(p, at)
}

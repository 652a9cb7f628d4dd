package exchange

import (
	"archive/zip"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"loopbook/cases"
)

// WriteCase writes c as JSON for people to read. A case that Read would refuse
// is a cases.Invalid, and nothing is written.
func WriteCase(w io.Writer, c cases.Case) error {
	text, err := document(c)
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

// WriteBundle writes the case and its files as a zip: the same bundle gives the
// same bytes. A bundle that Read would refuse is an error, and nothing is
// written.
func WriteBundle(w io.Writer, b Bundle) error {
	text, err := document(b.Case)
	if err != nil {
		return err
	}
	names, err := fileNames(b)
	if err != nil {
		return err
	}
	z := zip.NewWriter(w)
	if err := pack(z, caseFile, text); err != nil {
		return err
	}
	for _, name := range names {
		if err := pack(z, name, b.Files[name]); err != nil {
			return err
		}
	}
	return z.Close()
}

func document(c cases.Case) ([]byte, error) {
	text, err := cases.EncodeIndented(c)
	if err != nil {
		return nil, err
	}
	if _, err := cases.Decode(text); err != nil {
		return nil, fmt.Errorf("case %q: %w", c.ID, err)
	}
	return text, nil
}

// fileNames lists the files in order, and holds them to what Read takes.
func fileNames(b Bundle) ([]string, error) {
	if len(b.Files)+1 > MaxEntries {
		return nil, errEntries
	}
	names, total := make([]string, 0, len(b.Files)), 0
	for name, data := range b.Files {
		if err := cases.CheckFileName(name); err != nil {
			return nil, err
		}
		names = append(names, name)
		total += len(data)
	}
	if total > cases.MaxBundleBytes {
		return nil, tooLarge(cases.MaxBundleBytes)
	}
	slices.Sort(names)
	return names, complete(b)
}

func pack(z *zip.Writer, name string, data []byte) error {
	method := zip.Deflate
	if strings.HasPrefix(name, "photos/") {
		method = zip.Store // pictures are packed already
	}
	w, err := create(z, name, method)
	if err == nil {
		_, err = w.Write(data)
	}
	return err
}

// create begins an entry, always at the first time that zip knows: the same content is to give the same bytes.
func create(z *zip.Writer, name string, method uint16) (io.Writer, error) {
	return z.CreateHeader(&zip.FileHeader{Name: name, Method: method, Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)})
}

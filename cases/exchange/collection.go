package exchange

import (
	"archive/zip"
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"strings"
	"unicode/utf8"

	"loopbook/cases"
)

// MaxBundles bounds the bundles in a collection: a larger notebook travels as
// several.
const MaxBundles = MaxEntries

// The marks begin the comment of a zip that is a class set, or one whose cases stay shut until they were answered; its
// name follows, and the bundles lie in its order.
const (
	classMark  = "loopbook class set: "
	sealedMark = "loopbook sealed class set: "
)

// maxCollection bounds a collection as it lies on the disk.
const maxCollection = 16 << 30

var (
	errSameID  = errors.New("another case of this file has the same id")
	errNothing = errors.New("holds no case")
)

// Each reads the cases of the file at path one after the other: one of a case or
// a bundle, all of a collection. It calls take with each, or with the reason why
// it is refused; what take answers ends the reading. An error of the file itself
// is Each's own.
func Each(ctx context.Context, path string, take func(Bundle, error) error) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return EachOf(ctx, path, f, take)
}

// EachOf is Each for r, which stands at its start; errors begin with name.
func EachOf(ctx context.Context, name string, r io.Reader, take func(Bundle, error) error) error {
	buffered, head, err := begin(r)
	if err != nil {
		return within(name, err)
	}
	if !isZip(head) {
		b, err := plain(buffered, head)
		return take(b, within(name, err))
	}
	zipped, size, done, err := randomAccess(r, buffered, maxCollection)
	if err != nil {
		return within(name, err)
	}
	defer done()
	bundles, class, err := collected(zipped, size)
	switch {
	case err != nil:
		return within(name, err)
	case bundles != nil:
		return eachIn(ctx, name, bundles, func(b Bundle, err error) error {
			b.Class, b.Sealed = class.Name, class.Sealed
			return take(b, err)
		})
	case size > maxZip:
		return within(name, tooLarge(maxZip))
	}
	b, err := unzip(zipped, size)
	return take(b, within(name, err))
}

func within(name string, err error) error {
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// collected are the bundles of a collection, or nil where the zip is something
// else, and the class set that they are.
func collected(r io.ReaderAt, size int64) (bundles []*zip.File, class cases.Class, err error) {
	z, err := list(r, size)
	if err != nil {
		return nil, class, err
	}
	seen := map[string]bool{}
	for _, f := range z.File {
		switch {
		case f.Mode().Type() != 0 || path.Ext(f.Name) != ".zip" || strings.Contains(f.Name, "/"):
			return nil, class, nil
		case seen[f.Name]:
			return nil, class, fmt.Errorf("entry %q: %w", f.Name, errTwice)
		}
		seen[f.Name] = true
	}
	if len(z.File) == 0 {
		return nil, class, errNoDoc
	}
	return z.File, classOf(z.Comment), nil
}

// classOf is the class set that a zip's comment names; a name that nobody would give it counts for nothing.
func classOf(comment string) cases.Class {
	name, ok := strings.CutPrefix(comment, classMark)
	sealed := false
	if !ok {
		name, sealed = strings.CutPrefix(comment, sealedMark)
	}
	if !ok && !sealed || !utf8.ValidString(name) {
		return cases.Class{}
	}
	name, err := cases.ClassName(name)
	if err != nil || name == "" {
		return cases.Class{}
	}
	return cases.Class{Name: name, Sealed: sealed}
}

// eachIn takes the bundles one by one. Two of one id would overwrite each other:
// the second is refused.
func eachIn(ctx context.Context, name string, bundles []*zip.File, take func(Bundle, error) error) error {
	seen := map[string]bool{}
	for _, f := range bundles {
		if err := ctx.Err(); err != nil {
			return err
		}
		b, err := inner(f)
		if id := b.Case.ID; err == nil && id != "" {
			if seen[id] {
				b, err = Bundle{}, fmt.Errorf("id %q: %w", id, errSameID)
			}
			seen[id] = true
		}
		if err := take(b, within(name+": "+f.Name, err)); err != nil {
			return err
		}
	}
	return nil
}

// inner reads a bundle that lies in a collection: stored, so that it can be read
// in place, or packed by somebody who made the zip anew.
func inner(f *zip.File) (Bundle, error) {
	r, err := open(f, maxZip)
	if err != nil {
		return Bundle{}, err
	}
	defer r.Close()
	return unzipFrom(r, bufio.NewReader(r))
}

// WriteCollection writes bundles as they come: next answers io.EOF after the
// last. A bundle that Read would refuse ends it with an error. They are a class set
// where that has a name.
func WriteCollection(w io.Writer, class cases.Class, next func() (Bundle, error)) (n int, err error) {
	z := zip.NewWriter(w)
	name, err := cases.ClassName(class.Name)
	if err != nil {
		return 0, err // it would be lost on its way
	}
	mark := classMark
	if class.Sealed {
		mark = sealedMark
	}
	if name != "" {
		if err := z.SetComment(mark + name); err != nil {
			return 0, err
		}
	}
	for {
		b, err := next()
		if err == io.EOF {
			break
		}
		if err != nil {
			return n, err
		}
		if n++; n > MaxBundles {
			return n, fmt.Errorf("more than %d cases: write them as several files", MaxBundles)
		}
		if err := collect(z, n, b); err != nil {
			return n, err
		}
	}
	if n == 0 {
		return 0, errNothing
	}
	return n, z.Close()
}

func collect(z *zip.Writer, n int, b cases.Bundle) error {
	w, err := create(z, fmt.Sprintf("%05d.zip", n), zip.Store) // it is packed already
	if err != nil {
		return err
	}
	return WriteBundle(w, b)
}

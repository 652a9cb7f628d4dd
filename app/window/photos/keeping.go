package photos

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
)

// newPhoto is a picture that is to be kept.
type newPhoto struct {
	name string
	data []byte
}

// takeIn reads pictures, and keeps those that are some; it answers their names in the case, and what is wrong with each
// of the others. Whoever stops it has those that were kept by then.
func takeIn(ctx context.Context, store *sqlite.Store, id string, n int, read func(i int) (newPhoto, error), tell func(string)) (files []string, refused, err error) {
	var all []newPhoto
	for i := 0; i < n; i++ {
		if ctx.Err() != nil {
			return nil, nil, nil
		}
		tell(kit.L("window.photos.looking", i+1, n))
		p, err := read(i)
		if err == nil {
			if err = photo.Check(p.data); err != nil {
				err = fmt.Errorf("%s: %w", p.name, err)
			}
		}
		if err != nil {
			refused = errors.Join(refused, err)
			continue
		}
		all = append(all, p)
	}
	files, err = attachPhotos(ctx, store, id, all, func(i int) { tell(kit.L("window.photos.keeping", i+1, n)) })
	return files, refused, err
}

// attachPhotos keeps the pictures as they came, once for the same content, until ctx
// ends or one can't be kept, and gives the names in the case of those that were.
func attachPhotos(ctx context.Context, store *sqlite.Store, id string, all []newPhoto, kept func(n int)) ([]string, error) {
	whole := context.WithoutCancel(ctx) // each is kept whole or not at all
	hashes, err := library.HashesOf(whole, store, id)
	if err != nil {
		return nil, err
	}
	var files []string
	for i, p := range all {
		if ctx.Err() != nil {
			break
		}
		kept(i)
		hash, err := store.PutAttachment(whole, p.data)
		if err != nil {
			return files, err
		}
		file := photoName(p.name, hash, hashes)
		if err := store.Attach(whole, id, file, p.data); err != nil {
			return files, err
		}
		hashes[file] = hash
		if !slices.Contains(files, file) {
			files = append(files, file)
		}
	}
	return files, nil
}

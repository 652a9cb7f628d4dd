package library

import (
	"context"
	"errors"
	"fmt"
	"image"
	"io/fs"
	"runtime"
	"sync"

	"loopbook/cases"
	"loopbook/cases/photo"
)

// copyKeeper is where pictures lie with their smaller copies; *sqlite.Store is one.
type copyKeeper interface {
	Attachment(ctx context.Context, hash string) ([]byte, error)
	Smaller(ctx context.Context, hash string) ([]byte, error)
	KeepSmaller(ctx context.Context, hash string, data []byte) error
}

// Smaller gives the smaller copies of the notebook's pictures and makes those that
// are missing: each once, whoever asks at the same time, and no more at once than
// there are cores, since a large picture takes much memory while it is opened.
type Smaller struct {
	turn  chan struct{}
	locks sync.Map // of a picture's hash: who makes its copy holds it
}

// NewSmaller serves as many at once as there are cores.
func NewSmaller() *Smaller { return &Smaller{turn: make(chan struct{}, runtime.GOMAXPROCS(0))} }

// Of is the copy of the picture with a hash: upright, without metadata, its long side
// of photo.LongSide. Call it apart from the window.
func (s *Smaller) Of(ctx context.Context, store copyKeeper, hash string) ([]byte, error) {
	lock, _ := s.locks.LoadOrStore(hash, &sync.Mutex{})
	lock.(*sync.Mutex).Lock()
	defer lock.(*sync.Mutex).Unlock()
	data, err := store.Smaller(ctx, hash)
	if !errors.Is(err, cases.ErrNoFile) {
		return data, err
	}
	s.turn <- struct{}{}
	defer func() { <-s.turn }()
	full, err := store.Attachment(ctx, hash)
	if err != nil {
		return nil, err
	}
	if data, err = photo.SmallJPEG(full, photo.LongSide); err != nil {
		return nil, err
	}
	// What can't be kept, on a full disk for one, is made again the next time: nobody
	// needs to know.
	_ = store.KeepSmaller(ctx, hash, data)
	return data, nil
}

// Image is the copy opened, no longer than so many pixels.
func (s *Smaller) Image(ctx context.Context, store copyKeeper, hash string, longSide int) (image.Image, error) {
	data, err := s.Of(ctx, store, hash)
	if err != nil {
		return nil, err
	}
	return photo.Small(data, longSide)
}

// Opener opens a case's pictures, given by their names and hashes, for its papers. All
// of them are read, or made, at the first call and on all cores: a paper asks for
// one after the other.
func (s *Smaller) Opener(ctx context.Context, store copyKeeper, list []cases.Photo, hashes map[string]string) func(file string) ([]byte, error) {
	read := sync.OnceValue(func() map[string][]byte { return s.all(ctx, store, list, hashes) })
	return func(file string) ([]byte, error) {
		if data, ok := read()[file]; ok {
			return data, nil
		}
		return nil, fmt.Errorf("%s: %w", file, fs.ErrNotExist)
	}
}

// all are the copies of those pictures that are there and can be opened, by their names.
func (s *Smaller) all(ctx context.Context, store copyKeeper, list []cases.Photo, hashes map[string]string) map[string][]byte {
	var work sync.WaitGroup
	var mu sync.Mutex
	out := map[string][]byte{}
	for _, p := range list {
		hash, here := hashes[p.File]
		if !here {
			continue
		}
		work.Add(1)
		go func() {
			defer work.Done()
			if data, err := s.Of(ctx, store, hash); err == nil {
				mu.Lock()
				defer mu.Unlock()
				out[p.File] = data
			}
		}()
	}
	work.Wait()
	return out
}

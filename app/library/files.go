package library

import (
	"context"

	"loopbook/cases/sqlite"
)

// HashesOf are the case's files by their names.
func HashesOf(ctx context.Context, store *sqlite.Store, id string) (map[string]string, error) {
	list, err := store.Attachments(ctx, id)
	out := make(map[string]string, len(list))
	for _, a := range list {
		out[a.Name] = a.Hash
	}
	return out, err
}

// Contents are files of the notebook by their names, given by their hashes.
func Contents(ctx context.Context, store *sqlite.Store, hashes map[string]string) (map[string][]byte, error) {
	out := make(map[string][]byte, len(hashes))
	for name, hash := range hashes {
		data, err := store.Attachment(ctx, hash)
		if err != nil {
			return nil, err
		}
		out[name] = data
	}
	return out, nil
}

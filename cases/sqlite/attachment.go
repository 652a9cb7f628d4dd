package sqlite

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"

	"loopbook/cases"
)

// Attachment is a file of a case.
type Attachment struct {
	Name string // as photos/1.jpg
	Hash string // of its content, for Store.Attachment
	Size int64  // bytes
}

// PutAttachment keeps data once, however often it is put, and answers the
// hash that finds it again: SHA-256, hexadecimal.
func (s *Store) PutAttachment(ctx context.Context, data []byte) (hash string, err error) {
	hash = hashOf(data)
	if err := s.edit(ctx, "keeping a file", func(tx *sql.Tx) error { return putBlob(ctx, tx, hash, data) }); err != nil {
		return "", err
	}
	return hash, nil
}

// Attachment reads the content with a hash, or cases.ErrNoFile.
func (s *Store) Attachment(ctx context.Context, hash string) ([]byte, error) {
	data := []byte{}
	err := s.read.QueryRowContext(ctx, `SELECT data FROM blobs WHERE hash = ?`, hash).Scan(&data)
	if errors.Is(err, sql.ErrNoRows) {
		err = cases.ErrNoFile
	}
	if err != nil {
		return nil, fmt.Errorf("reading file %.12s: %w", hash, explain(err))
	}
	return data, nil
}

// Attach gives the case a file under a name (see cases.CheckFileName), in the
// place of any that has the name already.
func (s *Store) Attach(ctx context.Context, caseID, name string, data []byte) error {
	return s.edit(ctx, fmt.Sprintf("attaching to case %q", caseID), func(tx *sql.Tx) error { return attach(ctx, tx, caseID, name, data) })
}

// Attachments lists the files of a case by name.
func (s *Store) Attachments(ctx context.Context, caseID string) ([]Attachment, error) {
	return answer(ctx, s.view, fmt.Sprintf("files of case %q", caseID), func(tx *sql.Tx) ([]Attachment, error) {
		at, err := findAlive(ctx, tx, caseID)
		if err != nil {
			return nil, err
		}
		return attachmentsOf(ctx, tx, at.key)
	})
}

func attachmentsOf(ctx context.Context, tx *sql.Tx, key int64) (list []Attachment, err error) {
	err = eachRow(ctx, tx, `SELECT name, hash, length(data) FROM attachments JOIN blobs USING (hash) WHERE case_key = ? ORDER BY name`, func(scan func(...any) error) error {
		var a Attachment
		err := scan(&a.Name, &a.Hash, &a.Size)
		list = append(list, a)
		return err
	}, key)
	return list, err
}

func attach(ctx context.Context, tx *sql.Tx, caseID, name string, data []byte) error {
	if err := cases.CheckFileName(name); err != nil {
		return err
	}
	at, err := findAlive(ctx, tx, caseID)
	if err != nil {
		return err
	}
	hash := hashOf(data)
	if err := putBlob(ctx, tx, hash, data); err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO attachments (case_key, name, hash) VALUES (?, ?, ?)
		ON CONFLICT DO UPDATE SET hash = excluded.hash`, at.key, name, hash)
	return err
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

func hasBlob(ctx context.Context, tx *sql.Tx, hash string) (has bool, err error) {
	err = tx.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM blobs WHERE hash = ?)`, hash).Scan(&has)
	return has, err
}

func putBlob(ctx context.Context, tx *sql.Tx, hash string, data []byte) error {
	if len(data) > cases.MaxBundleBytes {
		return fmt.Errorf("%d bytes: a file may have %d MB", len(data), cases.MaxBundleBytes>>20)
	}
	if data == nil {
		data = []byte{} // nil would be NULL
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO blobs (hash, data) VALUES (?, ?) ON CONFLICT DO NOTHING`, hash, data)
	return err
}

// Bundle is a case with its files, or cases.ErrNotFound.
func (s *Store) Bundle(ctx context.Context, id string) (cases.Bundle, error) {
	return answer(ctx, s.view, fmt.Sprintf("reading case %q", id), func(tx *sql.Tx) (b cases.Bundle, err error) {
		at, err := findAlive(ctx, tx, id)
		if err != nil {
			return b, err
		}
		if b.Case, err = load(ctx, tx, at.key, at.revision); err != nil {
			return b, err
		}
		b.Files, err = filesOf(ctx, tx, at.key)
		return b, err
	})
}

func filesOf(ctx context.Context, tx *sql.Tx, key int64) (map[string][]byte, error) {
	files := map[string][]byte{}
	err := eachRow(ctx, tx, `SELECT name, data FROM attachments JOIN blobs USING (hash) WHERE case_key = ?`, func(scan func(...any) error) error {
		var name string
		data := []byte{}
		err := scan(&name, &data)
		files[name] = data
		return err
	}, key)
	return files, err
}

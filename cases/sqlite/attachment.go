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
	err = s.tx(ctx, func(tx *sql.Tx) error { return putBlob(ctx, tx, hash, data) })
	if err != nil {
		return "", fmt.Errorf("keeping a file: %w", err)
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
	err := s.tx(ctx, func(tx *sql.Tx) error { return attach(ctx, tx, caseID, name, data) })
	if err != nil {
		return fmt.Errorf("attaching to case %q: %w", caseID, err)
	}
	return nil
}

// Attachments lists the files of a case by name.
func (s *Store) Attachments(ctx context.Context, caseID string) (list []Attachment, err error) {
	err = s.view(ctx, func(tx *sql.Tx) error {
		at, err := findAlive(ctx, tx, caseID)
		if err != nil {
			return err
		}
		list, err = attachmentsOf(ctx, tx, at.key)
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("files of case %q: %w", caseID, err)
	}
	return list, nil
}

func attachmentsOf(ctx context.Context, tx *sql.Tx, key int64) ([]Attachment, error) {
	rows, err := tx.QueryContext(ctx, `SELECT name, hash, length(data)
		FROM attachments JOIN blobs USING (hash) WHERE case_key = ? ORDER BY name`, key)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var list []Attachment
	for rows.Next() {
		var a Attachment
		if err := rows.Scan(&a.Name, &a.Hash, &a.Size); err != nil {
			return nil, err
		}
		list = append(list, a)
	}
	return list, rows.Err()
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
	b := cases.Bundle{Files: map[string][]byte{}}
	err := s.view(ctx, func(tx *sql.Tx) error {
		at, err := findAlive(ctx, tx, id)
		if err != nil {
			return err
		}
		if b.Case, err = load(ctx, tx, at.key, at.revision); err != nil {
			return err
		}
		return filesOf(ctx, tx, at.key, b.Files)
	})
	if err != nil {
		return cases.Bundle{}, fmt.Errorf("reading case %q: %w", id, err)
	}
	return b, nil
}

func filesOf(ctx context.Context, tx *sql.Tx, key int64, files map[string][]byte) error {
	rows, err := tx.QueryContext(ctx, `SELECT name, data FROM attachments JOIN blobs USING (hash) WHERE case_key = ?`, key)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var name string
		data := []byte{}
		if err := rows.Scan(&name, &data); err != nil {
			return err
		}
		files[name] = data
	}
	return rows.Err()
}

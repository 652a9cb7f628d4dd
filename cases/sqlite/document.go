package sqlite

import (
	"context"
	"database/sql"

	"loopbook/cases"
)

// document is a case as a revision keeps it: its text, and its logs apart.
type document struct {
	text string
	logs string // hash of the blob; empty without logs
}

// split writes c as a document and keeps its logs. A case that the format
// refuses (it couldn't be read again) is a cases.Invalid.
func split(ctx context.Context, tx *sql.Tx, c cases.Case) (document, error) {
	logs := c.Logs
	c.Logs = nil
	text, err := cases.Encode(c)
	if err != nil {
		return document{}, err
	}
	if _, err := cases.Decode(text); err != nil {
		return document{}, err
	}
	doc := document{text: string(text)}
	if len(logs) > 0 {
		doc.logs, err = keepLogs(ctx, tx, logs)
	}
	return doc, err
}

func keepLogs(ctx context.Context, tx *sql.Tx, logs []cases.Log) (hash string, err error) {
	text, err := cases.Encode(cases.Case{Logs: logs})
	if err != nil {
		return "", err
	}
	hash = hashOf(text)
	known, err := hasBlob(ctx, tx, hash)
	if err != nil || known {
		return hash, err
	}
	if _, err := cases.Decode(text); err != nil {
		return "", err
	}
	return hash, putBlob(ctx, tx, hash, text)
}

// load reads revision number of the case.
func load(ctx context.Context, tx *sql.Tx, key int64, number int) (cases.Case, error) {
	var text string
	var logs []byte
	err := tx.QueryRowContext(ctx, `SELECT document, blobs.data
		FROM revisions LEFT JOIN blobs ON blobs.hash = revisions.logs
		WHERE case_key = ? AND number = ?`, key, number).Scan(&text, &logs)
	if err != nil {
		return cases.Case{}, err
	}
	c, err := cases.Decode([]byte(text))
	if err != nil || logs == nil {
		return c, err
	}
	apart, err := cases.Decode(logs)
	c.Logs = apart.Logs
	return c, err
}

//go:build !sqlite_fts5 && !fts5

package sqlite_test

import (
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"loopbook/cases/sqlite"
)

// TestOpenWithoutFTS runs in a build without the tag alone.
func TestOpenWithoutFTS(t *testing.T) {
	_, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "n.db"), time.Now)
	if err == nil || !strings.Contains(err.Error(), "sqlite_fts5") {
		t.Errorf("Open = %v, want an error that names the tag", err)
	}
}

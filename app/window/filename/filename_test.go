package filename_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"loopbook/app/window/filename"
)

// Where a file has the folder's name, a person is told what was kept and where, and no call of the system's.
func TestAFolderThatCannotBeMadeIsTold(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	if err := os.WriteFile(filepath.Join(home, "Documents"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := filename.InDocuments("a.pdf")
	if err == nil || !strings.Contains(err.Error(), "nothing was written") || !strings.Contains(err.Error(), home) || strings.Contains(err.Error(), "mkdir") {
		t.Errorf("told %v", err)
	}
}

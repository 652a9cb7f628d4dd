//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// TestKilled kills a process that writes cases: every case that it was told is
// kept must be there, and the file sound.
func TestKilled(t *testing.T) {
	const pathKey = "LOOPBOOK_TEST_WRITE"
	if path := os.Getenv(pathKey); path != "" {
		writeUntilKilled(path)
	}
	path := filepath.Join(t.TempDir(), "killed.db")
	cmd := exec.Command(os.Args[0], "-test.run=^TestKilled$")
	cmd.Env = append(os.Environ(), pathKey+"="+path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	var kept []string
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		kept = append(kept, lines.Text())
		if len(kept) == 100 {
			if err := cmd.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	cmd.Wait() // it was killed
	if len(kept) < 100 {
		t.Fatalf("the writer stopped by itself: %q", kept)
	}
	s := openAt(t, path)
	for _, id := range kept {
		if _, err := s.Get(context.Background(), id); err != nil {
			t.Errorf("a kept case is lost: %v", err)
		}
	}
	if err := s.Backup(context.Background(), path+".copy"); err != nil {
		t.Error(err)
	}
}

func writeUntilKilled(path string) {
	s, err := sqlite.Open(context.Background(), path, casetest.Clock())
	for i := 0; err == nil; i++ {
		var id string
		if id, err = s.Put(context.Background(), casetest.Invented(i), "new"); err == nil {
			fmt.Println(id)
		}
	}
	fmt.Println(err)
	os.Exit(1)
}

// TestReadsWhileWriting is for -race as much as for SQLite's locks.
func TestReadsWhileWriting(t *testing.T) {
	ctx, s := context.Background(), open(t)
	id := put(t, s, casetest.Invented(0), "new")
	written := make(chan struct{})
	var readers sync.WaitGroup
	for range 4 {
		readers.Add(1)
		go func() {
			defer readers.Done()
			for {
				select {
				case <-written:
					return
				default:
				}
				page, err := s.Search(ctx, cases.Query{Text: "c"})
				if err == nil && len(page.Items) != min(page.Total, 50) {
					err = fmt.Errorf("%d items of %d", len(page.Items), page.Total)
				}
				if err == nil {
					_, err = s.Get(ctx, id)
				}
				if err != nil {
					t.Errorf("reading: %v", err)
					return
				}
			}
		}()
	}
	for i := range 150 {
		if _, err := s.Put(ctx, casetest.Invented(i), "new"); err != nil {
			t.Errorf("writing: %v", err)
		}
	}
	close(written)
	readers.Wait()
}

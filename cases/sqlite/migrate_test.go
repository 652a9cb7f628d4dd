//go:build sqlite_fts5 || fts5

package sqlite

import (
	"bufio"
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestFailingScriptLeavesTheOldVersion(t *testing.T) {
	ctx := context.Background()
	db, err := connect(ctx, filepath.Join(t.TempDir(), "n.db"), writer)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	good := script{"1.sql", `CREATE TABLE a (x); INSERT INTO a VALUES (7)`}
	bad := script{"2.sql", `CREATE TABLE b (x); DELETE FROM a; INSERT INTO nowhere VALUES (1)`}
	err = migrate(ctx, db, []script{good, bad})
	if err == nil || !strings.Contains(err.Error(), "2.sql") {
		t.Errorf("migrate = %v, want a fault in 2.sql", err)
	}
	var version, rows, tables int
	if err := db.QueryRow(`SELECT user_version, (SELECT count(*) FROM a), (SELECT count(*) FROM sqlite_schema)
		FROM pragma_user_version`).Scan(&version, &rows, &tables); err != nil {
		t.Fatal(err)
	}
	if version != 1 || rows != 1 || tables != 1 {
		t.Errorf("version %d, %d rows, %d tables; want 1, 1, 1: as after 1.sql", version, rows, tables)
	}
	mended := script{"2.sql", `CREATE TABLE b (x)`}
	if err := migrate(ctx, db, []script{good, mended}); err != nil {
		t.Errorf("migrate once mended: %v", err)
	}
}

// TestReleasedMigrationsNeverChange: a change here needs a new script, never
// an edit. testdata/migrations.sha256 gains a line with each release.
func TestReleasedMigrationsNeverChange(t *testing.T) {
	list, err := os.ReadFile("testdata/migrations.sha256")
	if err != nil {
		t.Fatal(err)
	}
	scripts, err := scriptsOf(migrations)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for lines := bufio.NewScanner(bytes.NewReader(list)); lines.Scan(); n++ {
		if n >= len(scripts) {
			t.Fatalf("a released script is gone: %s", lines.Text())
		}
		got := fmt.Sprintf("%x  %s", sha256.Sum256([]byte(scripts[n].text)), filepath.Base(scripts[n].name))
		if got != lines.Text() {
			t.Errorf("script %d is %s, was released as %s", n+1, got, lines.Text())
		}
	}
	if n != len(scripts) {
		t.Errorf("%d of %d scripts are in testdata/migrations.sha256", n, len(scripts))
	}
}

func TestEverySettingTakesEffect(t *testing.T) {
	ctx := context.Background()
	s, err := Open(ctx, filepath.Join(t.TempDir(), "n.db"), nil)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for _, tt := range []struct {
		db      *sql.DB
		setting string
		want    string
	}{
		{s.write, "journal_mode", "wal"}, {s.write, "synchronous", "2"}, {s.write, "foreign_keys", "1"},
		{s.write, "busy_timeout", "5000"}, {s.write, "application_id", fmt.Sprint(applicationID)}, {s.read, "busy_timeout", "5000"},
	} {
		var got string
		if err := tt.db.QueryRowContext(ctx, `PRAGMA `+tt.setting).Scan(&got); err != nil || got != tt.want {
			t.Errorf("%s = %s, %v; want %s", tt.setting, got, err, tt.want)
		}
	}
	if _, err := s.read.ExecContext(ctx, `DELETE FROM cases`); err == nil {
		t.Error("the reader can write")
	}
}

// TestQueriesUseAnIndex: a list must not read the whole table and sort it.
func TestQueriesUseAnIndex(t *testing.T) {
	ctx := context.Background()
	s, err := Open(ctx, filepath.Join(t.TempDir(), "n.db"), nil)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for index, condition := range map[string]string{
		"cases_opened": ``, "cases_cause": ` AND cause = 'cap-weak'`, "cases_layout": ` AND layout = 'x'`,
		"cases_before": ` AND before_repair = 1`, "cases_after": ` AND after_repair = 1`,
	} {
		plan := planOf(t, s.read, `SELECT id FROM cases WHERE deleted IS NULL`+condition+` ORDER BY opened DESC, key DESC LIMIT 50`)
		if !strings.Contains(plan, index) || strings.Contains(plan, "TEMP B-TREE") {
			t.Errorf("with%s: %s; want %s and no sorting", condition, plan, index)
		}
	}
	if plan := planOf(t, s.read, byContent); !strings.Contains(plan, "SEARCH cases USING INDEX cases_content") {
		t.Errorf("a case that comes in is looked for by %s", plan)
	}
}

func planOf(t *testing.T, db *sql.DB, query string) string {
	t.Helper()
	rows, err := db.Query(`EXPLAIN QUERY PLAN `+query, make([]any, strings.Count(query, "?"))...)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var plan []string
	for rows.Next() {
		var a, b, c int
		var line string
		if err := rows.Scan(&a, &b, &c, &line); err != nil {
			t.Fatal(err)
		}
		plan = append(plan, line)
	}
	return strings.Join(plan, "; ")
}

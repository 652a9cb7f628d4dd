package diagnosis_test

import (
	"bufio"
	"compress/gzip"
	"os"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/trial"
)

// The diagnosis on cars of two other hands, who saw neither model nor tables (testdata/strangers): they stay what
// they are while both are tuned. -split 150 takes all of them.
func TestStrangersCars(t *testing.T) {
	for _, hand := range []string{"first", "second"} {
		hold(t, hand+" strangers'", func(t testing.TB, _ int64, n int, level trial.Level) []cases.Case {
			return strangers(t, hand, n, level)
		})
	}
}

// strangers are the first n of a hand's at a level, with the truth as the verdict.
func strangers(t testing.TB, hand string, n int, level trial.Level) []cases.Case {
	t.Helper()
	name := map[trial.Level]string{
		trial.Temperatures: "one-symptom", trial.OneSymptom: "one-symptom", trial.Complaint: "complaint", trial.Checks: "checks",
	}[level]
	file, err := os.Open(filepath.Join("..", "..", "testdata", "strangers", hand, name+".jsonl.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	plain, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	var out []cases.Case
	lines := bufio.NewScanner(plain)
	for len(out) < n && lines.Scan() {
		c, err := cases.Decode(lines.Bytes())
		if err != nil {
			t.Fatalf("%s %s, line %d: %v", hand, name, len(out)+1, err)
		}
		if level == trial.Temperatures {
			c.Complaint = cases.Complaint{}
		}
		out = append(out, c)
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

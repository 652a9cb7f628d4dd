package exchange_test

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// mostMB is what a process that reads a stranger's file may hold at its peak.
const mostMB = 300

// TestHostileFilesTakeBoundedMemory reads each file in a process of its own, whose
// peak is the system's own figure (Linux, /proc/self/status, VmHWM).
func TestHostileFilesTakeBoundedMemory(t *testing.T) {
	const fileKey = "LOOPBOOK_TEST_READ"
	if path := os.Getenv(fileKey); path != "" {
		readAlone(path)
	}
	if _, err := os.Stat("/proc/self/status"); err != nil || underRace || testing.Short() {
		t.Skip("needs /proc, and minutes under the race detector")
	}
	for _, tt := range []struct {
		name  string
		write func(*testing.T, io.Writer)
		want  string
	}{
		{"case of 1 GB in a bundle", bombs("case.json"), "larger than 288 MB"},
		{"case of 1 GB alone", func(_ *testing.T, w io.Writer) {
			io.Copy(w, io.MultiReader(strings.NewReader(`{"lesson": "`), io.LimitReader(forever('x'), 1<<30)))
		}, "larger than 32 MB"},
		{"case of 31 MB of brackets", nested("[", "]"), "max depth"},
		{"case of 31 MB of keys", nested(`{"a":`, "}"), "max depth"},
		{"case of 31 MB of small objects", func(_ *testing.T, w io.Writer) {
			b := bufio.NewWriter(w)
			fmt.Fprint(b, `{"format":"loopbook-case","version":1,"rounds":[{}`)
			for range 10 << 20 {
				b.WriteString(",{}")
			}
			fmt.Fprint(b, "]}")
			b.Flush()
		}, "too many items"},
		{"case of unknown keys", func(_ *testing.T, w io.Writer) {
			b := bufio.NewWriter(w)
			fmt.Fprint(b, `{"format":"loopbook-case","version":1`)
			for i := range 2 << 20 {
				fmt.Fprintf(b, `,"k%d":0`, i)
			}
			fmt.Fprint(b, "}")
			b.Flush()
		}, "too many keys"},
		{"bomb of 1 GB in a photo", bombs("photos/1.jpg"), "larger than 288 MB"},
		{"100000 entries", func(t *testing.T, w io.Writer) {
			z := zip.NewWriter(w)
			for i := range 100_000 {
				if _, err := z.Create(fmt.Sprintf("photos/%d.jpg", i)); err != nil {
					t.Fatal(err)
				}
			}
			z.Close()
		}, "more than 10000 entries"},
		{"bomb of 1 GB in a collection", bombs("1.zip"), "larger than 272 MB"},
		{"the fullest that is allowed", func(t *testing.T, w io.Writer) {
			c := casetest.Invented(1)
			big := make([]byte, 64<<20)
			files := map[string][]byte{"photos/1.jpg": big, "photos/2.jpg": big, "photos/3.jpg": big}
			if err := exchange.WriteBundle(w, cases.Bundle{Case: c, Files: files}); err != nil {
				t.Fatal(err)
			}
		}, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "hostile")
			f, err := os.Create(path)
			if err != nil {
				t.Fatal(err)
			}
			tt.write(t, f)
			f.Close()
			for _, piped := range []string{"", "|"} {
				cmd := exec.Command(os.Args[0], "-test.run=^TestHostileFilesTakeBoundedMemory$")
				cmd.Env = append(os.Environ(), fileKey+"="+piped+path, "TMPDIR="+dir)
				out, err := cmd.Output()
				peak, said, _ := strings.Cut(string(out), "\n")
				mb, errMB := strconv.Atoi(peak)
				if err != nil || errMB != nil || !strings.Contains(said, tt.want) || (tt.want == "") != (said == "") {
					t.Errorf("%q: %v; said %.200q, want %q", piped, err, said, tt.want)
				}
				t.Logf("%q: peak %d MB", piped, mb)
				if mb > mostMB {
					t.Errorf("%q: peak %d MB, may be %d", piped, mb, mostMB)
				}
			}
			if left, err := os.ReadDir(dir); err != nil || len(left) != 1 {
				t.Errorf("left behind: %v, %v", left, err)
			}
		})
	}
}

// readAlone reads a file, or a pipe of it, and says its peak and the reason why it
// was refused.
func readAlone(path string) {
	var in io.Reader
	path, piped := strings.CutPrefix(path, "|")
	f, err := os.Open(path)
	if in = f; piped {
		in = io.MultiReader(f) // hides that it can be sought
	}
	if err == nil {
		err = exchange.EachOf(context.Background(), "NAME", in, func(_ cases.Bundle, err error) error { return err })
	}
	status, _ := os.ReadFile("/proc/self/status")
	_, after, _ := strings.Cut(string(status), "VmHWM:")
	kB, _ := strconv.Atoi(strings.Fields(after)[0])
	fmt.Println(kB >> 10)
	if err != nil {
		fmt.Print(err)
	}
	os.Exit(0)
}

// bombs writes a zip with 1 GB of zeros under the name.
func bombs(name string) func(*testing.T, io.Writer) {
	return func(t *testing.T, w io.Writer) {
		z := zip.NewWriter(w)
		e, err := z.Create(name)
		if err == nil {
			_, err = io.Copy(e, io.LimitReader(forever(0), 1<<30))
		}
		if err := errors.Join(err, z.Close()); err != nil {
			t.Fatal(err)
		}
	}
}

// nested writes a case whose lesson is nested too deeply to be read.
func nested(open, shut string) func(*testing.T, io.Writer) {
	return func(_ *testing.T, w io.Writer) {
		const mb = 31
		n := mb << 20 / (len(open) + len(shut))
		b := bufio.NewWriter(w)
		fmt.Fprint(b, `{"format":"loopbook-case","version":1,"lesson":`)
		for range n {
			b.WriteString(open)
		}
		b.WriteString("0")
		for range n {
			b.WriteString(shut)
		}
		b.WriteString("}")
		b.Flush()
	}
}

func collection(t testing.TB, bundles ...cases.Bundle) []byte {
	t.Helper()
	var buf bytes.Buffer
	i := 0
	_, err := exchange.WriteCollection(&buf, cases.Class{}, func() (cases.Bundle, error) {
		if i == len(bundles) {
			return cases.Bundle{}, io.EOF
		}
		i++
		return bundles[i-1], nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

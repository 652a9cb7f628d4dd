package exchange_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// each reads everything that a file gives: the titles, and the reasons.
func each(t *testing.T, in []byte) (ids, refused []string, err error) {
	t.Helper()
	err = exchange.EachOf(context.Background(), "NAME", bytes.NewBuffer(in), func(b cases.Bundle, err error) error {
		if err != nil {
			refused = append(refused, err.Error())
			return nil
		}
		ids = append(ids, fmt.Sprintf("%s %d", b.Case.ID, len(b.Files)))
		return nil
	})
	return ids, refused, err
}

func TestCollectionRoundTrip(t *testing.T) {
	in := collection(t, pictured(), exchange.Bundle{Case: casetest.Invented(2)}, exchange.Bundle{Case: casetest.Invented(3)})
	ids, refused, err := each(t, in)
	if want := "[CASE-000007 2 CASE-000002 0 CASE-000003 0]"; fmt.Sprint(ids) != want || refused != nil || err != nil {
		t.Errorf("Each = %v, %v, %v; want %s", ids, refused, err, want)
	}
	if !bytes.Equal(in, collection(t, pictured(), exchange.Bundle{Case: casetest.Invented(2)}, exchange.Bundle{Case: casetest.Invented(3)})) {
		t.Error("the second writing differs from the first")
	}
	for name, one := range map[string][]byte{"case": caseBytes(t, pictured().Case), "bundle": bundleBytes(t, pictured())} {
		if ids, _, err := each(t, one); len(ids) != 1 || err != nil {
			t.Errorf("a %s alone = %v, %v", name, ids, err)
		}
	}
}

// A bad bundle is refused with its reason and doesn't keep the others out.
func TestCollectionRefuses(t *testing.T) {
	good := string(bundleBytes(t, exchange.Bundle{Case: casetest.Invented(1)}))
	other := string(bundleBytes(t, exchange.Bundle{Case: casetest.Invented(2)}))
	sameID := casetest.Invented(1)
	sameID.Title = "somebody else's"
	evil := string(zipOf(t, entry{"case.json", string(caseBytes(t, casetest.Invented(4))), 0}, entry{"../up", "x", 0}))
	link := entry{"2.zip", "/etc/passwd", 0o777 | os.ModeSymlink}
	for _, tt := range []struct {
		name    string
		in      []byte
		want    int
		refused string
		err     string
	}{
		{"one leads out", zipOf(t, entry{"1.zip", good, 0}, entry{"2.zip", evil, 0}, entry{"3.zip", other, 0}), 2, `2.zip: file name "../up"`, ""},
		{"one is no bundle", zipOf(t, entry{"1.zip", good, 0}, entry{"2.zip", "PK", 0}), 1, "2.zip: the zip is cut short", ""},
		{"ids collide", collection(t, exchange.Bundle{Case: casetest.Invented(1)}, exchange.Bundle{Case: sameID}), 1, "another case of this file has the same id", ""},
		{"entry twice", zipOf(t, entry{"1.zip", good, 0}, entry{"1.zip", other, 0}), 0, "", "is there twice"},
		{"a link", zipOf(t, entry{"1.zip", good, 0}, link), 0, "", ""},
		{"a folder out", zipOf(t, entry{"1.zip", good, 0}, entry{"../2.zip", other, 0}), 0, "", ""},
		{"absolute", zipOf(t, entry{"/1.zip", good, 0}), 0, "", ""},
		{"a collection in a collection", zipOf(t, entry{"1.zip", string(zipOf(t, entry{"1.zip", good, 0})), 0}), 0, "no case.json", ""},
		{"an empty zip", zipOf(t), 0, "", "no case.json"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			ids, refused, err := each(t, tt.in)
			if len(ids) != tt.want {
				t.Errorf("read %v, want %d", ids, tt.want)
			}
			said := strings.Join(refused, "\n")
			if !strings.Contains(said, tt.refused) || err == nil && tt.want == 0 && said == "" {
				t.Errorf("refused %q, %v; want %q", said, err, tt.refused)
			}
			if tt.err != "" && (err == nil || !strings.Contains(err.Error(), tt.err)) {
				t.Errorf("error %v, want %q", err, tt.err)
			}
		})
	}
}

func TestCollectionStops(t *testing.T) {
	in := collection(t, exchange.Bundle{Case: casetest.Invented(1)}, exchange.Bundle{Case: casetest.Invented(2)})
	ctx, cancel := context.WithCancel(context.Background())
	n := 0
	err := exchange.EachOf(ctx, "NAME", bytes.NewReader(in), func(cases.Bundle, error) error {
		n++
		cancel()
		return nil
	})
	if n != 1 || !errors.Is(err, context.Canceled) {
		t.Errorf("after the cancel %d were read, %v", n, err)
	}
	err = exchange.EachOf(context.Background(), "NAME", bytes.NewReader(in), func(cases.Bundle, error) error { return io.ErrClosedPipe })
	if !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("Each = %v, want the taker's own error", err)
	}
}

// A class set comes back by its name, in one line; one whose name can't be handed over isn't written without it.
func TestAClassSetKeepsItsName(t *testing.T) {
	for class, want := range map[string]string{"": "", "Tuesday’s": "Tuesday’s", "a\n\x00 b": "a b", strings.Repeat("ß", 100): strings.Repeat("ß", 100)} {
		var buf bytes.Buffer
		left := []cases.Bundle{{Case: casetest.Invented(2)}, {Case: casetest.Invented(1)}}
		_, err := exchange.WriteCollection(&buf, cases.Class{Name: class, Sealed: true}, func() (cases.Bundle, error) {
			if len(left) == 0 {
				return cases.Bundle{}, io.EOF
			}
			b := left[0]
			left = left[1:]
			return b, nil
		})
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		err = exchange.EachOf(context.Background(), "NAME", &buf, func(b cases.Bundle, err error) error {
			if n++; b.Class != want || b.Sealed != (want != "") {
				t.Errorf("%.20q came back as %q, sealed %t", class, b.Class, b.Sealed)
			}
			return err
		})
		if n != 2 || err != nil {
			t.Errorf("%d cases, %v", n, err)
		}
	}
}

func TestALongClassNameIsntLostOnItsWay(t *testing.T) {
	n, err := exchange.WriteCollection(io.Discard, cases.Class{Name: strings.Repeat("x", 101)}, func() (cases.Bundle, error) {
		t.Error("a case is asked for")
		return cases.Bundle{}, io.EOF
	})
	if n != 0 || err == nil || !strings.Contains(err.Error(), "100 letters") {
		t.Errorf("a name of 101 letters: %d written, %v", n, err)
	}
}

func TestWriteCollectionRefuses(t *testing.T) {
	bad := casetest.Invented(1)
	bad.Loop.Layout = "ring"
	first := true
	_, err := exchange.WriteCollection(io.Discard, cases.Class{}, func() (cases.Bundle, error) {
		if first {
			first = false
			return cases.Bundle{Case: bad}, nil
		}
		return cases.Bundle{}, io.EOF
	})
	if err == nil {
		t.Error("a bad case was written")
	}
	if _, err := exchange.WriteCollection(io.Discard, cases.Class{}, func() (cases.Bundle, error) { return cases.Bundle{}, io.EOF }); err == nil {
		t.Error("a collection of nothing was written")
	}
}

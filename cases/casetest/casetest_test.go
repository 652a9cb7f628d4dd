package casetest_test

import (
	"bytes"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestInventedCasesAreValidAndTheSameEachTime(t *testing.T) {
	for n := range 300 {
		text, err := cases.Encode(casetest.Invented(n))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := cases.Decode(text); err != nil {
			t.Fatalf("Invented(%d): %v", n, err)
		}
		if again, _ := cases.Encode(casetest.Invented(n)); !bytes.Equal(text, again) {
			t.Fatalf("Invented(%d) differs from one call to the next", n)
		}
	}
}

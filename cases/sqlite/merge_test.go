//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

func TestImportMakesNothingTwice(t *testing.T) {
	ctx, s := context.Background(), open(t)
	take := func(b cases.Bundle, want cases.Meeting) cases.Met {
		t.Helper()
		met, err := s.Import(ctx, b, "import")
		if err != nil || met.Meeting != want {
			t.Fatalf("Import = %q, %v; want %q", met.Meeting, err, want)
		}
		return met
	}
	mine := casetest.Invented(1)
	b := cases.Bundle{Case: mine, Files: map[string][]byte{"photos/1.jpg": []byte("a")}}
	take(b, cases.MeetsNone)
	take(b, cases.MeetsSame)
	renamed := b
	renamed.Case.ID = "ANOTHER"
	if met := take(renamed, cases.MeetsSame); met.ID != mine.ID {
		t.Errorf("the same content under another id is %q, want %q", met.ID, mine.ID)
	}
	b.Files = map[string][]byte{"photos/1.jpg": []byte("theirs"), "photos/2.jpg": []byte("b")}
	take(b, cases.MeetsSame)
	files, err := s.Attachments(ctx, mine.ID)
	if err != nil || len(files) != 2 {
		t.Fatalf("files %v, %v; want the new one beside the old", files, err)
	}
	if data, err := s.Attachment(ctx, files[0].Hash); err != nil || string(data) != "a" {
		t.Errorf("my own file became %q, %v", data, err)
	}
	edited := mine
	edited.Lesson = "edited here"
	put(t, s, edited, "lesson")
	take(cases.Bundle{Case: mine}, cases.MeetsOlder)
	if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != 1 {
		t.Errorf("%d cases, %v; want 1", page.Total, err)
	}
}

func TestConflictsWaitForAChoice(t *testing.T) {
	ctx := context.Background()
	mine, theirs := casetest.Invented(1), casetest.Invented(1)
	mine.Lesson, theirs.Lesson = "mine", "theirs"
	for choice, want := range map[cases.Choice][]string{cases.KeepMine: {"mine"}, cases.TakeTheirs: {"theirs"}, cases.KeepBoth: {"mine", "theirs"}} {
		s := open(t)
		put(t, s, mine, "new")
		met, err := s.Import(ctx, cases.Bundle{Case: theirs, Files: map[string][]byte{"photos/1.jpg": nil}}, "import")
		if err != nil || met.Meeting != cases.MeetsOther || met.Mine.Lesson != "mine" || met.Theirs.Case.Lesson != "theirs" {
			t.Fatalf("Import = %+v, %v; want a conflict", met.Meeting, err)
		}
		if c, err := s.Get(ctx, mine.ID); err != nil || c.Lesson != "mine" {
			t.Errorf("before the choice it says %q, %v", c.Lesson, err)
		}
		id, err := s.Resolve(ctx, met.Theirs, choice, "import")
		if err != nil {
			t.Fatal(err)
		}
		if c, err := s.Get(ctx, id); err != nil || c.Lesson != want[len(want)-1] {
			t.Errorf("%s: %q, %v; want %v", choice, c.Lesson, err, want)
		}
		if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != len(want) {
			t.Errorf("%s: %d cases, %v; want %v", choice, page.Total, err, want)
		}
		if choice == cases.TakeTheirs {
			if c, err := s.Undo(ctx, id); err != nil || c.Lesson != "mine" {
				t.Errorf("undone it says %q, %v", c.Lesson, err)
			}
		}
	}
}

func TestABadBundleChangesNothing(t *testing.T) {
	ctx, s := context.Background(), open(t)
	b := cases.Bundle{Case: casetest.Invented(1), Files: map[string][]byte{"photos/1.jpg": nil, "../up": nil}}
	if _, err := s.Import(ctx, b, "import"); err == nil {
		t.Fatal("a file that leads out was taken")
	}
	if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != 0 {
		t.Errorf("%d cases, %v; want none", page.Total, err)
	}
	met, err := s.Import(ctx, cases.Bundle{Case: casetest.Invented(1)}, "import")
	if err != nil || met.Meeting != cases.MeetsNone {
		t.Errorf("taken in mended: %v, %v", met.Meeting, err)
	}
	if page, err := s.Search(ctx, cases.Query{Text: casetest.Invented(1).Tags[0][:4] + "x"}); err != nil {
		t.Errorf("the words of a case that was taken back: %v, %v", page, err)
	}
}

func TestImportOfSeveralIsAllOrNothing(t *testing.T) {
	ctx, s := context.Background(), open(t)
	put(t, s, casetest.Invented(1), "new")
	other := casetest.Invented(1)
	other.Title = "Told differently"
	all := []cases.Bundle{{Case: casetest.Invented(2)}, {Case: casetest.Invented(2)}, {Case: other}}
	bad := cases.Bundle{Case: casetest.Invented(3), Files: map[string][]byte{"../x": nil}}
	if met, err := s.ImportAll(ctx, append(all, bad), "import"); !errors.Is(err, cases.ErrFileName) || met != nil {
		t.Errorf("with a bad one %v, %v", met, err)
	}
	if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != 1 {
		t.Errorf("after a fault it holds %d, %v", page.Total, err)
	}
	met, err := s.ImportAll(ctx, all, "import")
	if err != nil || len(met) != 3 || met[0].Meeting != cases.MeetsNone || met[1].Meeting != cases.MeetsSame || met[2].Meeting != cases.MeetsOther {
		t.Errorf("met %+v, %v", met, err)
	}
}

// Two tablets give a case's first picture the same name. Who took the other one's case had its picture under both: a step
// back showed theirs where mine had been, and mine was nowhere.
func TestTheirFilesLieBesideMine(t *testing.T) {
	ctx := context.Background()
	mine, theirs := casetest.Invented(1), casetest.Invented(1)
	mine.Photos, theirs.Photos = []cases.Photo{{File: "photos/1.jpg"}}, []cases.Photo{{File: "photos/1.jpg"}, {File: "photos/1-2.jpg"}, {File: "photos/same.jpg"}}
	shows := func(s *sqlite.Store, c cases.Case) (out []string) {
		b, err := s.Bundle(ctx, c.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range c.Photos {
			out = append(out, string(b.Files[p.File]))
		}
		return out
	}
	for name, deleted := range map[string]bool{"in a conflict": false, "of a case that was deleted": true} {
		s := open(t)
		if _, err := s.Import(ctx, cases.Bundle{Case: mine, Files: map[string][]byte{"photos/1.jpg": []byte("mine"), "photos/same.jpg": []byte("same")}}, "import"); err != nil {
			t.Fatal(err)
		}
		if deleted {
			if err := s.Delete(ctx, mine.ID); err != nil {
				t.Fatal(err)
			}
		}
		met, err := s.Import(ctx, cases.Bundle{Case: theirs, Files: map[string][]byte{"photos/1.jpg": []byte("theirs"), "photos/1-2.jpg": []byte("second"), "photos/same.jpg": []byte("same")}}, "import")
		if err == nil && !deleted {
			_, err = s.Resolve(ctx, met.Theirs, cases.TakeTheirs, "import")
		}
		now, errNow := s.Get(ctx, mine.ID)
		if err != nil || errNow != nil {
			t.Fatal(err, errNow)
		}
		if got := shows(s, now); !slices.Equal(got, []string{"theirs", "second", "same"}) || now.Photos[2].File != "photos/same.jpg" {
			t.Errorf("%s: taken, it shows %q as %v", name, got, now.Photos)
		}
		before, err := s.Undo(ctx, mine.ID)
		if got := shows(s, before); err != nil || !slices.Equal(got, []string{"mine"}) {
			t.Errorf("%s: a step back it shows %q, %v; want mine", name, got, err)
		}
	}
}

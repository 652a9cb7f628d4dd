package window

import (
	"bytes"
	"context"
	"fmt"
	"image/color"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// A dropped picture is kept as it came, once, under a name that no other has.
func TestDroppedPhotosAreKept(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	first, second := benchtest.PictureFile(t, "hose.JPG", color.Black), benchtest.PictureFile(t, "hose.JPG", color.White)
	for _, path := range []string{first, second, first} {
		w.menus.arrivals.take([]fyne.URI{storage.NewFileURI(path)})
		if path != second {
			continue
		}
		w.window.Canvas().Focused().(*kit.Field).SetText("the second")
	}
	if got := w.at.Desk.Case.Photos[1].Caption; got != "the second" {
		t.Errorf("what is typed behind the second picture is its caption %q", got)
	}
	var files []string
	for _, p := range w.at.Desk.Case.Photos {
		files = append(files, p.File)
	}
	if !slices.Equal(files, []string{"photos/hose.jpg", "photos/hose-2.jpg"}) {
		t.Fatalf("the case has %v", files)
	}
	b, err := w.at.Desk.Store.Bundle(context.Background(), w.at.Desk.Case.ID)
	want, errRead := os.ReadFile(second)
	if err != nil || errRead != nil || !bytes.Equal(b.Files["photos/hose-2.jpg"], want) {
		t.Errorf("kept %d bytes of %d: %v, %v", len(b.Files["photos/hose-2.jpg"]), len(want), err, errRead)
	}
	if says := kittest.Texts(w.screens.photos.Content()); w.screens.tabs.SelectedIndex() != photosTab || !strings.Contains(says, kit.L("window.photos.here-already")) {
		t.Error("the photos aren't shown")
	}
}

// What is dropped on the history goes into the open case, and is seen there.
func TestWhatIsDroppedOnTheHistoryIsSeen(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	for path, tab := range map[string]int{
		benchtest.PictureFile(t, "hose.jpg", color.White): photosTab,
		"../../testdata/logs/cold_drive_full.csv":         warmUpTab,
	} {
		w.enter(historyRoom)
		w.menus.arrivals.take([]fyne.URI{storage.NewFileURI(path)})
		if w.rooms.now != caseRoom || w.screens.tabs.SelectedIndex() != tab {
			t.Errorf("%s leads to room %v, page %d", path, w.rooms.now, w.screens.tabs.SelectedIndex())
		}
	}
}

// What a phone or a stick has of one car is dropped at once: its logs and its pictures all go into the open case.
func TestLogsAndPhotosAreDroppedTogether(t *testing.T) {
	w, _ := shown(t)
	log := func(name string, from int) string {
		path := filepath.Join(t.TempDir(), name)
		text := "Time,Coolant temperature (°C)\n"
		for i := 0; i < 60; i++ {
			text += fmt.Sprintf("%d,%d\n", i*10, from+i)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	var all []fyne.URI
	for _, path := range []string{log("first.csv", 10), benchtest.PictureFile(t, "hose.jpg", color.White), log("second.CSV", 15)} {
		all = append(all, storage.NewFileURI(path))
	}
	w.menus.opener.begin()
	w.menus.arrivals.take(all)
	c := w.at.Desk.Case
	if len(c.Photos) != 1 || len(c.Logs) != 2 || c.Logs[0].Name != "first" || c.Logs[1].Name != "second" {
		t.Fatalf("the case has %d photos and the logs %+v", len(c.Photos), c.Logs)
	}
}

// Beside a case that is dropped, nothing says whose the logs and pictures are: they are left, and that is told.
func TestWhatLiesBesideADroppedCaseIsLeft(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	mine := w.at.Desk.Case.ID
	path := filepath.Join(t.TempDir(), "one.json")
	if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteCase(f, casetest.Invented(1)) }); err != nil {
		t.Fatal(err)
	}
	var all []fyne.URI
	for _, p := range []string{"../../testdata/logs/cold_drive_full.csv", path, benchtest.PictureFile(t, "hose.jpg", color.White)} {
		all = append(all, storage.NewFileURI(p))
	}
	w.menus.arrivals.take(all)
	if said := benchtest.Says(w.window); !strings.Contains(said, kit.L("window.share.taken", 1, 0, 0)) || !strings.Contains(said, kit.L("window.share.left", 2)) {
		t.Errorf("it says %q", said)
	}
	if c := w.at.Desk.Case; c.ID == mine || len(c.Logs)+len(c.Photos) > len(casetest.Invented(1).Logs)+len(casetest.Invented(1).Photos) {
		t.Errorf("open is %q with %d logs and %d photos", c.Title, len(c.Logs), len(c.Photos))
	}
}

// The pictures of a case that came in have their copies before anybody looks at them.
func TestAnImportedPictureIsMadeSmaller(t *testing.T) {
	w, _ := shown(t)
	data, err := os.ReadFile(benchtest.PictureFile(t, "hose.jpg", color.White))
	if err != nil {
		t.Fatal(err)
	}
	b := cases.Bundle{Case: casetest.Invented(1), Files: map[string][]byte{"photos/1.jpg": data}}
	b.Case.Photos = []cases.Photo{{File: "photos/1.jpg"}}
	path := filepath.Join(t.TempDir(), "one.zip")
	if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteBundle(f, b) }); err != nil {
		t.Fatal(err)
	}
	w.menus.arrivals.intake.Take([]string{path}, 0)
	hashes, err := library.HashesOf(w.at.Ctx, w.at.Desk.Store, w.at.Desk.Case.ID)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.at.Desk.Store.Smaller(w.at.Ctx, hashes["photos/1.jpg"]); err != nil || w.screens.tabs.SelectedIndex() == photosTab {
		t.Errorf("%v; tab %d is in sight", err, w.screens.tabs.SelectedIndex())
	}
}

// What trainees handed in is taken in as results, though its name ends as a log's does, and a log that is dropped with it goes
// into the open case.
func TestDroppedResultsAreTakenIn(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	files := []fyne.URI{storage.NewFileURI("../../testdata/logs/cold_drive_full.csv")}
	for _, who := range []string{"Liv", "Ada"} {
		path := filepath.Join(t.TempDir(), "results.csv")
		one := []cases.Result{{Trainee: who, Class: "Tuesday", CaseID: "a", Title: "No heat", Truth: "pump-weak", Finished: time.Date(2026, 3, 4, 18, 30, 9, 0, time.UTC)}}
		if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteResults(f, one) }); err != nil {
			t.Fatal(err)
		}
		files = append(files, storage.NewFileURI(path))
	}
	w.menus.arrivals.take(files)
	if said := benchtest.Says(w.window); !strings.Contains(said, kit.L("window.practice.results-taken", 2, 0)) {
		t.Errorf("it says %q", said)
	}
	if results, err := w.at.Desk.Store.Results(w.at.Ctx, "Tuesday"); err != nil || len(results) != 2 {
		t.Errorf("kept are %+v, %v", results, err)
	}
	if logs := w.at.Desk.Case.Logs; len(logs) != 1 {
		t.Errorf("the open case has %d logs", len(logs))
	}
}

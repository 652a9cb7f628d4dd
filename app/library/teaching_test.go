package library

import (
	"context"
	"reflect"
	"slices"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/query"
	"loopbook/cases/sqlite"
)

// A taught copy is anonymous and stands beside the real case, which stays as it is. A second one isn't made over what a
// trainer wrote into the first, and the shop's history counts the car once.
func TestATaughtCopyStandsBesideItsCase(t *testing.T) {
	first := casetest.Invented(1)
	first.Verdict.Cause = "pump-weak"
	first.Customer.Name = "Dorian Peckwell"
	s, ids := notebookOf(t, cases.Bundle{Case: first})
	ctx := context.Background()
	get := func(id string) cases.Case {
		c, err := s.Get(ctx, id)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	whole, before := get(ids[0]), historyOf(t, s)
	met, err := Teach(ctx, s, whole.ID, nil)
	if err != nil || met.Meeting != cases.MeetsNone || met.ID == whole.ID {
		t.Fatalf("the copy is %+v, %v", met, err)
	}
	copied := get(met.ID)
	if copied.Customer.Name != "" || copied.Verdict.Cause != "pump-weak" || !slices.Contains(copied.Tags, cases.TaughtTag) {
		t.Errorf("the copy is of %+v, was %v, tagged %v", copied.Customer, copied.Verdict.Cause, copied.Tags)
	}
	if want := "Taught: " + whole.Title; copied.Title != want {
		t.Errorf("the list calls the copy %q, want %q", copied.Title, want)
	}
	if now := get(whole.ID); !reflect.DeepEqual(now, whole) {
		t.Errorf("the real case became %+v", now)
	}
	if after := historyOf(t, s); !reflect.DeepEqual(after, before) {
		t.Errorf("the history was %+v, with the copy it is %+v", before, after)
	}
	for search, want := range map[string]string{SearchFor(nil): whole.ID, "tag:" + cases.TaughtTag: met.ID} {
		if found, err := IDsOf(ctx, s, query.Parse(search, time.UTC).Query); err != nil || !slices.Equal(found, []string{want}) {
			t.Errorf("%q finds %v, %v; want %s", search, found, err, want)
		}
	}
	if like, err := Alike(ctx, s, whole.ID); err != nil || len(like) != 0 {
		t.Errorf("the real case is like %+v, %v", like, err)
	}
	copied.Lesson = "Look at the pump first."
	if _, err := s.Put(ctx, copied, "lesson"); err != nil {
		t.Fatal(err)
	}
	if again, err := Teach(ctx, s, met.ID, nil); err != nil || again.ID != met.ID {
		t.Errorf("a copy of the copy is %+v, %v", again, err)
	}
	if again, err := Teach(ctx, s, whole.ID, nil); err != nil || again.ID != met.ID || get(met.ID).Lesson != copied.Lesson {
		t.Errorf("a second copy is %+v, %v, the lesson %q", again, err, get(met.ID).Lesson)
	}
}

func historyOf(t *testing.T, s *sqlite.Store) any {
	t.Helper()
	h, err := History(context.Background(), s, 50000)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// A copy whose title would tell the answer is called by what the customer felt, and that is told; a word that the complaint has
// too tells nothing.
func TestATaughtCopysTitleDoesNotTellTheAnswer(t *testing.T) {
	cold, fan, hot := cases.Symptom("cabin-heat-poor"), cases.Symptom("fan-never-on"), cases.Symptom("overheats-idle")
	stored := []cases.Code{{Code: "P0128"}}
	for _, tt := range []struct {
		title    string
		cause    cases.Cause
		symptoms []cases.Symptom
		codes    []cases.Code
		part     string
		want     string
	}{
		{"Cold cabin: thermostat stuck open", "thermostat-stuck-open", []cases.Symptom{cold}, stored, "", "Taught: Poor cabin heat, P0128"},
		{"Cold cabin", "thermostat-stuck-open", []cases.Symptom{cold}, stored, "", ""},
		{"Kalter Innenraum, Thermostatgehäuse", "thermostat-stuck-open", nil, nil, "", "Taught: What is it?"},
		{"Cold cabin: thermostat stuck open", "thermostat-stuck-open", nil, []cases.Code{{State: "stored"}}, "", "Taught: What is it?"}, // noted without its letters
		{"Zwei Thermostate, das falsche erneuert", "", nil, nil, "", ""},
		{"Cold cabin, the flap", "heater-air-side", []cases.Symptom{cold}, nil, "Flap motor", "Taught: Poor cabin heat"},
		{"Hot, fan never on", "fan-not-running", []cases.Symptom{fan, hot}, nil, "", ""},
		{"Hot, fan never on", "fan-not-running", []cases.Symptom{hot}, nil, "", "Taught: Overheats standing"},
	} {
		c := casetest.Invented(1)
		c.Title, c.Verdict.Cause, c.Complaint.Symptoms, c.Codes, c.Repair.Parts = tt.title, tt.cause, tt.symptoms, tt.codes, nil
		if tt.part != "" {
			c.Repair.Parts = []cases.Part{{Name: tt.part}}
		}
		s, ids := notebookOf(t, cases.Bundle{Case: c})
		met, err := Teach(context.Background(), s, ids[0], nil)
		if err != nil || met.Plain != tt.want {
			t.Errorf("%q with %s is called %q, %v; want %q", tt.title, tt.cause, met.Plain, err, tt.want)
			continue
		}
		want := tt.want
		if want == "" {
			want = "Taught: " + tt.title
		}
		if copied, err := s.Get(context.Background(), met.ID); err != nil || copied.Title != want {
			t.Errorf("the copy is called %q, %v; want %q", copied.Title, err, want)
		}
	}
}

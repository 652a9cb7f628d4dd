// Package casetest builds cases for tests. Everything in them is invented.
package casetest

import (
	"fmt"
	"math/rand"
	"time"

	"loopbook/cases"
	"loopbook/diagram"
)

// Start is when the first invented case was opened.
var Start = time.Date(2024, 1, 8, 8, 0, 0, 0, time.UTC)

// Clock answers a clock that stands at Start and moves on by a second with
// each look. It is not for use from several goroutines.
func Clock() func() time.Time {
	t := Start
	return func() time.Time {
		t = t.Add(time.Second)
		return t
	}
}

// P is a pointer to v, for the fields that may be unknown.
func P[T any](v T) *T { return &v }

// Invented is case number n of an endless, varied notebook: the same n gives
// the same case. Half an hour passes from one to the next; one in five is open.
func Invented(n int) cases.Case {
	r := rand.New(rand.NewSource(int64(n)))
	c := cases.Case{
		Format: cases.Format, Version: cases.Version,
		ID:        fmt.Sprintf("CASE-%06d", n),
		Title:     title(r),
		Opened:    Start.Add(time.Duration(n) * 30 * time.Minute),
		Vehicle:   vehicle(r),
		Customer:  cases.Customer{Name: fmt.Sprintf("Customer %d", r.Intn(3000)), Contact: fmt.Sprintf("bay %d", r.Intn(9))},
		Loop:      loop(r),
		Site:      cases.Site{AmbientC: P(diagram.Celsius(r.Intn(35))), AltitudeM: P(diagram.Metre(r.Intn(900)))},
		Complaint: cases.Complaint{Text: sentence(r, 14), Symptoms: some(r, cases.Words[cases.Symptom](), 3)},
		Codes:     []cases.Code{{Code: fmt.Sprintf("P%04d", 100+r.Intn(60)), State: pick(r, "stored", "pending")}},
		Rounds:    rounds(r, n),
		Tests:     []cases.Test{{Kind: cases.Words[cases.TestKind]()[r.Intn(13)], Stage: cases.BeforeRepair}},
		Repair:    cases.Repair{AccessNote: sentence(r, 6)},
		Tags:      some(r, tags, 2),
		Lesson:    sentence(r, 12),
	}
	if r.Intn(5) > 0 {
		causes := cases.Words[cases.Cause]()
		c.Verdict = cases.Verdict{Cause: causes[r.Intn(len(causes))], ConfirmedBy: string(c.Tests[0].Kind), Note: sentence(r, 10)}
	}
	return c
}

// Notebook is the first n invented cases.
func Notebook(n int) []cases.Case {
	all := make([]cases.Case, n)
	for i := range all {
		all[i] = Invented(i)
	}
	return all
}

func vehicle(r *rand.Rand) cases.Vehicle {
	return cases.Vehicle{
		Make:       fmt.Sprintf("Maker %c", 'A'+r.Intn(20)),
		Model:      pick(r, "hatchback", "estate", "saloon", "van", "pick-up", "coach"),
		Engine:     fmt.Sprintf("%d.%d %d-cylinder", 1+r.Intn(4), r.Intn(10), 3+r.Intn(4)),
		Year:       P(1990 + r.Intn(35)),
		Motive:     cases.Words[cases.Motive]()[r.Intn(4)],
		OdometerKm: P(float64(r.Intn(300000))),
	}
}

func loop(r *rand.Rand) cases.Loop {
	return cases.Loop{
		Layout: pick(r, "outlet-thermostat", "inlet-thermostat", "inlet-thermostat-bottle"),
		CapKPa: P(diagram.KPa(90 + r.Intn(60))),
		Coolant: cases.Coolant{
			Base:          pick(r, cases.EthyleneGlycol, cases.PropyleneGlycol),
			VolumePercent: P(float64(30 + r.Intn(30))),
		},
	}
}

func rounds(r *rand.Rand, n int) []cases.Round {
	out := make([]cases.Round, 1+r.Intn(2))
	for i := range out {
		out[i] = cases.Round{
			Label: pick(r, "hot idle", "cold start", "after the road", "fan cut in", "held at speed"),
			Stage: cases.Words[cases.Stage]()[i],
			Taken: Start.Add(time.Duration(n)*30*time.Minute + time.Duration(i)*time.Hour),
			EctC:  P(diagram.Celsius(60 + r.Intn(50))),
		}
		for _, p := range []diagram.Point{"rad_in", "rad_out", "heater_in", "heater_out"} {
			out[i].Readings = append(out[i].Readings, cases.Reading{
				Point: p, ShownC: P(diagram.Celsius(40 + r.Intn(60))), Surface: cases.Surface{Word: "rubber"},
			})
		}
	}
	return out
}

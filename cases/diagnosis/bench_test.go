package diagnosis_test

import (
	"context"
	"testing"

	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/cases/trial"
	"loopbook/diagram/physics/ensemble"
)

// judges are what ranks and what finds.
func judges(b *testing.B) (*diagnosis.Judge, *evidence.Analyst) {
	judge, err := diagnosis.NewJudge()
	if err != nil {
		b.Fatal(err)
	}
	analyst, err := evidence.Default()
	if err != nil {
		b.Fatal(err)
	}
	return judge, analyst
}

// A keystroke weighs the crowd anew, here for four rounds: wanted in 5 ms. What to check
// next follows it.
func BenchmarkReweigh(b *testing.B) {
	c := trial.Cases(1, 1, trial.Checks)[0]
	c.Rounds = append(c.Rounds, c.Rounds...)[:4]
	judge, analyst := judges(b)
	var crowds diagnosis.Crowds
	plan, _ := diagnosis.PlanFor(&c, diagnosis.StageOf(&c))
	crowd, err := crowds.Get(context.Background(), plan, nil)
	if err != nil {
		b.Fatal(err)
	}
	found := analyst.Analyse(&c)
	rank := func() diagnosis.Ranking { return judge.Rank(&c, found, plan, crowd, diagnosis.Prior{}) }
	b.Run("rank", func(b *testing.B) {
		for i := 0; i < b.N; i++ {
			rank()
		}
	})
	r := rank()
	b.Run("next", func(b *testing.B) {
		for i := 0; i < b.N; i++ {
			judge.Next(r)
		}
	})
}

// A case that was never looked at has its first ranking after the healthy cars and 40 of each
// cause, as the window takes it: wanted in 0.5 s.
func BenchmarkFirstRanking(b *testing.B) {
	const firstDraws = 40
	c := trial.Cases(1, 1, trial.OneSymptom)[0]
	judge, analyst := judges(b)
	plan, _ := diagnosis.PlanFor(&c, diagnosis.StageOf(&c))
	for i := 0; i < b.N; i++ {
		ctx, cancel := context.WithCancel(context.Background())
		var crowds diagnosis.Crowds
		if _, err := crowds.Get(ctx, plan.Healthy(), nil); err != nil {
			b.Fatal(err)
		}
		ranked := false
		_, err := crowds.Get(ctx, plan, func(first *ensemble.Ensemble, _ float64) {
			if first.N >= firstDraws && !ranked {
				judge.Next(judge.Rank(&c, analyst.Analyse(&c), plan, first, diagnosis.Prior{}))
				ranked = true
				cancel()
			}
		})
		cancel()
		if !ranked {
			b.Fatalf("no ranking by %d cars: %v", firstDraws, err)
		}
	}
}

package diagnosis_test

import (
	"context"
	"testing"

	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/cases/trial"
)

// A keystroke weighs the crowd anew, here for four rounds: wanted in 5 ms. What to check
// next follows it.
func BenchmarkReweigh(b *testing.B) {
	c := trial.Cases(1, 1, trial.Checks)[0]
	c.Rounds = append(c.Rounds, c.Rounds...)[:4]
	judge, err := diagnosis.NewJudge()
	if err != nil {
		b.Fatal(err)
	}
	analyst, err := evidence.Default()
	if err != nil {
		b.Fatal(err)
	}
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

package main

import (
	"context"
	"crypto/sha256"
	"fmt"

	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/photo"
	"loopbook/diagram/physics/ensemble"
	"loopbook/report"
)

// paperBundle is the bundle that a paper is made of: the trainer's sheet is of a
// case without its customer, unless it is to name them.
func paperBundle(b cases.Bundle, k report.Kind, named bool) (cases.Bundle, error) {
	if k != report.Trainer || named {
		return b, nil
	}
	b, _, err := anonymous.Make(b, nil, photo.Bare)
	return b, err
}

// material is all that papers are made from: both stages of the case judged, each
// by its whole crowd, and the case once, when both are there for its ranges.
func (m *mind) material(ctx context.Context, b cases.Bundle) (report.Material, error) {
	c := &b.Case
	var stages [2]judgedBy
	for i, stage := range []cases.Stage{cases.BeforeRepair, cases.AfterRepair} {
		var err error
		if stages[i], err = m.crowdOf(ctx, c, stage); err != nil {
			return report.Material{}, err
		}
	}
	found := m.analyst.Analyse(c)
	rank := func(s judgedBy) diagnosis.Ranking {
		return m.rank(c, found, s.plan, s.crowd, diagnosis.Prior{})
	}
	before := rank(stages[0])
	judged := proof.Judge(c, found, rank(stages[1]))
	return report.Material{Case: c, Found: found, Causes: &before, Next: m.judge.Next(before), Proof: &judged, Photo: fileOf(b), Hash: hashOf(c)}, nil
}

// judgedBy is what a stage is judged by; no crowd where the layout isn't known.
type judgedBy struct {
	plan  diagnosis.Plan
	crowd *ensemble.Ensemble
}

func (m *mind) crowdOf(ctx context.Context, c *cases.Case, stage cases.Stage) (judgedBy, error) {
	p, ok := diagnosis.PlanFor(c, stage)
	if !ok {
		return judgedBy{plan: diagnosis.Plan{Stage: stage}}, nil
	}
	crowd, err := m.gatherStage(ctx, c, stage, nil)
	return judgedBy{p, crowd}, err
}

// hashOf is the SHA-256 of the case as a file holds it, in hex.
func hashOf(c *cases.Case) string {
	text, err := cases.EncodeIndented(*c)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%x", sha256.Sum256(text))
}

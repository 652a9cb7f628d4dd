package main

import (
	"context"
	"crypto/sha256"
	"fmt"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/report"
)

// material is all that papers are made from: both stages of the case judged,
// each by its whole crowd. Where a crowd can't be had the rest is judged.
func (m *mind) material(ctx context.Context, b cases.Bundle) (report.Material, error) {
	c := &b.Case
	before, err := m.ranked(ctx, c, cases.BeforeRepair)
	if err != nil {
		return report.Material{}, err
	}
	after, err := m.ranked(ctx, c, cases.AfterRepair)
	if err != nil {
		return report.Material{}, err
	}
	found := m.analyst.Analyse(c) // once the crowds are there, for their ranges
	judged := proof.Judge(c, found, after)
	return report.Material{Case: c, Found: found, Causes: &before, Next: m.judge.Next(before), Proof: &judged, Photo: fileOf(b), Hash: hashOf(c)}, nil
}

// ranked are the causes of a stage with their reasons.
func (m *mind) ranked(ctx context.Context, c *cases.Case, stage cases.Stage) (diagnosis.Ranking, error) {
	p, ok := diagnosis.PlanFor(c, stage)
	if !ok {
		p.Stage = stage
	}
	crowd, err := m.crowds.Kept(p), error(nil)
	if ok && crowd == nil {
		if crowd, err = m.crowds.Get(ctx, p, nil); err != nil {
			return diagnosis.Ranking{}, err
		}
	}
	r := m.judge.Rank(c, m.analyst.Analyse(c), p, crowd, diagnosis.Prior{})
	r.Explain(toldCauses)
	return r, nil
}

// toldCauses is how many causes a paper gives the reasons of.
const toldCauses = 5

// hashOf is the SHA-256 of the case as a file holds it, in hex.
func hashOf(c *cases.Case) string {
	text, err := cases.EncodeIndented(*c)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%x", sha256.Sum256(text))
}

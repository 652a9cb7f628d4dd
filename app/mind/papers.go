package mind

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io/fs"

	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/photo"
	"loopbook/diagram/physics/ensemble"
	"loopbook/report"
)

// PaperBundle is the bundle that a paper is made of: the trainer's sheet is of a
// case without its customer, unless it is to name them.
func PaperBundle(b cases.Bundle, k report.Kind, named bool) (cases.Bundle, error) {
	if k != report.Trainer || named {
		return b, nil
	}
	b, _, err := anonymous.Make(b, nil, photo.Bare)
	return b, err
}

// Material is all that papers are made from: both stages of the case judged, each
// by its whole crowd, and the case once, when both are there for its ranges.
func (m *Mind) Material(ctx context.Context, b cases.Bundle) (report.Material, error) {
	c, logs := &b.Case, m.Analyst.Analyse(&b.Case)
	var stages [2]Grounds
	var crowds [2]*ensemble.Ensemble
	for i, stage := range []cases.Stage{cases.BeforeRepair, cases.AfterRepair} {
		var err error
		stages[i] = GroundsOf(c, logs, stage)
		if crowds[i], err = m.gatherStage(ctx, stages[i], nil); err != nil {
			return report.Material{}, err
		}
	}
	found := m.Analyst.Analyse(c) // by the model's ranges now
	before := m.Rank(c, found, stages[0], crowds[0], diagnosis.Prior{})
	judged := proof.Judge(c, found, m.Rank(c, found, stages[1], crowds[1], diagnosis.Prior{}))
	return report.Material{Case: c, Found: found, Causes: &before, Next: m.judge.Next(before), Beside: m.judge.Beside(before), Proof: &judged, Photo: fileOf(b), Hash: hashOf(c)}, nil
}

// hashOf is the SHA-256 of the case as a file holds it, in hex.
func hashOf(c *cases.Case) string {
	text, err := cases.EncodeIndented(*c)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%x", sha256.Sum256(text))
}

// fileOf opens a file of a bundle.
func fileOf(b cases.Bundle) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		if raw, ok := b.Files[name]; ok {
			return raw, nil
		}
		return nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
	}
}

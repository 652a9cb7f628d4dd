package likelihood

import (
	"errors"
	"io/fs"
	"slices"

	"loopbook/cases"
	"loopbook/diagram/say"
)

const symptomsFile = "symptoms.json"

type symptomRow struct {
	Symptom cases.Symptom `json:"symptom"`
	shares
	grounds
}

func (t *Tables) readSymptoms(files fs.FS) error {
	words := cases.Words[cases.Symptom]()
	var listed []cases.Symptom
	var rows []Vector
	err := readEach(files, symptomsFile, vocabulary[cases.Symptom]{"symptom", words}, func(r symptomRow) cases.Symptom { return r.Symptom },
		func(r symptomRow) error {
			v, err := r.vector()
			listed, rows = append(listed, r.Symptom), append(rows, v)
			return errors.Join(err, r.grounds.check())
		})
	if err != nil {
		return err
	}
	t.symptoms = map[cases.Symptom]Factor{}
	for i, log := range draws(rows, strayingSymptoms) {
		t.symptoms[listed[i]] = Factor{Label: say.Of("reason.symptom", listed[i].Text()), Log: log}
	}
	return nil
}

// chief is the power of a complaint that is the only one: who names one thing names what is worst, and
// that is what the fault shows most (judgement; what calibrates on cars of others was taken).
const chief = 1.25

// Symptoms are what the listed symptoms say, one factor for each. One listed
// twice counts once.
func (t *Tables) Symptoms(listed []cases.Symptom) []Factor {
	var out []Factor
	for i, s := range listed {
		if f, ok := t.symptoms[s]; ok && !slices.Contains(listed[:i], s) {
			out = append(out, f)
		}
	}
	if len(out) == 1 {
		out[0].Log = out[0].Log.times(chief)
	}
	return out
}

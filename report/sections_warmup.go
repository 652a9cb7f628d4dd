package report

import (
	"errors"

	"loopbook/report/chart"
	"loopbook/report/picture"
)

// chartHeight is of a warm-up's curve.
const chartHeight = 170

// warmUps are the logs as curves, each with what it tells.
func (r *record) warmUps() {
	for i, w := range r.f.WarmUps {
		l := &r.c.Logs[i]
		name := l.Name
		if name == "" {
			name = "log"
		}
		if l.Stage != "" {
			name += ", " + l.Stage.Name()
		}
		curve := picture.WarmUp(r.c, l, w.Result, nil, r.by)
		r.heading("Warm-up: "+name, chartHeight+4*bodyStyle.lead())
		err := curve.OnPage(r.pdf, chart.Plain(), family, margin, r.y, r.inner(), chartHeight)
		if errors.Is(err, chart.ErrEmpty) {
			r.paragraph("It holds no coolant temperature.", bodyStyle)
			continue
		}
		r.y += chartHeight + bodyStyle.lead()
		var list facts
		for _, f := range picture.WarmUpFacts(w.Result, r.by) {
			list.add(f[0], f[1])
		}
		r.facts(list, 2)
	}
}

package whatif

import (
	"errors"
	"time"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/whatif"
	"loopbook/cases"
	"loopbook/cases/simulation"
	"loopbook/diagram"
)

// caseOf is a case of a simulated car with the open case's layout and altitude, in that weather and with that fault,
// driven along the usual walk. The seed draws its build.
func caseOf(open *cases.Case, set view.Settings, seed int64) (cases.Case, error) {
	build, _, ok := buildOf(open)
	if !ok {
		return cases.Case{}, errors.New(kit.L("window.whatif.case-no-loop"))
	}
	c, err := simulation.Simulate(simulation.Car{
		Layout: build.Loop.ID, Cause: set.Cause, Severity: set.Severity,
		AmbientC: diagram.Celsius(set.AmbientC), AltitudeM: build.AltitudeM, Seed: seed,
	}, simulation.Usual())
	c.Opened = time.Now().UTC().Truncate(time.Second)
	return c, err
}

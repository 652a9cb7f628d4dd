package command

import (
	"context"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/cases/simulation"
	"loopbook/diagram"
)

// simulate writes a simulated car as a time series or as a case.
func simulate(_ context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("simulate", flag.ContinueOnError)
	car := simulation.Car{}
	cause := set.String("cause", "none", "what is at fault")
	ambient := set.Float64("ambient-c", 20, "the air outside")
	altitude := set.Float64("altitude-m", 0, "the altitude")
	protocol := set.String("protocol", "", "a file with the steps")
	asCSV, asCase := set.Bool("csv", false, "a time series"), set.Bool("case", false, "a case")
	set.StringVar(&car.Layout, "layout", "", "the loop's layout")
	set.Float64Var(&car.Severity, "severity", 0.7, "0 hardly there, 1 as bad as it gets")
	set.Int64Var(&car.Seed, "seed", 1, "draws the car and the gun's errors")
	if err := parseAlone(set, args); err != nil {
		return err
	}
	switch {
	case car.Layout == "":
		return usagef("needs --layout; loopbook layouts lists them")
	case *asCSV && *asCase:
		return usagef("either --csv or --case")
	case !(car.Severity >= 0 && car.Severity <= 1): // so that NaN fails too
		return usagef("--severity %g: must be 0 to 1", car.Severity)
	case !(*ambient >= -40 && *ambient <= 60): // what the model knows
		return usagef("--ambient-c %g: must be -40 to 60", *ambient)
	case !(*altitude >= -500 && *altitude <= 9000): // what a case may have
		return usagef("--altitude-m %g: must be -500 to 9000", *altitude)
	}
	car.Cause, car.AmbientC, car.AltitudeM = cases.Cause(*cause), diagram.Celsius(*ambient), diagram.Metre(*altitude)
	if !slices.Contains(cases.Words[cases.Cause](), car.Cause) {
		return usagef("--cause %q: must be one of %s", *cause, causeWords())
	}
	steps := simulation.Usual()
	if *protocol != "" {
		text, err := os.ReadFile(*protocol)
		if err != nil {
			return err
		}
		if steps, err = simulation.ParseProtocol(text); err != nil {
			return fmt.Errorf("%s: %w", *protocol, err)
		}
	}
	if *asCSV {
		return simulation.WriteCSV(c.Out, car, steps)
	}
	k, err := simulation.Simulate(car, steps)
	if err != nil {
		return err
	}
	return exchange.WriteCase(c.Out, k)
}

func causeWords() string {
	var words []string
	for _, c := range cases.Words[cases.Cause]() {
		words = append(words, string(c))
	}
	return strings.Join(words, ", ")
}

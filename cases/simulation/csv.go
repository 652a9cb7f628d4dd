package simulation

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"loopbook/diagram"
)

// WriteCSV runs the car and writes a row every few seconds: time, what the
// scan tool shows, the drive, the thermostat's lift, the fan, and the true
// temperature at each point of the layout.
func WriteCSV(w io.Writer, car Car, steps []Step) error {
	l, err := diagram.LoopByID(car.Layout)
	if err != nil {
		return err
	}
	out := csv.NewWriter(w)
	head := []string{"time_s", "ect_c", "engine_rpm", "speed_kmh", "lift_percent", "fan"}
	for _, p := range l.Points {
		head = append(head, string(p.Point)+"_c")
	}
	if err := out.Write(head); err != nil {
		return err
	}
	const every = 5 // seconds
	next := 0.0
	_, err = Simulate(car, steps, func(at Look) {
		if at.Seconds >= next {
			next = at.Seconds + every
			_ = out.Write(row(at)) // the writer keeps its error for Flush
		}
	})
	if err != nil {
		return err
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing the series: %w", err)
	}
	return nil
}

func row(at Look) []string {
	number := func(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }
	fan := "off"
	if at.FanRuns {
		fan = "on"
	}
	cells := []string{number(at.Seconds, 0), number(float64(at.EctC), 1), number(at.RPM, 0), number(at.SpeedKmh, 0), number(100*at.Lift, 0), fan}
	for _, c := range at.Points {
		cells = append(cells, number(float64(c), 1))
	}
	return cells
}

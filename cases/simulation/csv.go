package simulation

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"loopbook/diagram"
	"loopbook/diagram/physics"
)

// WriteCSV runs the car and writes a row every few seconds: time, what the
// scan tool shows, the drive, the thermostat's lift, the fan, and the true
// temperature at each point of the layout.
func WriteCSV(w io.Writer, car Car, steps []Step) error {
	d, _, err := start(car, steps)
	if err != nil {
		return err
	}
	out := csv.NewWriter(w)
	head := []string{"time_s", "ect_c", "engine_rpm", "speed_kmh", "lift_percent", "fan"}
	for _, p := range d.loop.Points {
		head = append(head, string(p.Point)+"_c")
	}
	if err := out.Write(head); err != nil {
		return err
	}
	const every = 5 // seconds
	next := 0.0
	_, err = d.along(car.fault(), func(s *physics.Sim, st physics.Stage) {
		if s.Seconds() >= next {
			next = s.Seconds() + every
			_ = out.Write(row(s, st, d.loop)) // the writer keeps its error for Flush
		}
	}, nil)
	if err != nil {
		return err
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing the series: %w", err)
	}
	return nil
}

func row(s *physics.Sim, st physics.Stage, l *diagram.Loop) []string {
	number := func(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }
	fan := "off"
	if s.FanRuns() {
		fan = "on"
	}
	cells := []string{number(s.Seconds(), 0), number(float64(s.ECT()), 1), number(st.RPM, 0), number(st.SpeedKmh, 0), number(100*s.Lift(), 0), fan}
	for _, p := range l.Points {
		c, _ := s.At(p.Point)
		cells = append(cells, number(float64(c), 1))
	}
	return cells
}

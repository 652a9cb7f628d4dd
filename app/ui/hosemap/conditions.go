package hosemap

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// conditions is the row under the rounds: how the engine ran while the round
// was taken.
type conditions struct {
	edit    func(what string, change func(*cases.Round))
	units   units.Set
	label   *kit.Field
	fields  []*numeric
	air     *numeric
	fan     *kit.Choice[cases.FanState]
	heater  *kit.Choice[cases.Heater]
	gauge   *kit.Choice[cases.Gauge]
	content *fyne.Container
}

// numeric is a number of the round: how it is read from it and written to it.
type numeric struct {
	*kit.Field
	title func(units.Set) string
	read  func(*cases.Round, units.Set) string
	write func(*cases.Round, string, units.Set) error
}

func newConditions(edit func(string, func(*cases.Round))) *conditions {
	c := &conditions{edit: edit, units: units.Metric()}
	c.label = kit.NewField("name", func(text string) {
		edit("name of a round", func(r *cases.Round) { r.Label = text })
	})
	c.fan = kit.NewChoice([]cases.FanState{cases.FanOff, cases.FanOn}, cases.FanState.Name, func(s cases.FanState) {
		edit("fan", func(r *cases.Round) { r.Fan = s })
	})
	c.heater = kit.NewChoice([]cases.Heater{cases.HeaterOff, cases.HeaterHalf, cases.HeaterFull}, cases.Heater.Name, func(h cases.Heater) {
		edit("heater", func(r *cases.Round) { r.Heater = h })
	})
	c.gauge = kit.NewChoice(cases.Words[cases.Gauge](), cases.Gauge.Name, func(g cases.Gauge) {
		edit("gauge", func(r *cases.Round) { r.Gauge = g })
	})
	c.fan.PlaceHolder, c.heater.PlaceHolder, c.gauge.PlaceHolder = "?", "?", "?"
	running := c.numeric(plain("Minutes"), func(r *cases.Round) **float64 { return &r.MinutesSinceStart })
	rpm := c.numeric(plain("Rpm"), func(r *cases.Round) **float64 { return &r.EngineRPM })
	road := c.speed()
	outside := c.temperature("Air", func(r *cases.Round) **celsius { return &r.AmbientC })
	scan := c.temperature("Scan", func(r *cases.Round) **celsius { return &r.EctC })
	c.content = container.New(kit.Shares{112, 70, 74, 66, 66, 66, 66, 68, 132}, kit.Labelled("Round", c.label))
	c.append(running, rpm, road)
	c.content.Add(kit.Labelled("Fan", c.fan.Select))
	c.content.Add(kit.Labelled("Heater", c.heater.Select))
	c.append(outside, scan)
	c.content.Add(kit.Labelled("Gauge", c.gauge.Select))
	c.air = outside
	return c
}

// append puts numbers into the row, each under its label.
func (c *conditions) append(numbers ...*numeric) {
	for _, n := range numbers {
		c.fields = append(c.fields, n)
		c.content.Add(kit.Labelled(n.title(c.units), n.Field))
	}
}

func plain(title string) func(units.Set) string { return func(units.Set) string { return title } }

func (c *conditions) numeric(title func(units.Set) string, at func(*cases.Round) **float64) *numeric {
	return c.add(&numeric{
		title: title,
		read: func(r *cases.Round, _ units.Set) string {
			if v := *at(r); v != nil {
				return strconv.FormatFloat(*v, 'f', -1, 64)
			}
			return ""
		},
		write: func(r *cases.Round, text string, _ units.Set) error {
			v, err := units.Number(text)
			if err == nil {
				*at(r) = &v
			}
			return err
		},
	}, func(r *cases.Round) { *at(r) = nil })
}

func (c *conditions) speed() *numeric {
	return c.add(&numeric{
		title: func(u units.Set) string { return u.SpeedUnit() },
		read: func(r *cases.Round, u units.Set) string {
			if r.SpeedKmh == nil {
				return ""
			}
			return u.Dist(*r.SpeedKmh)
		},
		write: func(r *cases.Round, text string, u units.Set) error {
			v, err := u.ParseDist(text)
			if err == nil {
				r.SpeedKmh = &v
			}
			return err
		},
	}, func(r *cases.Round) { r.SpeedKmh = nil })
}

func (c *conditions) temperature(title string, at func(*cases.Round) **celsius) *numeric {
	return c.add(&numeric{
		title: func(u units.Set) string { return title + " " + string(u.Temperature) },
		read: func(r *cases.Round, u units.Set) string {
			if v := *at(r); v != nil {
				return u.Temp(*v)
			}
			return ""
		},
		write: func(r *cases.Round, text string, u units.Set) error {
			v, err := u.ParseTemp(text)
			if err == nil {
				*at(r) = &v
			}
			return err
		},
	}, func(r *cases.Round) { *at(r) = nil })
}

// add gives the number its field: what can't be read is marked and not kept.
func (c *conditions) add(n *numeric, clear func(*cases.Round)) *numeric {
	n.Field = kit.NewField("", func(text string) {
		if text == "" {
			n.Refuse(nil)
			c.edit(n.title(c.units), clear)
			return
		}
		var trial cases.Round
		err := n.write(&trial, text, c.units)
		n.Refuse(err)
		if err == nil {
			c.edit(n.title(c.units), func(r *cases.Round) { _ = n.write(r, text, c.units) })
		}
	})
	return n
}

func (c *conditions) show(r *cases.Round, site cases.Site, u units.Set) {
	c.units = u
	if r == nil {
		c.content.Hide()
		return
	}
	c.content.Show()
	c.label.Put(r.Label)
	c.fan.Put(r.Fan)
	c.heater.Put(r.Heater)
	c.gauge.Put(r.Gauge)
	for _, n := range c.fields {
		n.Title(n.title(u))
		n.Put(n.read(r, u))
	}
	c.air.SetPlaceHolder("")
	if a := site.AmbientC; a != nil {
		c.air.SetPlaceHolder(u.Temp(*a)) // what counts until the round has its own
	}
}

// forget drops what was refused: another round is shown.
func (c *conditions) forget() {
	for _, n := range c.fields {
		n.Forget()
	}
}

func (c *conditions) leave() {
	c.label.Leave()
	for _, n := range c.fields {
		n.Leave()
	}
}

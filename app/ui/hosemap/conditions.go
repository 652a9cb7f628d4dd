package hosemap

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/units"
)

// mostMinutes is what a round of the case format can hold.
const mostMinutes = 1e5

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

// numeric is the field of a number of the round.
type numeric struct {
	*kit.Field
	title func(units.Set) string
	read  func(*cases.Round, units.Set) string
}

func newConditions(edit func(string, func(*cases.Round))) *conditions {
	c := &conditions{edit: edit, units: units.Metric()}
	c.label = kit.NewField(kit.L("window.hosemap.name"), c.setLabel)
	c.fan = kit.NewChoice([]cases.FanState{cases.FanOff, cases.FanOn}, cases.FanState.Name, func(s cases.FanState) {
		edit(kit.L("window.hosemap.edit-fan"), func(r *cases.Round) { r.Fan = s })
	})
	c.heater = kit.NewChoice([]cases.Heater{cases.HeaterOff, cases.HeaterHalf, cases.HeaterFull}, cases.Heater.Name, func(h cases.Heater) {
		edit(kit.L("window.hosemap.edit-heater"), func(r *cases.Round) { r.Heater = h })
	})
	c.gauge = kit.NewChoice(cases.Words[cases.Gauge](), cases.Gauge.Name, func(g cases.Gauge) {
		edit(kit.L("window.hosemap.edit-gauge"), func(r *cases.Round) { r.Gauge = g })
	})
	c.fan.PlaceHolder, c.heater.PlaceHolder, c.gauge.PlaceHolder = "?", "?", "?"
	running := c.numeric(kit.L("window.hosemap.minutes"), kit.Between(units.Minutes().Clock, 0, mostMinutes, kit.Plain[float64]), func(r *cases.Round) **float64 { return &r.MinutesSinceStart })
	rpm := c.numeric(kit.L("window.hosemap.rpm"), kit.ParseRPM, func(r *cases.Round) **float64 { return &r.EngineRPM })
	road := c.speed(func(r *cases.Round) **float64 { return &r.SpeedKmh })
	outside := c.temperature(kit.L("window.hosemap.air"), func(u units.Set) func(string) (celsius, error) { return u.ParseTemp }, func(r *cases.Round) **celsius { return &r.AmbientC })
	scan := c.temperature(kit.L("window.hosemap.scan"), kit.ParseCoolant, func(r *cases.Round) **celsius { return &r.EctC })
	c.content = container.New(kit.Shares{138, 58, 56, 52, 58, 64, 55, 62, 121}, kit.Labelled(kit.L("window.hosemap.round"), c.label))
	c.append(running, rpm, road)
	c.content.Add(kit.Labelled(kit.L("window.hosemap.fan"), c.fan.Select))
	c.content.Add(kit.Labelled(kit.L("window.hosemap.heater"), c.heater.Select))
	c.append(outside, scan)
	c.content.Add(kit.Labelled(kit.L("window.hosemap.gauge"), c.gauge.Select))
	c.air = outside
	return c
}

// setLabel names the round, but not by a bare number: the caret stands there in a new round, and a hand that is quick
// types the first hose's temperature.
func (c *conditions) setLabel(text string) {
	if _, err := units.Number(text); err == nil {
		c.label.Refuse(errors.New(kit.L("window.hosemap.name-is-number")))
		return
	}
	c.edit(kit.L("window.hosemap.edit-name"), func(r *cases.Round) { r.Label = text })
}

// append puts numbers into the row, each under its label.
func (c *conditions) append(numbers ...*numeric) {
	for _, n := range numbers {
		c.fields = append(c.fields, n)
		c.content.Add(kit.Labelled(n.title(c.units), n.Field))
	}
}

func plain(title string) func(units.Set) string { return func(units.Set) string { return title } }

func (c *conditions) numeric(title string, parse func(string) (float64, error), at func(*cases.Round) **float64) *numeric {
	return bind(c, plain(title), at,
		func(units.Set) func(float64) string { return kit.Plain[float64] },
		func(units.Set) func(string) (float64, error) { return parse })
}

func (c *conditions) speed(at func(*cases.Round) **float64) *numeric {
	return bind(c, units.Set.SpeedUnit, at,
		func(u units.Set) func(float64) string { return u.Dist },
		kit.ParseSpeed)
}

func (c *conditions) temperature(title string, parse func(units.Set) func(string) (celsius, error), at func(*cases.Round) **celsius) *numeric {
	return bind(c, func(u units.Set) string { return title + ", " + string(u.Temperature) }, at,
		func(u units.Set) func(celsius) string { return u.Temp },
		parse)
}

// bind gives a number of the round its field: what can't be read is marked and
// not kept.
func bind[T any](c *conditions, title func(units.Set) string, at func(*cases.Round) **T, write func(units.Set) func(T) string, parse func(units.Set) func(string) (T, error)) *numeric {
	n := &numeric{title: title, read: func(r *cases.Round, u units.Set) string { return kit.Written(*at(r), write(u)) }}
	n.Field = kit.NewField("", func(text string) {
		var v *T
		err := kit.Set(&v, text, parse(c.units))
		n.Refuse(err)
		if err == nil {
			c.edit(title(c.units), func(r *cases.Round) { *at(r) = v })
		}
	})
	return n
}

func (c *conditions) show(d Data) {
	r, u := d.round(), d.Units
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
	c.air.SetPlaceHolder(airUntilNoted(&d.Case, d.Round, u))
}

// airUntilNoted is the air that a round without its own is held against: the site's, or with a question mark what is
// taken for it, since hoses of a frosty day are called too cold by it.
func airUntilNoted(of *cases.Case, round int, u units.Set) string {
	if of.Site.AmbientC != nil {
		return u.Temp(*of.Site.AmbientC)
	}
	return kit.L("window.hosemap.air-assumed", u.Temp(evidence.AirC(of, round)))
}

// forget empties the fields of what was refused: another round is shown.
func (c *conditions) forget() {
	c.label.Forget()
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

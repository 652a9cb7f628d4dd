package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/diagram/units"
)

// choice is one of what a menu lets choose among.
type choice struct {
	label  string
	chosen bool
	take   func()
}

// choiceItems are the choices in the menu, the chosen one ticked. One key goes round them: it
// stands beside the one that it takes, which is that after the chosen one.
func choiceItems(k fyne.KeyName, all ...choice) []*fyne.MenuItem {
	items := make([]*fyne.MenuItem, len(all))
	for i, c := range all {
		items[i] = fyne.NewMenuItem(c.label, c.take)
		items[i].Checked = c.chosen
	}
	for i, c := range all {
		if c.chosen {
			items[(i+1)%len(items)].Shortcut = &desktop.CustomShortcut{KeyName: k, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
		}
	}
	return items
}

// choices are those of a person for the window: the units and the light.
type choices struct {
	at      bench.Bench
	app     fyne.App
	kept    preferences
	changed func()
	retype  func() // what was refused, which may be meant in other units
}

func (c *choices) unitsMenu() *fyne.Menu {
	now := c.at.Desk.Units
	offer := func(label string, chosen bool, change func(*units.Set)) choice {
		return choice{label, chosen, func() { c.setUnits(change) }}
	}
	var temperatures, pressures, distances []choice
	for _, t := range []units.Temperature{units.C, units.F} {
		with := units.Set{Temperature: t}
		temperatures = append(temperatures, offer(kit.L("window.frame.units-with", string(t), with.VolumeUnit(), with.HeightUnit()), now.Temperature == t, func(u *units.Set) { u.Temperature = t }))
	}
	for _, p := range []units.Pressure{units.KPa, units.PSI, units.Bar} {
		pressures = append(pressures, offer(string(p), now.Pressure == p, func(u *units.Set) { u.Pressure = p }))
	}
	for _, d := range []units.Distance{units.Km, units.Miles} {
		distances = append(distances, offer(string(d), now.Distance == d, func(u *units.Set) { u.Distance = d }))
	}
	menu := fyne.NewMenu(kit.L("window.frame.units"), choiceItems(fyne.KeyT, temperatures...)...)
	menu.Items = append(append(menu.Items, fyne.NewMenuItemSeparator()), choiceItems(fyne.KeyP, pressures...)...)
	menu.Items = append(append(menu.Items, fyne.NewMenuItemSeparator()), choiceItems(fyne.KeyD, distances...)...)
	return menu
}

func (c *choices) setUnits(change func(*units.Set)) {
	c.at.Leave()
	u := c.at.Desk.Units
	change(&u)
	c.at.Desk.Use(u)
	c.kept.setUnits(u)
	c.changed()
	c.retype()
}

func (c *choices) lightMenu() *fyne.Menu {
	now := c.kept.light()
	offer := func(label string, l kit.Light) choice {
		return choice{label, now == l, func() { c.setLight(l) }}
	}
	return fyne.NewMenu(kit.L("window.frame.light"), choiceItems(fyne.KeyL,
		offer(kit.L("window.frame.light-desktop"), kit.System),
		offer(kit.L("window.frame.light-bright"), kit.Bright),
		offer(kit.L("window.frame.light-dark"), kit.Dim),
	)...)
}

func (c *choices) setLight(l kit.Light) {
	c.kept.setLight(l)
	c.app.Settings().SetTheme(kit.NewTheme(l))
	c.changed()
}

package practice

import (
	"errors"
	"fmt"
	"slices"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/app/window/filename"
	"loopbook/cases"
)

// trainer is the trainer's half of the room: the classes, and what came of them.
type trainer struct {
	at      bench.Bench
	view    *view.View
	known   *glances
	shown   func() cases.Query // what the list of cases shows
	changed func()

	inSight bool
	chosen  string // class that is looked at
}

// errNoClass is of a class that was forgotten meanwhile, as in another window.
var errNoClass = errors.New("isn't in the notebook any more")

// classNamed is a class of the notebook, or an error that may be errNoClass.
func classNamed(at bench.Bench, name string) (cases.Class, error) {
	list, err := at.Desk.Store.Classes(at.Ctx)
	if err != nil {
		return cases.Class{}, err
	}
	for _, c := range list {
		if c.Name == name {
			return c, nil
		}
	}
	return cases.Class{}, fmt.Errorf("the class set %q %w", name, errNoClass)
}

// mostInClass is how many cases a class set may have: more than an evening holds.
const mostInClass = 40

// makeClass keeps the cases that the list shows as a class, those that can be practised. One of that name is
// replaced only once that is agreed to.
func (t *trainer) makeClass(name string) {
	name, err := cases.ClassName(name)
	if err != nil {
		t.at.Ask.Tell(err)
		return
	}
	ids, err := t.practisable()
	if err != nil {
		t.at.Ask.Tell(err)
		return
	}
	put := func() {
		t.chosen = name
		t.save(cases.Class{Name: name, Cases: ids})
	}
	switch _, err := classNamed(t.at, name); {
	case err == nil:
		t.ask(name, kit.L("window.practice.replace"), put)
	case errors.Is(err, errNoClass):
		put()
	default:
		t.at.Ask.Tell(err)
	}
}

// add puts the open case at the end of the class that is looked at.
func (t *trainer) add() {
	t.edit(func(c *cases.Class) {
		if id := t.at.Desk.Case.ID; !slices.Contains(c.Cases, id) { // another window may have added it
			c.Cases = append(c.Cases, id)
		}
	})
}

// move moves a case of the class that is looked at up, or takes it out where by is 0.
func (t *trainer) move(at, by int) {
	t.edit(func(c *cases.Class) {
		if at >= len(c.Cases) {
			return
		}
		if by == 0 {
			c.Cases = slices.Delete(c.Cases, at, at+1)
		} else if to := at + by; to >= 0 && to < len(c.Cases) {
			c.Cases[at], c.Cases[to] = c.Cases[to], c.Cases[at]
		}
	})
}

// edit changes the class that is looked at.
func (t *trainer) edit(do func(*cases.Class)) {
	c, err := classNamed(t.at, t.chosen)
	if err != nil {
		t.at.Ask.Tell(err)
		return
	}
	do(&c)
	t.save(c)
}

// forget drops a class once that is agreed to: no undo brings its order back.
func (t *trainer) forget(name string) {
	t.ask(name, kit.L("window.practice.forget"), func() { t.save(cases.Class{Name: name}) })
}

// give asks whom a class is for, and hands it over: whoever is to practise on it mustn't read the answers in their list.
func (t *trainer) give(name string) {
	t.at.Ask.Show(t.at.Ask.Choose(kit.L("window.practice.give"), asking.Words(kit.L("window.practice.give-whom")),
		asking.Choice{Words: kit.L("window.practice.give-trainer"), Take: func() { t.handOver(name, false) }},
		asking.Choice{Words: kit.L("window.practice.give-trainee"), Take: func() { t.handOver(name, true) }}))
}

// handOver writes a class for another notebook, beside the papers.
func (t *trainer) handOver(name string, sealed bool) {
	file, told := "window.practice.class-file", "window.practice.given"
	if sealed {
		file, told = "window.practice.sealed-file", "window.practice.given-sealed"
	}
	c, err := classNamed(t.at, name)
	var path string
	if err == nil {
		path, err = filename.InDocuments(filename.Of(kit.L(file, name)) + ".zip")
	}
	if err == nil {
		c.Sealed = sealed
		err = library.WriteClass(t.at.Ctx, t.at.Desk.Store, c, path)
	}
	if err != nil {
		t.at.Ask.Tell(err)
		return
	}
	t.at.Ask.Show(t.at.Ask.Notice(kit.L("window.practice.give"), kit.L(told, path)))
}

// unseal opens every case of a class that came shut, once that is agreed to.
func (t *trainer) unseal(name string) {
	does := kit.L("window.practice.unseal")
	t.at.Ask.Show(t.at.Ask.Offer(does, does, kit.L("window.practice.stay-shut"), asking.Words(kit.L("window.practice.unsealing")), func() {
		c, err := classNamed(t.at, name)
		for n := 0; n < len(c.Cases) && err == nil; n++ {
			_, err = library.Unseal(t.at.Ctx, t.at.Desk.Store, c.Cases[n])
		}
		if err != nil {
			t.at.Ask.Tell(err)
		}
		t.at.Desk.Kept()
		t.changed()
	}))
}

// ask asks before a class is gone.
func (t *trainer) ask(name, does string, do func()) {
	t.at.Ask.Show(t.at.Ask.Offer(does, does, kit.L("window.practice.keep"), asking.Words(kit.L("window.practice.lost", name)), do))
}

func (t *trainer) save(c cases.Class) {
	err := t.at.Desk.Store.SaveClass(t.at.Ctx, c)
	if err == nil {
		err = library.UnsealLoose(t.at.Ctx, t.at.Desk.Store)
	}
	if err != nil {
		t.at.Ask.Tell(err)
	}
	t.at.Desk.Kept()
	t.changed()
}

// practisable are the settled cases that the list shows, without those that are retired or hold nothing to practise on.
func (t *trainer) practisable() ([]string, error) {
	q := t.shown()
	q.Where = append(q.Where[:len(q.Where):len(q.Where)], cases.Condition{Field: cases.ByStage, Words: []string{cases.StageClosed}})
	q.Limit, q.Offset = mostInClass, 0
	page, err := t.at.Desk.Store.Search(t.at.Ctx, q)
	if err != nil {
		return nil, err
	}
	ids := make([]string, len(page.Items))
	for i, s := range page.Items {
		ids[i] = s.ID
	}
	return t.known.fit(ids)
}

// retire leaves the open case out of what is practised, or brings it back.
func (t *trainer) retire(retired bool) {
	if err := t.at.Desk.Store.Retire(t.at.Ctx, t.at.Desk.Case.ID, retired); err != nil {
		t.at.Ask.Tell(err)
	}
	t.changed()
}

package practice

import (
	"errors"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/words"
	"loopbook/cases/practice"
)

// Show shows what can be practised; a session that is under way stays.
func (r *Room) Show() {
	if r.lesson.session != nil {
		return
	}
	d, err := r.start()
	if err != nil {
		r.at.Ask.Tell(err)
		return
	}
	r.view.ShowStart(d)
}

func (r *Room) start() (view.Start, error) {
	store, ctx := r.at.Desk.Store, r.at.Ctx
	d := view.Start{Why: r.canPractise()}
	if r.at.Desk.Open {
		d.Open, d.Lesson = words.Title(r.at.Desk.Case), r.at.Desk.Case.Lesson
	}
	retired, err := store.Retired(ctx)
	if err != nil {
		return d, err
	}
	d.Retired = retired[r.at.Desk.Case.ID]
	list, err := store.Classes(ctx)
	if err != nil {
		return d, err
	}
	sealed, err := store.SealedIDs(ctx)
	if err != nil {
		return d, err
	}
	for _, c := range list {
		answered, err := store.Results(ctx, c.Name)
		if err != nil {
			return d, err
		}
		if c.Name == r.trainer.chosen {
			d.Chosen, d.Results = c.Name, resultRows(answered)
		}
		ids := r.known.fitOf(c.Cases, retired, sealed)
		one := view.Class{Name: c.Name, Of: len(ids), Done: doneBy(ids, answered), Told: toldOf(c.Cases, answered)}
		for _, id := range c.Cases {
			title, shut := r.titleByID(id, sealed)
			one.HasOpen = one.HasOpen || id == r.at.Desk.Case.ID
			one.Cases, one.Sealed = append(one.Cases, title), one.Sealed || shut
		}
		d.Classes = append(d.Classes, one)
	}
	r.trainer.chosen = d.Chosen // one that is gone is looked at no more
	if d.Chosen == "" {
		results, err := store.Results(ctx, "")
		if err != nil {
			return d, err
		}
		d.Results = resultRows(results)
	}
	if !r.trainer.inSight {
		return d, nil // who practises isn't told how many the list shows
	}
	ids, err := r.trainer.practisable()
	d.Found = len(ids)
	return d, err
}

// titleByID is a class's case by its title, or that it is one of those that are shut.
func (r *Room) titleByID(id string, sealed []string) (title string, shut bool) {
	switch one, there := r.known.of(id, sealed); {
	case !there:
		return kit.L("window.practice.gone", id), false
	case one.shut:
		return kit.L("window.practice.shut"), true
	default:
		return one.title, false
	}
}

// canPractise tells why the open case can't be practised; "": it can.
func (r *Room) canPractise() string {
	if !r.at.Desk.Open {
		return kit.L("window.practice.none-open")
	}
	switch _, err := practice.Begin(r.at.Desk.Case, r.coach.Costs); {
	case errors.Is(err, practice.ErrOpen):
		return kit.L("window.practice.not-closed")
	case err != nil:
		return kit.L("window.practice.bare")
	}
	return ""
}

package papers

import (
	"context"

	"loopbook/app/library"
	"loopbook/app/mind"
	view "loopbook/app/ui/papers"
	"loopbook/cases"
	"loopbook/cases/sqlite"
	"loopbook/report"
)

// subject is the case as it was when its papers were asked for.
type subject struct {
	c        cases.Case
	store    *sqlite.Store     // that it is of
	files    map[string]string // its files' hashes by their names
	photo    func(file string) ([]byte, error)
	revision int
	lacks    []string // what was typed and could not be kept
}

func (p *Papers) subject() (subject, error) {
	d := p.at.Desk
	if err := d.Keep(); err != nil {
		return subject{}, err // the paper would tell of the case without its last edits
	}
	c, err := d.Store.Get(p.at.Ctx, d.Case.ID)
	if err != nil {
		return subject{}, err
	}
	files, err := library.HashesOf(p.at.Ctx, d.Store, c.ID)
	if err != nil {
		return subject{}, err
	}
	history, err := d.Store.History(p.at.Ctx, c.ID)
	if err != nil {
		return subject{}, err
	}
	return subject{c: c, store: d.Store, files: files, photo: p.smaller.Opener(p.at.Ctx, d.Store, c.Photos, files), revision: history.Revision, lacks: p.Lost()}, nil
}

// material judges the case for the paper. One that is anonymous is made of the files
// as they came, any other shows the smaller copies of its pictures.
func (p *Papers) material(ctx context.Context, s subject, choice view.Choice) (m report.Material, err error) {
	b, anonymous := cases.Bundle{Case: s.c}, choice.Kind == report.Trainer && !choice.Named
	if anonymous {
		b.Files, err = library.Contents(ctx, s.store, s.files)
	}
	if err == nil {
		b, err = mind.PaperBundle(b, choice.Kind, choice.Named)
	}
	if err == nil {
		m, err = p.at.Desk.Mind.Material(ctx, b)
	}
	m.Revision = s.revision
	if !anonymous {
		m.Photo = s.photo
	}
	return m, err
}

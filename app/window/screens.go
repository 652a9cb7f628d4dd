package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/alike"
	"loopbook/app/window/bench"
	"loopbook/app/window/causes"
	"loopbook/app/window/charts"
	"loopbook/app/window/checks"
	"loopbook/app/window/compare"
	"loopbook/app/window/complaint"
	"loopbook/app/window/hosemap"
	"loopbook/app/window/papers"
	"loopbook/app/window/photos"
	"loopbook/app/window/proof"
	"loopbook/app/window/repair"
	"loopbook/app/window/verdict"
	"loopbook/app/window/warmup"
	"loopbook/app/window/whatif"
	"loopbook/cases/diagnosis/likelihood"
)

// The tabs by their place.
const (
	complaintTab = iota
	warmUpTab
	hoseMapTab
	checksTab
	causesTab
	verdictTab
	repairTab
	proofTab
	photosTab
	whatIfTab
	alikeTab
)

// page is one of the open case's screens, behind its tab.
type page struct {
	title   string
	content fyne.CanvasObject
	show    func()                // paints the open case; nil: its answer is all of it
	answer  func()                // paints that it is held to be something else; nil: it doesn't tell
	leave   func()                // keeps what is being typed; nil: nothing is typed there
	first   func() fyne.Focusable // what a key leads to; nil: whatever stands first
}

// screens are those of the open case; some of them a key leads to.
type screens struct {
	at   bench.Bench
	tabs *container.AppTabs
	all  []page // by tab
	of   string // the case that they were turned to

	complaint *complaint.Screen
	warmup    *warmup.Screen
	hosemap   *hosemap.Screen
	checks    *checks.Screen
	causes    *causes.Screen
	photos    *photos.Photos
	whatif    *whatif.Screen
}

// parts are what screens are made with.
type parts struct {
	tables  *likelihood.Tables
	kept    fyne.Preferences
	smaller *library.Smaller
	copied  func() string // the text in the clipboard
	charts  *charts.Charts
	papers  *papers.Papers
}

func newScreens(at bench.Bench, p parts, way *ways, o *opener) *screens {
	d, s := at.Desk, &screens{at: at}
	s.complaint = complaint.New(d)
	s.warmup = warmup.New(at, way.tab(warmUpTab), p.kept, p.charts.Save)
	s.hosemap = hosemap.New(d, p.tables, func() { way.turnTo(causesTab) })
	s.checks = checks.New(d, p.tables, p.charts.Save)
	s.causes = causes.New(d, p.kept, causes.Ways{Begin: way.begin, Next: way.next})
	s.photos = photos.New(at, way.tab(photosTab), p.smaller, p.copied)
	s.whatif = whatif.New(d, at.Start, at.Ask.Tell, o.add)
	s.all = s.inOrder(
		verdict.New(d, p.papers.Print),
		repair.New(at, p.kept),
		proof.New(at, way.tab(proofTab), p.charts.Save, proof.Ways{Walk: way.walkAgain, Check: way.repeatCheck, Causes: func() { way.turnTo(causesTab) }}),
		alike.New(at, o.open, func(id string) { compare.WithOpen(at, id) }),
	)
	tabs := make([]*container.TabItem, len(s.all))
	for i, one := range s.all {
		tabs[i] = container.NewTabItem(one.title, one.content)
	}
	s.tabs = container.NewAppTabs(tabs...)
	s.tabs.SelectIndex(hoseMapTab)
	return s
}

// inOrder are the screens as their tabs stand.
func (s *screens) inOrder(v *verdict.Screen, r *repair.Screen, p *proof.Screen, a *alike.Screen) []page {
	return []page{
		{kit.L("window.frame.complaint"), s.complaint.Content(), s.complaint.Show, nil, s.complaint.Leave, s.complaint.First},
		{kit.L("window.frame.warm-up"), s.warmup.Content(), s.warmup.Show, nil, s.warmup.Leave, s.warmup.First},
		{kit.L("window.frame.hose-map"), s.hosemap.Content(), s.hosemap.Show, s.showLikely, s.hosemap.Leave, s.hosemap.Unread},
		{kit.L("window.frame.checks"), s.checks.Content(), s.checks.Show, nil, s.checks.Leave, s.checks.Focus},
		{kit.L("window.frame.causes"), s.causes.Content(), nil, s.causes.Show, nil, s.causes.Focus},
		{kit.L("window.verdict.tab"), v.Content(), nil, v.Show, v.Leave, nil},
		{kit.L("window.repair.tab"), r.Content(), r.Show, nil, r.Leave, nil},
		{kit.L("window.proof.tab"), p.Content(), p.Show, nil, p.Leave, p.First},
		{kit.L("window.photos.tab"), s.photos.Content(), s.photos.Show, nil, s.photos.Leave, nil},
		{kit.L("window.frame.what-if"), s.whatif.Content(), s.whatif.Show, nil, nil, s.whatif.First},
		{kit.L("window.alike.tab"), a.Content(), a.Show, nil, nil, nil},
	}
}

// first is where one begins on a screen that is in sight.
func (s *screens) first(tab int) fyne.Focusable {
	if first := s.all[tab].first; first != nil {
		return first()
	}
	return kit.First(s.all[tab].content)
}

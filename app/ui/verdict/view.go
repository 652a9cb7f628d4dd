// Package verdict is the screen for the end of a case: the cause, what
// confirmed it, what is ruled out, and what is to be learned from it.
package verdict

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Data is what the screen shows. All words are ready to be read.
type Data struct {
	Case     cases.Case
	Units    units.Set
	Evidence []Evidence // of the case, that a cause can be confirmed by
	RuledOut []string   // causes, by what was measured; none: nothing yet
	Odds     string     // how probable the chosen cause is; "": none is chosen
	Ranked   []Ranked   // the likeliest first; none: not judged yet
	Beside   string     // what may be a second fault; "": nothing
}

// Ranked is a cause with its chance.
type Ranked struct {
	Cause  cases.Cause
	Chance string
}

// Evidence is something in the case that can confirm a cause.
type Evidence struct {
	Word string // as kept in verdict.confirmed_by
	Text string // what it showed
}

// View is the screen.
type View struct {
	// OnPaper is called to make the papers.
	OnPaper func()

	edit     func(what string, change func(*cases.Case))
	form     *kit.Form
	cause    *kit.Choice[cases.Cause]
	evidence *fyne.Container
	unnoted  *kit.Choice[string]    // what confirmed it though the case doesn't hold it
	pointed  string                 // the evidence that the rows were made of
	picks    map[string]*kit.Button // of the rows, by their word
	ruledOut *fyne.Container
	odds     *kit.Prose
	beside   *kit.Prose
	second   fyne.CanvasObject // holds beside
	caution  *kit.Prose        // in the chosen units
	left     *fyne.Container   // holds what grows and shrinks with the cause
	right    *fyne.Container   // and with what is ruled out
	content  fyne.CanvasObject
}

// New makes the screen; edit changes the case.
func New(edit func(what string, change func(*cases.Case))) *View {
	f := kit.NewForm(edit)
	v := &View{edit: edit, form: f, evidence: container.NewVBox(), ruledOut: container.New(kit.Tight{}), odds: kit.Aside(""), beside: kit.Paragraphs(), caution: kit.Paragraphs()}
	v.second = kit.CardOf("look", kit.L("beside.title"), v.beside)
	v.cause = kit.NewChoice(cases.Words[cases.Cause](), cases.Cause.Name, func(cause cases.Cause) {
		edit(kit.L("window.verdict.cause"), func(c *cases.Case) { c.Verdict.Find(cause) })
	})
	v.unnoted = kit.NewChoice(confirmations(), confirmation, v.confirm)
	v.unnoted.PlaceHolder = kit.L("window.verdict.unnoted-hint")
	v.left = container.NewVBox(
		kit.Section(kit.L("window.verdict.verdict"),
			kit.Labelled(kit.L("window.verdict.cause"), v.cause.Select),
			v.odds,
			v.second,
			container.New(kit.Tight{}, kit.Small(kit.L("window.verdict.confirmed-by")), v.evidence),
			v.unnoted.Select,
			f.Area(kit.L("window.verdict.note"), kit.L("window.verdict.note-hint"), 3, func(c *cases.Case) *string { return &c.Verdict.Note }),
		),
	)
	print := kit.NewButtonWithIcon(kit.L("window.verdict.print"), theme.DocumentPrintIcon(), func() { v.OnPaper() })
	print.Importance = widget.HighImportance
	v.right = container.NewVBox(
		kit.Section(kit.L("window.verdict.next-one"),
			f.Area(kit.L("window.verdict.lesson"), kit.L("window.verdict.lesson-hint"), 4, func(c *cases.Case) *string { return &c.Lesson }),
		),
		kit.Section(kit.L("window.verdict.paper"), container.NewHBox(print), kit.CardOf("act", kit.L("window.verdict.before-out"), v.caution)),
		kit.Section(kit.L("window.verdict.ruled-out"), v.ruledOut),
	)
	v.content = container.NewVScroll(container.NewPadded(container.New(kit.Shares{470, 470}, container.NewPadded(v.left), container.NewPadded(v.right))))
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show paints a case. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	v.form.Show(d.Case, d.Units)
	v.offer(d)
	v.cause.Put(d.Case.Verdict.Cause)
	v.showEvidence(d)
	kit.SetParagraphs(v.odds, kit.Soft(d.Odds))
	kit.SetParagraphs(v.beside, kit.Span{Text: d.Beside, Small: true})
	if v.second.Show(); d.Beside == "" {
		v.second.Hide()
	}
	kit.SetParagraphs(v.caution, caution(d.Units))
	v.showRuledOut(d.RuledOut)
	v.right.Refresh()
	v.left.Refresh() // the toolkit lays a section out anew where its words wrap, not what stands under it
}

func caution(u units.Set) kit.Span {
	return kit.Span{Text: say.English().With(u).Of("window.verdict.before-out-text", cases.OpenBelowC), Small: true}
}

// offer lists the causes, the likeliest first with their chances; those that aren't
// ranked follow in their usual order. One that the loop has no part for is left out, unless it was given.
func (v *View) offer(d Data) {
	var order []cases.Cause
	names := map[cases.Cause]string{}
	add := func(c cases.Cause, name string) {
		if _, there := names[c]; !there && (c == d.Case.Verdict.Cause || !d.Case.Loop.Lacks(c)) {
			order, names[c] = append(order, c), name
		}
	}
	for _, r := range d.Ranked {
		add(r.Cause, kit.L("window.verdict.with-chance", r.Cause.Name(), r.Chance))
	}
	for _, c := range cases.Words[cases.Cause]() {
		add(c, c.Name())
	}
	v.cause.Offer(order, func(c cases.Cause) string { return names[c] })
}

// showRuledOut lists causes in two columns, which are read down: who looks for one of twenty finds no word in a paragraph.
func (v *View) showRuledOut(names []string) {
	v.ruledOut.RemoveAll()
	if len(names) == 0 {
		v.ruledOut.Add(kit.Paragraphs(kit.Span{Text: kit.L("window.verdict.none-ruled-out"), Small: true}))
		return
	}
	half := (len(names) + 1) / 2
	v.ruledOut.Add(kit.Paragraphs(kit.Span{Text: kit.L("window.verdict.under-one"), Small: true, Color: theme.ColorNamePlaceHolder}))
	v.ruledOut.Add(container.New(kit.Shares{1, 1}, lines(names[:half]), lines(names[half:])))
}

func lines(names []string) fyne.CanvasObject {
	var spans []kit.Span
	for _, n := range names {
		spans = append(spans, kit.Span{Text: kit.Capital(n), Small: true})
	}
	return kit.Paragraphs(spans...)
}

// confirm points at what confirmed the cause.
func (v *View) confirm(word string) {
	v.edit(kit.L("window.verdict.confirmed-by"), func(c *cases.Case) { c.Verdict.ConfirmedBy = word })
}

// showEvidence lists what the case holds, the chosen in bold, where a press points at it; the other checks stand in
// the list below, so that each can be chosen in one place only.
func (v *View) showEvidence(d Data) {
	key := d.Case.ID + d.Case.Verdict.ConfirmedBy
	for _, e := range d.Evidence {
		key += "\n" + e.Word + e.Text
	}
	if key == v.pointed {
		return // the focus stays where it is
	}
	v.unnoted.Offer(slices.DeleteFunc(confirmations(), func(word string) bool {
		return slices.ContainsFunc(d.Evidence, func(e Evidence) bool { return e.Word == word })
	}), confirmation)
	v.unnoted.Put(d.Case.Verdict.ConfirmedBy)
	before := v.picks
	v.pointed, v.picks = key, map[string]*kit.Button{}
	v.evidence.RemoveAll()
	found := false
	for _, e := range d.Evidence {
		chosen := e.Word == d.Case.Verdict.ConfirmedBy
		found = found || chosen
		v.evidence.Add(v.evidenceRow(e, chosen))
		if old := before[e.Word]; old != nil {
			kit.Hand(old, v.picks[e.Word])
		}
	}
	switch {
	case len(d.Evidence) == 0:
		v.evidence.Add(kit.Small(kit.L("window.verdict.no-evidence")))
	case d.Case.Verdict.ConfirmedBy != "" && !found:
		v.evidence.Add(kit.Card("look", kit.L("window.verdict.not-in-case"), kit.Span{Text: kit.L("window.verdict.not-in-case-text"), Small: true}))
	}
}

func (v *View) evidenceRow(e Evidence, chosen bool) fyne.CanvasObject {
	icon := theme.RadioButtonIcon()
	if chosen {
		icon = theme.RadioButtonCheckedIcon()
	}
	point := func() { v.confirm(e.Word) }
	pick := kit.NewQuiet("", icon, point)
	v.picks[e.Word] = pick
	return container.NewBorder(nil, nil, container.NewVBox(pick), nil, newWords(kit.Span{Text: e.Text, Small: true, Bold: chosen}, point))
}

// Leave keeps what is being typed.
func (v *View) Leave() { v.form.Leave() }

// confirmations are the hose map, the warm-up and the workshop checks.
func confirmations() []string {
	out := []string{cases.ByHoseMap, cases.ByWarmUp}
	for _, k := range cases.Words[cases.TestKind]() {
		out = append(out, string(k))
	}
	return out
}

func confirmation(word string) string { return cases.Confirmation(word).String() }

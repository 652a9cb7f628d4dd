// Package warmup is the screen for the warm-up: logs from a file or written
// down minute by minute, each as a curve with what it tells.
package warmup

import (
	"fmt"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

// Data is what the screen shows.
type Data struct {
	Case    cases.Case
	Log     int // which of the case's logs; -1: there is none
	Lines   chart.Lines
	Facts   []Fact
	Flags   []evidence.Flag // what the log is found to say
	Remarks []string
	Columns bool   // whether the columns of the file that was read last can be set anew
	Reading string // how far a file is read; "": none is being read
	Units   units.Set

	Overheated bool // the engine was so hot before that it had to be switched off
}

// Fact is one thing that the log tells.
type Fact struct{ What, Value string }

// View is the screen.
type View struct {
	// OnFile asks for a file to read; OnLog turns to another log; OnSave writes
	// the chart as "png" or "svg".
	OnFile func()
	OnLog  func(i int)
	OnSave func(kind string)
	// OnColumns asks which column of the file is what.
	OnColumns func()

	edit    func(what string, change func(*cases.Case))
	data    Data
	pick    *kit.Select
	picking bool
	stage   *kit.Choice[cases.Stage] // of the shown log

	hand    *hand // what is written down here
	chart   *kit.ChartView
	facts   *fyne.Container
	flags   *fyne.Container
	tells   fyne.CanvasObject
	below   *fyne.Container // the chart, and under it what it tells
	remarks *kit.Prose
	pane    *fyne.Container // laid out anew when its words change
	reading *widget.Label
	save    *kit.Button
	svg     *kit.Button
	columns *kit.Button
	remove  *kit.Button
	file    *kit.Button // reads a log: over one that is shown, or where there is none under what says so
	top     fyne.CanvasObject
	over    *fyne.Container
	invite  *fyne.Container
	empty   fyne.CanvasObject
	content fyne.CanvasObject
}

// New makes the screen; edit changes the case, now is the clock.
func New(edit func(what string, change func(*cases.Case)), now func() time.Time) *View {
	v := &View{
		OnFile: func() {}, OnLog: func(int) {}, OnSave: func(string) {}, OnColumns: func() {},
		edit: edit, data: Data{Log: -1}, chart: kit.NewChartView(), facts: container.NewGridWithColumns(factColumns), flags: container.NewVBox(),
		over: container.NewStack(), invite: container.NewStack(),
		remarks: kit.Paragraphs(), reading: kit.Small(""), hand: newHand(edit, now),
	}
	v.pick = kit.NewSelect(nil, func(string) {
		if i := v.pick.SelectedIndex(); !v.picking && i >= 0 {
			v.OnLog(i)
		}
	})
	v.stage = kit.NewChoice(cases.Words[cases.Stage](), cases.Stage.Name, v.setStage)
	v.content = v.layout()
	v.hand.clock.moved = v.pane.Refresh
	return v
}

func (v *View) layout() fyne.CanvasObject {
	file := kit.NewButtonWithIcon(kit.L("window.warmup.read"), theme.FolderOpenIcon(), func() { v.OnFile() })
	file.Importance = widget.HighImportance
	v.file = file
	v.save = kit.NewQuiet("PNG", theme.DocumentSaveIcon(), func() { v.OnSave("png") })
	v.svg = kit.NewQuiet("SVG", theme.DocumentSaveIcon(), func() { v.OnSave("svg") })
	v.columns = kit.NewQuiet(kit.L("window.warmup.columns"), theme.ListIcon(), func() { v.OnColumns() })
	v.remove = kit.NewQuiet(kit.L("window.warmup.remove"), theme.DeleteIcon(), v.drop)
	v.top = container.NewPadded(container.NewBorder(nil, nil, container.NewHBox(container.New(kit.Shares{290}, v.pick), container.New(kit.Shares{130}, v.stage.Select), v.remove),
		container.NewHBox(v.columns, v.save, v.svg, v.over), v.reading))
	v.tells = kit.Section(kit.L("window.warmup.tells"), v.facts, v.remarks)
	v.below = container.New(under{}, v.chart, v.tells)
	v.pane = container.NewVBox(v.flags, v.hand.content)
	side := container.NewVScroll(container.NewPadded(v.pane)) // the bar stands beside the fields
	v.empty = container.NewCenter(container.NewVBox(kit.Wide(420, kit.Paragraphs(
		kit.Span{Text: kit.L("window.warmup.none"), Bold: true},
		kit.Span{Text: kit.L("window.warmup.none-text")})), container.NewHBox(v.invite)))
	return kit.Framed(v.top, nil, nil, kit.Wide(316, side), container.NewStack(v.empty, container.NewPadded(v.below)))
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// First is where a hand begins to type.
func (v *View) First() fyne.Focusable { return v.hand.degrees }

// Show paints a case's log. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	v.hand.in(d.Units)
	v.hand.mind(d.Overheated)
	if now := kit.StageNow(&d.Case); d.Case.ID != v.data.Case.ID {
		v.hand.begin(d.Case)
	} else if v.hand.show(d.Case); now != kit.StageNow(&v.data.Case) {
		v.hand.turn(now)
	}
	v.data = d
	names := make([]string, len(d.Case.Logs))
	for i, l := range d.Case.Logs {
		names[i] = fmt.Sprintf("%d  %s", i+1, nameOf(l))
	}
	v.picking = true
	v.pick.SetOptions(names)
	if d.Log >= 0 && d.Log < len(names) {
		v.pick.SetSelectedIndex(d.Log)
		v.stage.Put(d.Case.Logs[d.Log].Stage)
	} else {
		v.pick.ClearSelected()
	}
	v.picking = false
	v.reading.SetText(d.Reading)
	kit.SetVisible(d.Log >= 0, v.chart, v.save, v.svg, v.remove, v.pick, v.stage.Select)
	kit.SetVisible(d.Log >= 0 || d.Reading != "" || d.Columns, v.top)
	kit.Move(v.file, v.over, v.invite, d.Log >= 0)
	kit.SetVisible(d.Log < 0, v.empty)
	kit.SetVisible(d.Columns, v.columns)
	v.chart.Draw(d.Lines)
	v.facts.Objects = cells(d.Facts)
	v.facts.Refresh()
	v.flags.RemoveAll()
	for _, f := range d.Flags {
		v.flags.Add(kit.FlagCard(f, d.Units))
	}
	spans := make([]kit.Span, len(d.Remarks))
	for i, r := range d.Remarks {
		spans[i] = kit.Span{Text: kit.Capital(r), Small: true}
	}
	kit.SetParagraphs(v.remarks, spans...)
	kit.SetVisible(d.Log >= 0 && len(d.Facts)+len(spans) > 0, v.tells)
	v.below.Refresh() // the chart has what the words leave
	v.order()
}

// order begins the pane with what the log is found to say; while somebody writes the fields are
// first and stay where they are.
func (v *View) order() {
	rises := v.hand.busy() && v.pane.Objects[0] != v.hand.content
	v.pane.Objects = []fyne.CanvasObject{v.flags, v.hand.content}
	if v.hand.busy() {
		v.pane.Objects = []fyne.CanvasObject{v.hand.content, v.flags}
	}
	v.pane.Refresh()
	if rises && v.hand.mending != nil {
		kit.InSight(v.hand.degrees)
	}
}

func nameOf(l cases.Log) string {
	name := l.Name
	if name == "" {
		name = "log"
	}
	if l.Stage == cases.AfterRepair {
		name = kit.L("window.warmup.after", name)
	}
	return name
}

// setStage says when the shown log was recorded.
func (v *View) setStage(s cases.Stage) {
	i := v.data.Log
	if !v.hand.settle() { // the row may go with its log
		v.stage.Put(v.data.Case.Logs[i].Stage)
		return
	}
	v.edit(kit.L("window.warmup.stage"), func(k *cases.Case) {
		if i >= 0 && i < len(k.Logs) {
			k.Logs[i].Stage = s
		}
	})
}

func (v *View) drop() {
	i := v.data.Log
	v.edit(kit.L("window.warmup.log-removed"), func(k *cases.Case) {
		if i >= 0 && i < len(k.Logs) {
			k.Logs = slices.Delete(k.Logs, i, i+1)
		}
	})
}

// Back leaves the row that is being mended as it is; false where none is.
func (v *View) Back() bool { return v.hand.leaveRow() }

// Leave keeps a row that is typed, and the change of one that is mended, where they can be
// read. The clock goes on.
func (v *View) Leave() { v.hand.leave() }

package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// roomName is what fills the window beside the list of cases.
type roomName int

// The rooms. The case's shows the greeting where none is open.
const (
	caseRoom roomName = iota
	historyRoom
	practiceRoom
)

// rooms holds the rooms one over the other, one of them in sight.
type rooms struct {
	now     roomName
	all     map[roomName]fyne.CanvasObject
	content *fyne.Container
}

func newRooms(all map[roomName]fyne.CanvasObject) *rooms {
	r := &rooms{all: all, content: container.NewStack()}
	for at := caseRoom; at <= practiceRoom; at++ {
		if o, ok := all[at]; ok {
			r.content.Add(o)
		}
	}
	r.show(caseRoom)
	return r
}

func (r *rooms) show(at roomName) {
	r.now = at
	for name, o := range r.all {
		if name == at {
			o.Show()
		} else {
			o.Hide()
		}
	}
}

// enter turns to a room.
func (w *window) enter(at roomName) {
	if w.rooms.now == at {
		return
	}
	w.leave()
	w.rooms.show(at)
	w.showRail()
	switch at {
	case caseRoom:
		w.show()
	case historyRoom:
		w.showHistory()
	case practiceRoom:
		w.showPractice()
	}
}

// showRail hides the list of cases from who practises: it tells what each turned
// out to be. A trainer sees it.
func (w *window) showRail() {
	if w.rooms.now == practiceRoom && (w.trains.session != nil || !w.trains.trainer) {
		w.rail.Hide()
	} else {
		w.rail.Show()
	}
	w.window.Content().Refresh()
}

// typed takes the keys that nothing with the focus wants: Escape leaves a row of a warm-up that is
// being mended, and leads back to the case.
func (w *window) typed(e *fyne.KeyEvent) {
	mends := w.rooms.now == caseRoom && w.tabs.SelectedIndex() == warmUpTab
	if e.Name == fyne.KeyEscape && !(mends && w.warmup.Back()) {
		w.enter(caseRoom)
	}
}

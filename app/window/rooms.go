package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
)

// roomName is what fills the window beside the list of cases.
type roomName int

// The rooms. The case's shows the greeting where none is open.
const (
	caseRoom roomName = iota
	historyRoom
	practiceRoom
)

// room is one of them.
type room struct {
	content fyne.CanvasObject
	show    func() // paints it when it is entered
}

// rooms holds the rooms one over the other, one of them in sight.
type rooms struct {
	now     roomName
	all     map[roomName]room
	content *fyne.Container
}

func newRooms(all map[roomName]room) *rooms {
	r := &rooms{all: all, content: container.NewStack()}
	for at := caseRoom; at <= practiceRoom; at++ {
		if one, ok := all[at]; ok {
			r.content.Add(one.content)
		}
	}
	r.turn(caseRoom)
	return r
}

// turn brings a room into sight.
func (r *rooms) turn(to roomName) {
	r.now = to
	for name, one := range r.all {
		kit.SetVisible(name == to, one.content)
	}
}

// enter turns to a room.
func (w *window) enter(to roomName) {
	if w.rooms.now == to {
		if to == practiceRoom {
			kit.Focus(w.practice.First())
		}
		return
	}
	w.leave()
	w.rooms.turn(to)
	w.showRail()
	w.dropUnseen()
	w.rooms.all[to].show()
	if to == practiceRoom {
		kit.Focus(w.practice.First())
	}
}

// dropUnseen takes the focus from what is no longer in sight: what is typed next would land there.
func (w *window) dropUnseen() { kit.DropUnseen(w.window.Canvas()) }

// goHome turns to the case from wherever one is, but from a case that is practised on: its answer stands
// there. It reports whether the case is in sight.
func (w *window) goHome() bool {
	if !w.hidden() {
		w.enter(caseRoom)
	}
	return w.rooms.now == caseRoom
}

// hidden reports whether the notebook is to stay out of sight: somebody practises on a case.
func (w *window) hidden() bool { return w.rooms.now == practiceRoom && w.practice.Practises() }

// showRail hides the list of cases from who practises: it tells what each turned
// out to be. A trainer sees it.
func (w *window) showRail() {
	kit.SetVisible(w.rooms.now != practiceRoom || w.practice.Trains(), w.rail)
	w.window.Content().Refresh()
}

// typed takes the keys that nothing with the focus wants: Escape leaves a row of a warm-up that is
// being mended, and leads back to the case, but not who practises: meant for a list that is shut already, it would
// show the answer.
func (w *window) typed(e *fyne.KeyEvent) {
	if kit.Page(w.window.Canvas(), e) {
		return
	}
	if e.Name == fyne.KeyEscape && !w.hidden() && !(w.rooms.now == caseRoom && w.screens.back()) {
		w.enter(caseRoom)
	}
}

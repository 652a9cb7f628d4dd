package cases

import "time"

// History says where a case stands among its revisions.
type History struct {
	Revision int       // the one that is shown, from 1
	Saved    time.Time // when it was made
	What     string    // the edit that made it, which Undo takes back
	CanUndo  bool
	CanRedo  bool
	RedoWhat string // the edit that Redo makes again; empty without one
}

package cases

// Meeting is how a case from outside stands to the notebook.
type Meeting string

// The meetings.
const (
	MeetsNone  Meeting = "new"      // the notebook has neither its id nor its content
	MeetsSame  Meeting = "same"     // it is there already, under its id or another
	MeetsOlder Meeting = "older"    // it is an earlier revision of the notebook's
	MeetsOther Meeting = "conflict" // the notebook's case of that id says something else
)

// Choice is a person's word on a conflict.
type Choice string

// The choices.
const (
	KeepMine   Choice = "mine"
	TakeTheirs Choice = "theirs" // as an edit that can be undone
	KeepBoth   Choice = "both"   // theirs under an id of its own
)

// Met is what became of a case from outside.
type Met struct {
	Meeting Meeting
	ID      string // of the notebook's case
	Mine    Case   // of a conflict
	Theirs  Bundle // of a conflict
}

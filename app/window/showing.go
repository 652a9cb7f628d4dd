package window

import (
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/app/window/causes"
)

// watch calls selected when another screen is looked at. What is typed as a warm-up is kept before.
func (s *screens) watch(selected func()) {
	s.tabs.OnUnselected = func(left *container.TabItem) {
		if s.at.Desk.Open && left.Content == s.warmup.Content() {
			s.warmup.Leave()
		}
	}
	s.tabs.OnSelected = func(*container.TabItem) { selected() }
}

// show paints the screen that is looked at. The others wait until they are: all of them together take longer
// than a person should wait for a field. The simulated car runs only while it is looked at.
func (s *screens) show() {
	at := s.tabs.SelectedIndex()
	if !s.at.Desk.Open || at != whatIfTab {
		s.whatif.End()
	}
	if !s.at.Desk.Open {
		return
	}
	if show := s.all[at].show; show != nil {
		show()
	}
	s.showAnswer()
}

// showAnswer paints what the case is held to be, where that is looked at.
func (s *screens) showAnswer() {
	if answer := s.all[s.tabs.SelectedIndex()].answer; answer != nil && s.at.Desk.Open {
		answer()
	}
}

// showLikely tells the first causes on the hose map.
func (s *screens) showLikely() { s.hosemap.ShowLikely(causes.Likely(s.at.Desk)) }

// leave keeps what is being typed on any of them.
func (s *screens) leave() {
	if !s.at.Desk.Open {
		return
	}
	for _, one := range s.all {
		if one.leave != nil {
			one.leave()
		}
	}
}

// back leaves what Escape leaves on the screen that is looked at, and reports whether there was something.
func (s *screens) back() bool { return s.tabs.SelectedIndex() == warmUpTab && s.warmup.Back() }

// unkept reports whether something that was typed could not be kept, and where it is if it isn't in sight.
func (s *screens) unkept() (some bool, where string) {
	at, d := s.tabs.SelectedIndex(), s.at.Desk
	if kit.Refusing(s.tabs) || at == hoseMapTab && len(d.Slips()) > 0 {
		return true, ""
	}
	slipped := s.hosemap.Slipped()
	for i := range d.Case.Rounds {
		if slipped[i] && !(at == hoseMapTab && i == d.Round) {
			return true, kit.L("chart.round", i+1)
		}
	}
	for _, one := range s.all {
		if len(kit.Refused(one.content)) > 0 {
			return true, one.title
		}
	}
	return false, ""
}

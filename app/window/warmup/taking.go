package warmup

import (
	"path/filepath"
	"slices"
	"strings"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/logfile"
)

// nameOf is what the log of a file is called.
func nameOf(path string) string {
	name := filepath.Base(path)
	return strings.TrimSuffix(name, filepath.Ext(name))
}

// put puts the log of the file that was read into the case, and gives its place there; read again it replaces itself.
func (s *Screen) put(read logfile.Read, again bool) int {
	l := read.Log
	l.Name, l.Stage = nameOf(s.file.path), kit.StageNow(&s.at.Desk.Case)
	over := -1
	if again {
		over = s.looked()
	}
	at := placeOf(s.at.Desk.Case.Logs, l, over)
	s.shown = at
	s.at.Desk.Edit(kit.L("window.frame.log-edit", l.Name), func(c *cases.Case) {
		if at < len(c.Logs) {
			l.Stage = c.Logs[at].Stage
			c.Logs[at] = l
			return
		}
		c.Logs = append(c.Logs, l)
	})
	return at
}

// placeOf is where a log goes: over the shown one that is read again, else over the one with its name, which a
// scan tool may give to every log that it saves, so only on the same side of the repair.
func placeOf(logs []cases.Log, read cases.Log, again int) int {
	if again >= 0 && again < len(logs) && logs[again].Name == read.Name {
		return again
	}
	after := func(log cases.Log) bool { return log.Stage == cases.AfterRepair }
	at := slices.IndexFunc(logs, func(had cases.Log) bool { return had.Name == read.Name && after(had) == after(read) })
	if at < 0 {
		return len(logs)
	}
	return at
}

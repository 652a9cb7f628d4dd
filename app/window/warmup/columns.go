package warmup

import (
	"encoding/json"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases/logfile"
	"loopbook/diagram/say"
)

// columnName is the key of a log's column in the words of the trade.
func columnName(key string) string { return kit.L("window.columns." + key) }

// askColumns lets a person say which column is what, with the file's first
// rows in sight. What is said is remembered for files with the same heading.
func (s *Screen) askColumns(path string, read logfile.Read, why error) {
	taken := map[string]string{}
	for _, c := range read.Columns {
		taken[c.Key] = c.Header
	}
	noColumn := kit.L("window.columns.none")
	rows := container.NewGridWithColumns(2)
	picks := map[string]*kit.Select{}
	for _, key := range logfile.Keys() {
		pick := kit.NewSelect(append([]string{noColumn}, read.Header...), nil)
		pick.SetSelected(noColumn)
		if h, ok := taken[key]; ok {
			pick.SetSelected(h)
		}
		picks[key] = pick
		rows.Add(widget.NewLabel(columnName(key)))
		rows.Add(pick)
	}
	top := kit.Paragraphs(kit.Span{Text: kit.L("window.columns.once"), Small: true})
	if why != nil {
		top = kit.Paragraphs(kit.Span{Text: why.Error(), Bold: true}, kit.Span{Text: kit.L("window.columns.by-hand"), Small: true})
	}
	body := container.NewBorder(top, nil, nil, nil, container.NewVBox(rows, widget.NewSeparator(), preview(read)))
	s.at.Ask.OfferElse(kit.L("window.columns.title"), kit.L("window.columns.read"), kit.L("window.columns.leave"), kit.Wide(640, body), func() {
		chosen := map[string]string{}
		for key, pick := range picks {
			chosen[key] = ""
			if pick.Selected != noColumn {
				chosen[key] = pick.Selected
			}
		}
		s.kept.setColumns(logfile.Fingerprint(read.Header), chosen)
		s.readAs(path, chosen)
	}, s.next)
}

// preview is the file's heading with its first rows.
func preview(read logfile.Read) fyne.CanvasObject {
	const most = 6
	grid := container.NewGridWithColumns(max(len(read.Header), 1))
	for _, h := range read.Header {
		grid.Add(widget.NewLabelWithStyle(h, fyne.TextAlignLeading, fyne.TextStyle{Bold: true}))
	}
	for _, row := range read.Preview[:min(most, len(read.Preview))] {
		for i := range read.Header {
			cell := ""
			if i < len(row) {
				cell = row[i]
			}
			grid.Add(widget.NewLabel(cell))
		}
	}
	scroll := container.NewHScroll(grid)
	scroll.SetMinSize(fyne.NewSize(600, 230))
	return scroll
}

// columnsTold says in one line what was taken for what.
func columnsTold(read logfile.Read) string {
	var parts []say.Text
	for _, c := range read.Columns {
		key := "window.columns.told"
		if c.Guessed {
			key = "window.columns.guessed"
		}
		parts = append(parts, say.Of(key, strings.ToLower(columnName(c.Key)), c.Header))
	}
	return kit.L("window.columns.taken", say.Items(parts...))
}

// remembered is what was said of columns, by the heading of the files.
type remembered struct{ fyne.Preferences }

// columns is what was said of files with a heading, or nil.
func (p remembered) columns(fingerprint string) map[string]string {
	var m map[string]string
	if json.Unmarshal([]byte(p.String("log-columns-"+fingerprint)), &m) != nil {
		return nil // nothing was said
	}
	return m
}

func (p remembered) setColumns(fingerprint string, m map[string]string) {
	if text, err := json.Marshal(m); err == nil {
		p.SetString("log-columns-"+fingerprint, string(text))
	}
}

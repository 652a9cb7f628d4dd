package photos

import (
	"context"
	"net/url"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"loopbook/app/ui/kit"
)

// Paste takes the picture in the clipboard, or the picture files that were
// copied.
func (p *Photos) Paste() {
	if paths := copiedPhotos(p.copied()); len(paths) > 0 {
		p.Add(paths)
		return
	}
	ctx := p.at.Ctx
	p.at.Leave()
	if data := copiedPicture(ctx); len(data) > 0 {
		p.take(1, func(int) (newPhoto, error) { return newPhoto{kit.L("window.photos.pasted") + ".png", data}, nil })
		return
	}
	p.at.Ask.Inform(kit.L("window.photos.clipboard-empty"))
}

// copiedPhotos are the picture files that a text names, one a line, as file
// managers copy them.
func copiedPhotos(text string) []string {
	var out []string
	for _, line := range strings.Split(strings.ReplaceAll(text, "\r", ""), "\n") {
		path := strings.TrimSpace(line)
		if u, err := url.Parse(path); err == nil && u.Scheme == "file" {
			path = filepath.FromSlash(u.Path)
		}
		if filepath.IsAbs(path) && IsPhoto(path) {
			out = append(out, path)
		}
	}
	return out
}

// clipboardPatience is how long a helper may take to hand over a picture.
const clipboardPatience = 5 * time.Second

// copiedPicture asks the desktop's own helpers for a picture, since the toolkit's
// clipboard holds text alone; nil where there is none.
func copiedPicture(ctx context.Context) []byte {
	ctx, cancel := context.WithTimeout(ctx, clipboardPatience)
	defer cancel()
	for _, helper := range [][]string{
		{"wl-paste", "--no-newline", "--type", "image/png"},
		{"xclip", "-selection", "clipboard", "-target", "image/png", "-out"},
	} {
		if _, err := exec.LookPath(helper[0]); err != nil {
			continue
		}
		if data, err := exec.CommandContext(ctx, helper[0], helper[1:]...).Output(); err == nil && len(data) > 0 {
			return data
		}
	}
	return nil
}

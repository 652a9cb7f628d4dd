package papers

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"

	"loopbook/app/ui/kit"
)

// pagesOf turns a PDF into pictures of its pages, by the program that the system
// has for it, and says how many they are or why they can't be shown.
func pagesOf(ctx context.Context, pdf []byte) ([]image.Image, string) {
	pages, err := rasterised(ctx, pdf)
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, kit.L("window.papers.no-preview")
	case err != nil:
		return nil, kit.L("window.papers.preview-failed", err.Error())
	}
	return pages, kit.L("window.papers.made", len(pages))
}

// previewDPI makes an A4 page some 900 pixels wide.
const previewDPI = "110"

func rasterised(ctx context.Context, pdf []byte) ([]image.Image, error) {
	dir, err := os.MkdirTemp("", "loopbook-pages-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	cmd := exec.CommandContext(ctx, "pdftoppm", "-r", previewDPI, "-png", "-", filepath.Join(dir, "page"))
	cmd.Stdin = bytes.NewReader(pdf)
	if out, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, out)
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.png"))
	if err != nil {
		return nil, err
	}
	slices.Sort(files)
	pages := make([]image.Image, 0, len(files))
	for _, name := range files {
		img, err := readPNG(name)
		if err != nil {
			return nil, err
		}
		pages = append(pages, img)
	}
	return pages, nil
}

func readPNG(name string) (image.Image, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return png.Decode(f)
}

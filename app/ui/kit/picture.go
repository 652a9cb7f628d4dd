package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram/drawing"
)

// Picture paints a drawing's shapes as large as its room allows.
type Picture struct {
	widget.BaseWidget
	self    fyne.CanvasObject // the widget that embeds this one, or itself
	picture drawing.Picture
	still   bool                              // a fixed size: a sign or a mark
	least   float32                           // scale at which the words can still be read
	overlay func(painter) []fyne.CanvasObject // what lies over the shapes; may be nil
}

// NewPicture shows shapes in a box of a fixed size: a sign, a mark.
func NewPicture(width, height float64, shapes ...drawing.Shape) *Picture {
	p := &Picture{still: true, picture: drawing.Picture{Width: width, Height: height, Shapes: shapes}}
	p.self = p
	p.ExtendBaseWidget(p)
	return p
}

// NewVignette shows a drawing that grows with its room.
func NewVignette(d drawing.Picture) *Picture {
	p := NewDrawn(smallest)
	p.picture = d
	return p
}

// NewDrawn shows whatever is drawn last, no smaller than the least scale.
func NewDrawn(least float32) *Picture {
	p := &Picture{least: least}
	p.self = p
	p.ExtendBaseWidget(p)
	return p
}

// Draw paints another drawing. Call it on the Fyne goroutine.
func (v *Picture) Draw(d drawing.Picture) {
	v.picture = d
	v.Refresh()
}

// CreateRenderer paints the shapes. The toolkit throws the renderer of what is hidden for a minute
// away and lays the next one out only where the size is another: so it is here.
func (v *Picture) CreateRenderer() fyne.WidgetRenderer {
	r := &pictureRenderer{view: v}
	r.Layout(v.self.Size())
	return r
}

// painter fits the picture into the room there is.
func (v *Picture) painter(room fyne.Size) painter {
	p := painter{palette: CurrentPalette(), scale: 1}
	if v.picture.Width == 0 || room.Width == 0 {
		return p
	}
	w, h := float32(v.picture.Width), float32(v.picture.Height)
	p.scale = fyne.Min(room.Width/w, room.Height/h)
	p.offset = fyne.NewPos((room.Width-w*p.scale)/2, 0)
	if v.still {
		p.offset.Y = (room.Height - h*p.scale) / 2
	}
	return p
}

type pictureRenderer struct {
	view    *Picture
	objects []fyne.CanvasObject
	room    fyne.Size

	shapes []drawing.Shape // what the first objects were made of
	by     painter
}

// smallest is the least scale at which a drawing's usual words can still be
// read.
const smallest = 0.82

func (r *pictureRenderer) MinSize() fyne.Size {
	p := r.view.picture
	size := fyne.NewSize(float32(p.Width), float32(p.Height))
	if r.view.still {
		return size
	}
	return fyne.NewSize(size.Width*r.view.least, size.Height*r.view.least)
}

func (r *pictureRenderer) Layout(room fyne.Size) {
	if room != r.room {
		r.room = room
		r.update()
	}
}

func (r *pictureRenderer) Refresh() {
	r.update()
	canvas.Refresh(r.view.self)
}

// update makes the objects of the shapes. One whose shape stands as it did is
// kept: its texture costs more than all the rest.
func (r *pictureRenderer) update() {
	p := r.view.painter(r.room)
	keep := r.shapes
	if !p.paintsAs(r.by) {
		keep = nil
	}
	old := r.objects
	r.objects = make([]fyne.CanvasObject, 0, len(old))
	for i, s := range r.view.picture.Shapes {
		if i < len(keep) && keep[i] == s {
			r.objects = append(r.objects, old[i])
			continue
		}
		r.objects = append(r.objects, p.object(s))
	}
	r.shapes, r.by = r.view.picture.Shapes, p
	if r.view.overlay != nil {
		r.objects = append(r.objects, r.view.overlay(p)...)
	}
}

func (r *pictureRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *pictureRenderer) Destroy()                     {}

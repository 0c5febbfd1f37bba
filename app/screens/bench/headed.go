package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"sumpter/app/look"
)

// Headed puts heads above a body. A head's height may hang on its width: each
// is given the width before it is asked. The Tab key comes to the body first.
func Headed(body fyne.CanvasObject, heads ...fyne.CanvasObject) *fyne.Container {
	return container.New(headed{}, append([]fyne.CanvasObject{body}, heads...)...)
}

// headed lays out heads above a body, which is the first object.
type headed struct{}

// MinSize has room for all.
func (headed) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.Size{}
	for _, object := range objects {
		if !object.Visible() {
			continue
		}
		if size.Height > 0 {
			size.Height += look.SpaceSmall
		}
		least := object.MinSize()
		size.Width, size.Height = max(size.Width, least.Width), size.Height+least.Height
	}
	return size
}

// Layout gives the heads what they need and the body the rest.
func (headed) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, head := range objects[1:] {
		if !head.Visible() {
			continue
		}
		head.Move(fyne.NewPos(0, y))
		head.Resize(fyne.NewSize(size.Width, head.MinSize().Height))
		height := head.MinSize().Height // now that it knows its width
		head.Resize(fyne.NewSize(size.Width, height))
		y += height + look.SpaceSmall
	}
	objects[0].Move(fyne.NewPos(0, y))
	objects[0].Resize(fyne.NewSize(size.Width, max(0, size.Height-y)))
}

// Head is what a place is about, with what can be done there at the right.
// Where the width does not do for both, what can be done goes below, on as many
// lines as it needs.
func Head(about fyne.CanvasObject, actions ...fyne.CanvasObject) *fyne.Container {
	return container.New(&head{}, append([]fyne.CanvasObject{about}, actions...)...)
}

// head lays out what a place is about, the first object, and the actions.
type head struct {
	width float32 // of the last layout, 0 before the first
}

// MinSize is as wide as the widest object and as high as the lines are at the
// width there is.
func (h *head) MinSize(objects []fyne.CanvasObject) fyne.Size {
	width := float32(0)
	for _, object := range objects {
		if object.Visible() {
			width = max(width, object.MinSize().Width)
		}
	}
	return fyne.NewSize(width, h.place(objects, h.width, false))
}

// Layout sets the objects at a width.
func (h *head) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	h.width = size.Width
	h.place(objects, size.Width, true)
}

// place tells the height of all lines, and moves the objects if asked to. A
// width of 0 has no end.
func (h *head) place(objects []fyne.CanvasObject, width float32, move bool) float32 {
	about, y := objects[0], float32(0)
	left := about.MinSize()
	lines := lines(objects[1:], width)
	if len(lines) == 0 {
		lines = [][]fyne.CanvasObject{nil}
	}
	beside := len(lines) == 1 && (width <= 0 || left.Width+look.Space+long(lines[0]) <= width)
	if !beside {
		if move {
			about.Move(fyne.NewPos(0, 0))
			about.Resize(fyne.NewSize(width, left.Height))
		}
		y = left.Height + look.SpaceSmall
	}
	for i, line := range lines {
		if i > 0 {
			y += look.SpaceSmall
		}
		height := float32(0)
		for _, object := range line {
			height = max(height, object.MinSize().Height)
		}
		if beside {
			height = max(height, left.Height)
		}
		if move {
			if beside {
				about.Move(fyne.NewPos(0, (height-left.Height)/2))
				about.Resize(fyne.NewSize(max(left.Width, width-long(line)-look.Space), left.Height))
			}
			moveLine(line, width-long(line), y, height)
		}
		y += height
	}
	return y
}

func moveLine(line []fyne.CanvasObject, x, y, height float32) {
	for _, object := range line {
		least := object.MinSize()
		object.Move(fyne.NewPos(x, y))
		object.Resize(fyne.NewSize(least.Width, height))
		x += least.Width + look.SpaceSmall
	}
}

// Row sets actions one after another, on as many lines as the width needs.
func Row(actions ...fyne.CanvasObject) *fyne.Container {
	return container.New(&row{}, actions...)
}

type row struct {
	width float32 // of the last layout, 0 before the first
}

// MinSize is as wide as the widest and as high as the lines are at the width
// there is.
func (r *row) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.Size{}
	for i, line := range lines(objects, r.width) {
		if i > 0 {
			size.Height += look.SpaceSmall
		}
		widest, height := float32(0), float32(0)
		for _, object := range line {
			least := object.MinSize()
			widest, height = max(widest, least.Width), max(height, least.Height)
		}
		size.Width, size.Height = max(size.Width, widest), size.Height+height
	}
	return size
}

// Layout sets the lines.
func (r *row) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	r.width = size.Width
	y := float32(0)
	for _, line := range lines(objects, size.Width) {
		height := float32(0)
		for _, object := range line {
			height = max(height, object.MinSize().Height)
		}
		moveLine(line, 0, y, height)
		y += height + look.SpaceSmall
	}
}

// lines breaks what is seen of the objects into lines no longer than a width.
func lines(objects []fyne.CanvasObject, width float32) [][]fyne.CanvasObject {
	var all [][]fyne.CanvasObject
	var line []fyne.CanvasObject
	for _, object := range objects {
		if !object.Visible() {
			continue
		}
		if with := append(line, object); width > 0 && len(line) > 0 && long(with) > width {
			all, line = append(all, line), nil
		}
		line = append(line, object)
	}
	if len(line) > 0 {
		all = append(all, line)
	}
	return all
}

// long is the width of a line.
func long(line []fyne.CanvasObject) float32 {
	width := -look.SpaceSmall
	for _, object := range line {
		width += object.MinSize().Width + look.SpaceSmall
	}
	return max(0, width)
}

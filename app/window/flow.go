package window

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// flow sets objects one after another like words, on as many lines as the
// width needs.
type flow struct {
	width float32 // of the last layout, 0 before the first
	lines int     // of the last layout
	grown func()  // hears that there are more or fewer lines
}

// MinSize is as wide as the widest object and as high as the lines were at the
// width there is.
func (f *flow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(0, 0)
	for _, object := range objects {
		least = least.Max(object.MinSize())
	}
	least.Height *= float32(f.place(objects, f.width, false))
	return least
}

// Layout sets the objects at a width.
func (f *flow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.width = size.Width
	if lines := f.place(objects, size.Width, true); lines != f.lines {
		f.lines = lines
		if f.grown != nil {
			f.grown()
		}
	}
}

// place counts the lines, at least one, and moves the objects if asked to.
func (f *flow) place(objects []fyne.CanvasObject, width float32, move bool) int {
	lines, x := 1, float32(0)
	for _, object := range objects {
		least := object.MinSize()
		if !object.Visible() || least.Width == 0 {
			continue
		}
		if width > 0 && x > 0 && x+least.Width > width {
			lines, x = lines+1, 0
		}
		if move {
			object.Move(fyne.NewPos(x, float32(lines-1)*least.Height))
			object.Resize(fyne.NewSize(min(least.Width, max(width, 1)), least.Height))
		}
		x += least.Width + look.Space
	}
	return lines
}

// footed lays a body above a foot whose height hangs on its width: the foot is
// given the width before it is asked.
type footed struct{ body, foot fyne.CanvasObject }

// MinSize has room for both.
func (l *footed) MinSize([]fyne.CanvasObject) fyne.Size {
	body, foot := l.body.MinSize(), l.foot.MinSize()
	return fyne.NewSize(max(body.Width, foot.Width), body.Height+foot.Height)
}

// Layout gives the foot what it needs and the body the rest.
func (l *footed) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	l.foot.Resize(fyne.NewSize(size.Width, l.foot.MinSize().Height))
	height := l.foot.MinSize().Height
	l.foot.Move(fyne.NewPos(0, size.Height-height))
	l.foot.Resize(fyne.NewSize(size.Width, height))
	l.body.Move(fyne.NewPos(0, 0))
	l.body.Resize(fyne.NewSize(size.Width, size.Height-height))
}

// flanked lays the work between the words of the navigation and what is shown
// beside it when wanted.
type flanked struct{ left, middle, right fyne.CanvasObject }

// MinSize has room for all three.
func (l *flanked) MinSize([]fyne.CanvasObject) fyne.Size {
	left, middle, right := l.left.MinSize(), l.middle.MinSize(), l.right.MinSize()
	return fyne.NewSize(left.Width+middle.Width+right.Width, max(left.Height, middle.Height, right.Height))
}

// Layout gives left and right the width they need and the middle the rest.
func (l *flanked) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	left, right := l.left.MinSize().Width, l.right.MinSize().Width
	l.left.Move(fyne.NewPos(0, 0))
	l.left.Resize(fyne.NewSize(left, size.Height))
	l.middle.Move(fyne.NewPos(left, 0))
	l.middle.Resize(fyne.NewSize(max(0, size.Width-left-right), size.Height))
	l.right.Move(fyne.NewPos(size.Width-right, 0))
	l.right.Resize(fyne.NewSize(right, size.Height))
}

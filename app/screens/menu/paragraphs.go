package menu

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// paragraphs stacks texts that wrap: each is given its width before it is
// asked for its height, which the toolkit's own stack does the other way round.
type paragraphs struct {
	width  float32
	height float32
	grown  func() // hears that the whole became higher or lower
}

// MinSize is as high as the paragraphs were at the width they have.
func (p *paragraphs) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(0, p.stack(objects, p.width, false))
	for _, object := range objects {
		least.Width = max(least.Width, object.MinSize().Width)
	}
	return least
}

// Layout stacks the paragraphs at a width.
func (p *paragraphs) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	p.width = size.Width
	if height := p.stack(objects, size.Width, true); height != p.height {
		p.height = height
		if p.grown != nil {
			p.grown()
		}
	}
}

func (p *paragraphs) stack(objects []fyne.CanvasObject, width float32, place bool) float32 {
	y := float32(0)
	for _, object := range objects {
		if !object.Visible() {
			continue
		}
		if width > 0 && (place || object.Size().Width != width) {
			object.Resize(fyne.NewSize(width, object.MinSize().Height))
		}
		height := object.MinSize().Height
		if place {
			object.Move(fyne.NewPos(0, y))
			object.Resize(fyne.NewSize(width, height))
		}
		y += height + look.SpaceSmall
	}
	return y
}

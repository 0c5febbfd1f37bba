package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"sumpter/app/look"
)

// Beside puts details to the right of the work, parted by a divider. The work
// gets a share of the width, and all that is more than the details can use.
func Beside(work, details fyne.CanvasObject, share float64, widest float32) *fyne.Container {
	split := container.NewHSplit(work, container.New(readable{}, details))
	split.Offset = share
	return container.New(&beside{split: split, share: share, widest: widest, given: share}, split)
}

// leastDetails is how narrow details may get: words of a usual length fit.
const leastDetails float32 = 200

type readable struct{}

// MinSize is of the least width at least.
func (readable) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.NewSize(leastDetails, 0))
}

// Layout gives the object all there is.
func (readable) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

type beside struct {
	split  *container.Split
	share  float64
	widest float32 // of the details, before the reader's scale
	given  float64 // where the divider was put: elsewhere, the reader moved it
}

// MinSize is that of both sides.
func (b *beside) MinSize([]fyne.CanvasObject) fyne.Size { return b.split.MinSize() }

// Layout gives both sides their width, unless the reader has moved the divider.
func (b *beside) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	if b.split.Offset == b.given && size.Width > 0 {
		b.given = max(b.share, 1-float64(b.widest*look.Scale()/size.Width))
		b.split.Offset = b.given
	}
	b.split.Move(fyne.NewPos(0, 0))
	b.split.Resize(size)
}

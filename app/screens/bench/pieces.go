package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"sumpter/app/look"
)

// Inset lines texts up with the labels, tabs and tables below them.
func Inset(objects ...fyne.CanvasObject) fyne.CanvasObject {
	within := objects[0]
	if len(objects) > 1 {
		within = container.NewVBox(objects...)
	}
	return container.New(layout.NewCustomPaddedLayout(0, 0, 6, 0), within)
}

// SmallPrint is a paragraph in the size of notes.
func SmallPrint(text string) *look.Paragraph { return look.NewParagraph(text, look.Caption, look.Ink) }

// emptyWidth is how wide the words of an empty place run.
const emptyWidth float32 = 420

// Empty says in the middle of an empty place what comes there.
func Empty(text string) *fyne.Container {
	words := look.NewParagraph(text, look.Body, look.Quiet)
	words.Align = fyne.TextAlignCenter
	return container.NewCenter(Wide(emptyWidth, words))
}

// WrappedHeading is a heading of several words that may need a second line.
func WrappedHeading(text string) *look.Paragraph {
	words := look.NewParagraph(text, look.Body, look.Ink)
	words.Bold = true
	return words
}

// SetShown shows or hides.
func SetShown(object fyne.CanvasObject, shown bool) {
	if shown {
		object.Show()
	} else {
		object.Hide()
	}
}

// Wide gives an object a width; its height stays its own.
func Wide(width float32, object fyne.CanvasObject) *fyne.Container {
	return container.New(&wide{width}, object)
}

type wide struct{ width float32 }

// MinSize is of the width.
func (w *wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(w.width, objects[0].MinSize().Height)
}

// Layout gives the object all there is.
func (w *wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

// Tall gives objects all the width there is and one height, laid over each
// other: for tables, which are content with any size.
func Tall(height float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&tall{height}, objects...)
}

type tall struct{ height float32 }

// MinSize is narrow and of the height.
func (t *tall) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, t.height) }

// Layout lays the objects over each other.
func (t *tall) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, object := range objects {
		object.Move(fyne.NewPos(0, 0))
		object.Resize(size)
	}
}

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

// lineWidth is how wide words run in the middle of a place.
const lineWidth float32 = 420

// InMiddle has words stand in the middle of a place, in lines that are read
// well.
func InMiddle(words *look.Paragraph) *fyne.Container {
	words.Align = fyne.TextAlignCenter
	return container.NewCenter(container.New(&wide{lineWidth}, words))
}

// Empty says in the middle of an empty place what comes there.
func Empty(text string) *fyne.Container {
	return InMiddle(look.NewParagraph(text, look.Body, look.Quiet))
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

// Wide gives an object the width that it needs at the usual size of text; its
// height stays its own.
func Wide(width float32, object fyne.CanvasObject) *fyne.Container {
	return container.New(&wide{width * look.Scale()}, object)
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

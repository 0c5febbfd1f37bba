package trail

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// page is a column that is laid out once, when it is whole. The toolkit's own
// would measure all it holds whenever something is added.
type page struct{ *fyne.Container }

func newPage() page { return page{container.NewVBox()} }

// Add puts something at the end.
func (p page) Add(object fyne.CanvasObject) { p.Objects = append(p.Objects, object) }

// RemoveAll empties it.
func (p page) RemoveAll() { p.Objects = nil }

// layOut gives everything its place.
func (p page) layOut() { p.Layout.Layout(p.Objects, p.Size()) }

package bench

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestTallGivesAllTheWidthAndItsHeight(t *testing.T) {
	test.NewTempApp(t)
	inner, other := widget.NewLabel("a"), widget.NewLabel("b")
	window := test.NewTempWindow(t, container.NewVBox(Tall(150, inner, other)))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(400, 300))
	for _, object := range []fyne.CanvasObject{inner, other} {
		if size := object.Size(); size.Height != 150 || size.Width != 400 {
			t.Errorf("size is %v", size)
		}
	}
}

func TestInsetMovesAllItHoldsAlike(t *testing.T) {
	test.NewTempApp(t)
	a, b := widget.NewLabel("a"), widget.NewLabel("b")
	both := Inset(a, b)
	both.Resize(both.MinSize())
	one := widget.NewLabel("c")
	alone := Inset(one)
	alone.Resize(alone.MinSize())
	if one.Position().X != 6 || b.Position().Y <= a.Position().Y {
		t.Errorf("alone at %v, b at %v below a at %v", one.Position(), b.Position(), a.Position())
	}
}

func TestSetShown(t *testing.T) {
	test.NewTempApp(t)
	label := SmallPrint("x")
	SetShown(label, false)
	if label.Visible() {
		t.Error("hidden is seen")
	}
	SetShown(label, true)
	if !label.Visible() {
		t.Error("shown is not seen")
	}
}

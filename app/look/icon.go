package look

import (
	_ "embed"

	"fyne.io/fyne/v2"
)

//go:embed icon.png
var iconBytes []byte

// Icon is the program's icon: a bag with its tag on a string, drawn for this
// program (icon.svg is its source).
func Icon() fyne.Resource { return fyne.NewStaticResource("sumpter.png", iconBytes) }

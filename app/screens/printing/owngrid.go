package printing

import (
	"encoding/json"
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/exporter/print/labels"
	"sumpter/exporter/print/press"
)

// ownGrid is a label sheet whose sizes the reader types, in millimetres.
type ownGrid struct {
	fields  []*widget.Entry
	content *fyne.Container
}

// ownFields are the fields in their order, and what they are at first.
var ownFields = []struct{ key, usual string }{
	{"columns", "2"}, {"rows", "5"}, {"width", "99.1"}, {"height", "57"}, {"left", "4.7"}, {"top", "6"}, {"across", "2.5"}, {"down", "0"},
}

func newOwnGrid(wishes fyne.Preferences, changed func()) *ownGrid {
	g := &ownGrid{}
	kept := map[string]string{}
	_ = json.Unmarshal([]byte(wishes.String(prefOwn)), &kept) // nothing kept, or not by us: the usual sizes
	words := []string{
		lang.L("Labels across"), lang.L("Labels down"), lang.L("Width (mm)"), lang.L("Height (mm)"),
		lang.L("Left margin (mm)"), lang.L("Top margin (mm)"), lang.L("Gap across (mm)"), lang.L("Gap down (mm)"),
	}
	form := container.New(layout.NewFormLayout())
	for i, f := range ownFields {
		text, known := kept[f.key]
		if !known {
			text = written.Bare(f.usual)
		}
		g.fields = append(g.fields, field(text, func(string) {
			g.keep(wishes)
			changed()
		}))
		form.Objects = append(form.Objects, widget.NewLabel(words[i]), g.fields[i]) // laid out when it is seen
	}
	g.content = form
	g.content.Hide()
	return g
}

func (g *ownGrid) show(on bool) { bench.SetShown(g.content, on) }

func (g *ownGrid) keep(wishes fyne.Preferences) {
	kept := map[string]string{}
	for i, f := range ownFields {
		kept[f.key] = g.fields[i].Text
	}
	if text, err := json.Marshal(kept); err == nil {
		wishes.SetString(prefOwn, string(text))
	}
}

// length writes a length as the fields want it.
func (g *ownGrid) length(length press.Points) string {
	return written.Short(float64(int(float64(length/press.Millimetre)*10+0.5))/10) + " mm"
}

// grid reads the fields.
func (g *ownGrid) grid(paper press.Paper) (labels.Grid, error) {
	var read [8]float64
	for i, entry := range g.fields {
		value, err := typed.Number(entry.Text)
		if err != nil {
			return labels.Grid{}, errors.New(lang.L("own sizes") + ": " + written.Error(err))
		}
		read[i] = value
	}
	mm := func(i int) press.Points { return press.Points(read[i]) * press.Millimetre }
	return labels.Grid{
		Paper: paper, Columns: int(read[0]), Rows: int(read[1]), Width: mm(2), Height: mm(3), Left: mm(4), Top: mm(5), AcrossGap: mm(6), DownGap: mm(7),
	}, nil
}

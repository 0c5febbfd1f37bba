package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// A row has the height of its words, at every size of text: no gap, none cut.
func TestRowsOfFindingsAreAsHighAsTheirWords(t *testing.T) {
	on := demo.Trip()
	made, err := plan.Make(t.Context(), &on, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	list := append([]findings.Finding{{What: prose.Say("Short."), Remedy: prose.Verbatim(strings.Repeat("A longer remedy of many words. ", 12))}}, made.Findings...)
	app := test.NewTempApp(t)
	for _, scale := range []float32{0.75, 1, 1.5, 2} {
		app.Settings().SetTheme(look.Theme{Variant: look.Light, Scale: scale})
		row := newFindingRow()
		row.word.SetContent("look at")
		for _, finding := range list {
			row.what.SetContent(written.Text(finding.What, units.Metric))
			row.remedy.SetContent(written.Text(finding.Remedy, units.Metric))
			row.Resize(fyne.NewSize(findingsWidth, 100))
			row.Resize(fyne.NewSize(findingsWidth, row.MinSize().Height))
			want, have := row.MinSize().Height, heightOf(finding, units.Metric, findingsWidth)
			if have < want-1 || have > want+1 {
				t.Errorf("scale %v: %q is %v high, reckoned %v", scale, row.what.Content, want, have)
			}
		}
	}
}

package workbook

import (
	"sumpter/domain/plan"
	"sumpter/exporter/cautions"
)

// cautionsSheet is for everybody who packs, cooks or carries.
func cautionsSheet(*plan.Plan) *sheet {
	s := &sheet{name: "Cautions", widths: []float64{26, 84}}
	s.addWide("Cautions", titleLook)
	s.addWide(cautions.Preface().String(), aboutLook)
	for _, topic := range cautions.Topics() {
		s.gap()
		s.addWide(topic.Title.String(), sectionLook)
		for _, rule := range topic.Rules {
			s.add(cell{value: rule.Short.String(), look: strongLook}, cell{value: rule.Text.String(), look: plainLook})
		}
	}
	return s
}

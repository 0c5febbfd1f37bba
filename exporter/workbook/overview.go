package workbook

import (
	"fmt"

	"sumpter/domain/plan"
	"sumpter/exporter/summary"
	"sumpter/exporter/tables"
)

// mostTopFindings is how many findings the first page shows; all stand on
// their own sheet.
const mostTopFindings = 8

// overview is the first page: the figures that matter, the worst findings,
// whose allergies, and where everything is.
func overview(p *plan.Plan, t *tables.Tables, list []*sheet) *sheet {
	s := &sheet{name: overviewSheet, widths: []float64{26, 42, 42}}
	title := "A trip without a name"
	if p.Trip != nil && p.Trip.Title != "" {
		title = p.Trip.Title
	}
	s.addWide(title, titleLook)
	s.addWide(summary.When(p), aboutLook)
	s.gap()
	s.addWide("The figures", sectionLook)
	for _, line := range summary.Lines(p) {
		s.add(cell{value: line.What, look: strongLook}, cell{value: line.Value, look: plainLook}, cell{value: line.More, look: moreLook})
	}
	s.gap()
	s.addTopFindings(t)
	s.gap()
	s.addAllergies(t)
	s.gap()
	s.addContents(list)
	return s
}

func (s *sheet) addTopFindings(t *tables.Tables) {
	s.addWide("What to look at first", sectionLook)
	if len(t.Findings.Rows) == 0 {
		s.addWide(t.Findings.Empty, plainLook)
		return
	}
	s.addWide("All findings, with the reason for each, are on the sheet "+findingsSheet+".", aboutLook)
	at := t.Findings.Column
	for i, values := range t.Findings.Rows {
		if i == mostTopFindings {
			break
		}
		severity := values[at("severity")].Text
		s.add(
			cell{value: severity, look: look{bold: true, colour: severityColour(severity), wrap: true, frame: underline}},
			cell{value: values[at("what")].Text, look: look{colour: ink, wrap: true, frame: underline, align: "left", indent: true}},
			cell{value: values[at("remedy")].Text, look: look{colour: ink, wrap: true, frame: underline, align: "left", indent: true}},
		)
	}
}

func (s *sheet) addAllergies(t *tables.Tables) {
	s.addWide("Allergies and emergency medicine", sectionLook)
	at, none := t.Crew.Column, true
	for _, values := range t.Crew.Rows {
		allergies := values[at("allergies")].Text
		if allergies == "none named" {
			continue
		}
		none = false
		s.add(
			cell{value: values[at("member")].Text, look: strongLook},
			cell{value: allergies, look: look{bold: true, colour: plum, wrap: true, frame: double, align: "left", indent: true}},
			cell{value: "medicine: " + values[at("medicine")].Text, look: plainLook},
		)
	}
	if none {
		s.addWide("Nobody named an allergy. Ask everybody again before you buy.", plainLook)
	}
}

// addContents lists the sheets with what they are for, to jump to.
func (s *sheet) addContents(list []*sheet) {
	s.addWide("What is in this workbook", sectionLook)
	for _, other := range list {
		about := ""
		if len(other.rows) > 1 && len(other.rows[1].cells) > 0 {
			about, _ = other.rows[1].cells[0].value.(string)
		}
		number := s.add(cell{value: other.name, look: linkLook}, cell{value: about, look: aboutLook, span: 2})
		s.links = append(s.links, link{at: fmt.Sprintf("A%d", number), to: quoted(other.name) + "!A1"})
	}
}

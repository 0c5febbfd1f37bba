package tables

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/findings"
)

// findingRow is a finding with its place in the list.
type findingRow struct {
	number  int
	finding findings.Finding
}

func findingsTable(x *index) Table {
	sorted := slices.Clone(x.plan.Findings)
	findings.Sort(sorted)
	rows := make([]findingRow, len(sorted))
	for i, finding := range sorted {
		rows[i] = findingRow{i + 1, finding}
	}
	return groupBy(fill(Table{
		Name: "findings", Title: "Findings",
		About: "What the leader must know, worst first. Must fix can hurt somebody or break the trip.",
		Empty: "Nothing was found. That is no proof that nothing is wrong: look at the menu and the labels yourself.",
	}, []field[findingRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(findingRow) Value { return open() }},
		{Column{Key: "number", Heading: "No.", Width: 5}, func(r findingRow) Value { return count(r.number) }},
		{Column{Key: "severity", Heading: "How bad", Role: Severity, Width: 11}, func(r findingRow) Value { return words(severityWords(r.finding.Severity)) }},
		{Column{Key: "where", Heading: "Where", Width: 18, Wrap: true}, func(r findingRow) Value { return words(x.place(r.finding)) }},
		{Column{Key: "what", Heading: "What", Width: 36, Wrap: true}, func(r findingRow) Value { return words(x.text(r.finding.What)) }},
		{Column{Key: "remedy", Heading: "What to do", Width: 36, Wrap: true}, func(r findingRow) Value { return words(orNone(x.text(r.finding.Remedy), "nothing needs doing")) }},
		{Column{Key: "why", Heading: "Why", Width: 30, Wrap: true}, func(r findingRow) Value { return words(orNone(x.text(r.finding.Why), "no reason given")) }},
		{Column{Key: "stage", Heading: "From", Width: 10}, func(r findingRow) Value { return words(string(r.finding.Stage)) }},
	}, rows), rows, func(r findingRow) findings.Severity { return r.finding.Severity })
}

// severityWords gives the sign and the word of a severity, so that it is seen
// without colour.
func severityWords(severity findings.Severity) string {
	switch severity {
	case findings.MustFix:
		return "▲ must fix"
	case findings.LookAt:
		return "◇ look at"
	default:
		return "· note"
	}
}

// place says where a finding belongs, as far as it is told.
func (x *index) place(f findings.Finding) string {
	var parts []string
	at := f.Place
	if at.Day > 0 {
		parts = append(parts, fmt.Sprintf("day %d", at.Day))
	}
	if at.Meal != "" {
		parts = append(parts, mealName(at.Meal))
	}
	if at.Group != 0 {
		parts = append(parts, x.group(at.Group))
	}
	if at.Member != 0 {
		parts = append(parts, x.member(at.Member))
	}
	if at.Food != 0 {
		parts = append(parts, x.foodName(at.Food))
	}
	if at.Recipe != 0 {
		parts = append(parts, x.recipe(at.Recipe))
	}
	if at.Gear != 0 {
		if gear := x.Gear(fmt.Sprint(at.Gear)); gear != nil {
			parts = append(parts, gear.Name)
		}
	}
	if at.Point != 0 {
		parts = append(parts, x.point(at.Point))
	}
	if at.Bag != "" {
		parts = append(parts, "bag "+x.bag(at.Bag).Code)
	}
	return orNone(strings.Join(parts, ", "), "the whole trip")
}

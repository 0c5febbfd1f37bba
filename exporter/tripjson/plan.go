package tripjson

import (
	"io"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// planDocument is the outermost object of a plan: which trip it belongs to,
// what its IDs are called, and the plan's own fields.
type planDocument struct {
	FormatVersion int        `json:"format_version"` // 1
	Title         string     `json:"title"`
	Start         units.Date `json:"start"` // the date of day 1
	Currency      string     `json:"currency"`
	Names         planNames  `json:"names"`
	plan.Plan
}

// planNames says what the IDs in the plan stand for, in the order of the IDs.
type planNames struct {
	Groups  []planName `json:"groups"`
	Crew    []planName `json:"crew"`
	Foods   []planName `json:"foods"`
	Recipes []planName `json:"recipes"`
	Gear    []planName `json:"gear"`
	Points  []planName `json:"points"`
}

type planName struct {
	ID   int64  `json:"id"`
	Name string `json:"name"`
}

// WritePlan writes the whole plan, indented: needs, menu, portions, bags,
// loads and their bounds, boxes, purchases, packing night and findings, whose
// sentences are in English and in the units of the trip. It fails as Write does.
func WritePlan(w io.Writer, p *plan.Plan) error {
	doc := planDocument{FormatVersion: Version, Plan: *p}
	var reader prose.Reader
	if t := p.Trip; t != nil {
		doc.Title, doc.Start, doc.Currency, doc.Names = t.Title, t.Start, t.Currency, namesOf(t)
		reader.Units = t.Units
	}
	return write(w, &doc, reader)
}

func namesOf(t *trip.Trip) planNames {
	return planNames{
		Groups:  named(t.Groups, func(g *trip.CookGroup) (int64, string) { return int64(g.ID), g.Name }),
		Crew:    named(t.Crew, func(m *trip.Member) (int64, string) { return int64(m.ID), m.Name }),
		Foods:   named(t.Foods, func(f *trip.Food) (int64, string) { return int64(f.ID), f.Name }),
		Recipes: named(t.Recipes, func(r *trip.Recipe) (int64, string) { return int64(r.ID), r.Name }),
		Gear:    named(t.Gear, func(g *trip.Gear) (int64, string) { return int64(g.ID), g.Name }),
		Points:  named(t.Points, func(p *trip.ResupplyPoint) (int64, string) { return int64(p.ID), p.Name }),
	}
}

func named[T any](list []T, name func(*T) (int64, string)) []planName {
	names := make([]planName, 0, len(list))
	for i := range list {
		id, text := name(&list[i])
		names = append(names, planName{ID: id, Name: text})
	}
	return names
}

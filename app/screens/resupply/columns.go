package resupply

import (
	"cmp"

	"sumpter/app/grid"
	"sumpter/domain/trip"
)

// field is one thing the table holds of a point.
type field struct {
	title, unit string
	width       float32
	number      func(p *trip.ResupplyPoint) float64 // what it sorts by; nil: a text
	text        func(p *trip.ResupplyPoint) string
	set         func(p *trip.ResupplyPoint, text string) error
	choices     []string
}

// known are the fields in the units and the currency of now, which every cell
// asks for.
func (s *Screen) known() []field {
	if t := s.bench.Trip(); s.made == nil || s.units != t.Units || s.currency != t.Currency {
		s.made, s.units, s.currency = s.fields(), t.Units, t.Currency
	}
	return s.made
}

// columns turns the fields into columns of the table.
func (s *Screen) columns() []grid.Column[trip.PointID] {
	var columns []grid.Column[trip.PointID]
	for i, f := range s.fields() {
		column := grid.Column[trip.PointID]{
			Title: f.title, Unit: f.unit, Width: f.width, Right: f.number != nil,
			Text: func(id trip.PointID) string {
				if p := s.bench.Trip().Point(id); p != nil {
					return s.known()[i].text(p)
				}
				return ""
			},
			Set: func(id trip.PointID, text string) error {
				return s.change(id, f.title, func(p *trip.ResupplyPoint) error { return s.known()[i].set(p, text) })
			},
		}
		if f.number != nil {
			column.Compare = func(a, b trip.PointID) int {
				left, right := s.bench.Trip().Point(a), s.bench.Trip().Point(b)
				if left == nil || right == nil {
					return 0
				}
				return cmp.Compare(f.number(left), f.number(right))
			}
		}
		if f.choices != nil {
			column.Choices = func(trip.PointID) []string { return f.choices }
		}
		columns = append(columns, column)
	}
	return columns
}

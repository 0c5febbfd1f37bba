package gpx

import (
	"sort"

	"sumpter/domain/units"
)

// Day is a part of the way walked in one day.
type Day struct {
	Name         string       // of the track, where the day is one
	Distance     units.Metres //
	Ascent       units.Metres // ascent to camp height mean nothing where no heights are known
	Descent      units.Metres
	SteepDescent units.Metres // the part of Descent on slopes above 12 degrees
	LunchHeight  units.Metres // halfway by moving time
	CampHeight   units.Metres // at the end
	Hours        units.Hours  // by Naismith, without stops
}

// Split cuts the way into days of equal moving time by Naismith. There is at
// least one day.
func (m *Measured) Split(days int) []Day {
	days = max(1, days)
	total := m.hours[len(m.hours)-1]
	list := make([]Day, days)
	from := place(0)
	for i := range list {
		to := place(len(m.hours) - 1)
		if i < days-1 {
			to = max(from, m.whereAt(total*float64(i+1)/float64(days)))
		}
		list[i] = m.day(from, to)
		from = to
	}
	return list
}

// Parts gives a day for each track or route; where there is only one, for
// each of its segments.
func (m *Measured) Parts() []Day {
	var list []Day
	from := place(0)
	for line := range m.starts {
		if m.trackChange && line+1 < len(m.starts) && m.tracks[line+1] == m.tracks[line] {
			continue
		}
		to := place(m.lastOf(line))
		day := m.day(from, to)
		if m.trackChange {
			day.Name = m.names[line]
		}
		list = append(list, day)
		from = to
	}
	return list
}

// Tracks tells whether the parts are tracks or routes of their own, which
// people save one a day; segments often are gaps in the reception.
func (m *Measured) Tracks() bool { return m.trackChange }

// whereAt gives the place at which so many hours are walked.
func (m *Measured) whereAt(hours float64) place {
	i := sort.SearchFloat64s(m.hours, hours)
	switch {
	case i == 0:
		return 0
	case i == len(m.hours):
		return place(i - 1)
	default:
		return place(i-1) + place((hours-m.hours[i-1])/(m.hours[i]-m.hours[i-1]))
	}
}

func (m *Measured) day(from, to place) Day {
	part := func(sums []float64) units.Metres { return units.Metres(m.at(sums, to) - m.at(sums, from)) }
	begins, ends := m.at(m.hours, from), m.at(m.hours, to)
	day := Day{
		Distance: part(m.distance), Ascent: part(m.up), Descent: part(m.down), SteepDescent: part(m.steep),
		LunchHeight: units.Metres(m.at(m.height, m.whereAt((begins+ends)/2))), CampHeight: units.Metres(m.at(m.height, to)),
		Hours: units.Hours(ends - begins),
	}
	day.SteepDescent = min(day.SteepDescent, day.Descent)
	return day
}

package trip

import "slices"

// Leg is the days between two points where food can be taken on.
type Leg struct {
	FirstDay int     `json:"first_day"`
	LastDay  int     `json:"last_day"`
	From     PointID `json:"from"` // where its food comes from; 0: the start
}

// Legs cuts the days at the resupply points the leader uses. Two points on
// one evening make one boundary, the one with the lower ID.
func (t *Trip) Legs() []Leg {
	points := slices.Clone(t.Points)
	slices.SortFunc(points, func(a, b ResupplyPoint) int {
		if a.AfterDay != b.AfterDay {
			return a.AfterDay - b.AfterDay
		}
		return int(a.ID - b.ID)
	})
	legs := []Leg{{FirstDay: 1, LastDay: len(t.Days)}}
	for _, point := range points {
		last := &legs[len(legs)-1]
		if !point.Use || point.AfterDay < last.FirstDay || point.AfterDay >= len(t.Days) {
			continue
		}
		last.LastDay = point.AfterDay
		legs = append(legs, Leg{FirstDay: point.AfterDay + 1, LastDay: len(t.Days), From: point.ID})
	}
	return legs
}

// LegOf gives the place of the leg a day belongs to.
func LegOf(legs []Leg, day int) int {
	for i, leg := range legs {
		if day <= leg.LastDay {
			return i
		}
	}
	return len(legs) - 1
}

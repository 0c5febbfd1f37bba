package carry

import "sumpter/domain/trip"

// run is the days of one stage.
type run struct {
	leg             int
	first, last     int
	present         []int // places in the crew
	lastOfLeg       bool
	wasteLeftBehind bool // rubbish can be left where the stage ends
}

// cutStages cuts the legs where somebody joins or leaves, and on mornings of
// decision: within a stage the same people are there, and every item keeps its
// carrier.
func cutStages(t *trip.Trip, legs []trip.Leg, decided []Decided) []run {
	var runs []run
	for i, leg := range legs {
		for first := leg.FirstDay; first <= leg.LastDay; {
			last := first
			for last < leg.LastDay && samePeople(t, first, last+1) && decidedOn(decided, last+1) == nil {
				last++
			}
			runs = append(runs, run{leg: i, first: first, last: last, present: present(t, first), lastOfLeg: last == leg.LastDay})
			first = last + 1
		}
		if i+1 < len(legs) {
			if point := t.Point(legs[i+1].From); point != nil && len(runs) > 0 {
				runs[len(runs)-1].wasteLeftBehind = point.TakesWaste
			}
		}
	}
	return runs
}

// decidedOn finds what is decided on a morning, or nil.
func decidedOn(list []Decided, day int) *Decided {
	for i := range list {
		if list[i].Day == day {
			return &list[i]
		}
	}
	return nil
}

func samePeople(t *trip.Trip, a, b int) bool {
	for i := range t.Crew {
		if t.Crew[i].Present(a) != t.Crew[i].Present(b) {
			return false
		}
	}
	return true
}

func present(t *trip.Trip, day int) []int {
	var places []int
	for i := range t.Crew {
		if t.Crew[i].Present(day) {
			places = append(places, i)
		}
	}
	return places
}

package carry

// run is the days of one stage.
type run struct {
	leg             int
	first, last     int
	present         []int // places in the crew
	firstOfLeg      bool
	lastOfLeg       bool
	wasteLeftBehind bool // rubbish can be left where the stage ends
}

// cutStages cuts the legs where somebody joins or leaves, and on mornings of
// decision: within a stage the same people are there, and every item keeps its
// carrier.
func cutStages(w Work) []run {
	var runs []run
	for i, leg := range w.Legs {
		for first := leg.FirstDay; first <= leg.LastDay; {
			last := first
			for last < leg.LastDay && w.samePeople(first, last+1) && decidedOn(w.Decided, last+1) == nil {
				last++
			}
			runs = append(runs, run{leg: i, first: first, last: last, present: w.present(first), firstOfLeg: first == leg.FirstDay, lastOfLeg: last == leg.LastDay})
			first = last + 1
		}
		if i+1 < len(w.Legs) {
			if point := w.Trip.Point(w.Legs[i+1].From); point != nil && len(runs) > 0 {
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

// there tells whether the member at a place in the crew is with the group on a
// day. On the way somebody may be gone for some days and come back.
func (w *Work) there(place, day int) bool { return w.Needs.There(w.Trip, place, day) }

func (w *Work) samePeople(a, b int) bool {
	for i := range w.Trip.Crew {
		if w.there(i, a) != w.there(i, b) {
			return false
		}
	}
	return true
}

func (w *Work) present(day int) []int {
	var places []int
	for i := range w.Trip.Crew {
		if w.there(i, day) {
			places = append(places, i)
		}
	}
	return places
}

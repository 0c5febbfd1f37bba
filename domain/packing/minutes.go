package packing

import (
	"slices"

	"sumpter/domain/units"
)

// Seconds a practised helper takes. Common practice, no source.
const (
	weighSeconds  = 25  // one dry food into one bag
	countSeconds  = 15  // one food of pieces into one bag
	wetSeconds    = 45  // one oil or spread into one bottle
	changeSeconds = 60  // fetching, opening and closing one food
	labelSeconds  = 20  // closing and labelling one bag
	checkSeconds  = 15  // weighing and ticking off one bag
	cleanSeconds  = 600 // washing hands, tools and table, all together
)

func (s Station) seconds() int {
	switch s {
	case CountOut:
		return countSeconds
	case Wet:
		return wetSeconds
	default:
		return weighSeconds
	}
}

// minutes of one round. A food is one helper's work, the longest given out
// first to whoever is free soonest (Graham 1969, from memory); labels and
// checks fill the gaps.
func (n *night) minutes(r round, bulk []Bulk) units.Minutes {
	work := make([]int, 0, len(bulk))
	for _, b := range bulk {
		work = append(work, changeSeconds+len(b.Into)*n.station(b.Food).seconds())
	}
	slices.Sort(work)
	slices.Reverse(work)
	busy := make([]int, max(1, min(n.trip.Settings.Helpers, 1000)))
	total := len(r.bags) * (labelSeconds + checkSeconds)
	for _, seconds := range work {
		total += seconds
		least := 0
		for i := range busy {
			if busy[i] < busy[least] {
				least = i
			}
		}
		busy[least] += seconds
	}
	took := max(slices.Max(busy), (total-1)/len(busy)+1)
	if r.clean {
		took += cleanSeconds
	}
	return units.Minutes(float64(took) / 60)
}

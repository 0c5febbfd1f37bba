package carry

import (
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
)

// choices reads the splits between nothing that changes hands and the fairest.
func (c *calculation) choices(r run, pieces []piece, solved fairsplit.Result) []Choice {
	var list []Choice
	for _, found := range solved.Choices {
		choice := Choice{
			HandOvers: found.Changes, Worst: share(found.R1), Mean: share(found.S),
			Carriers: make(map[Thing]trip.MemberID, len(pieces)), Taken: found.Changes == solved.Changes,
		}
		for i, seat := range found.Carrier {
			if seat != fairsplit.Nobody {
				choice.Carriers[Thing{pieces[i].kind, pieces[i].key}] = c.Trip.Crew[r.present[seat]].ID
			}
		}
		list = append(list, choice)
	}
	return list
}

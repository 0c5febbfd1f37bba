package plan

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Summary is the plan in the few figures a leader watches while editing.
type Summary struct {
	PersonDays       int        `json:"person_days"`
	FoodPerPersonDay units.Mass `json:"food_per_person_day_g"` // as carried, wrappings not counted
	Food             units.Mass `json:"food_g"`
	Reserve          units.Mass `json:"reserve_g"` // emergency reserve on top of all meals, not in Food

	LeastFed      trip.MemberID `json:"least_fed"`       // whose worst day is worst; 0 if no day has food from the packs
	LeastFedDay   int           `json:"least_fed_day"`   //
	LeastFedShare float64       `json:"least_fed_share"` // eaten by target of that day

	Heaviest      trip.MemberID `json:"heaviest"` // who has the largest share on any day
	HeaviestDay   int           `json:"heaviest_day"`
	HeaviestShare float64       `json:"heaviest_share"` // load by capability
	HeaviestLoad  units.Mass    `json:"heaviest_load_g"`

	Fuel         units.Mass  `json:"fuel_g"` // reserve included
	Cost         units.Money `json:"cost"`   // food, fuel and fees whose price is known
	CostComplete bool        `json:"cost_complete"`

	MustFix int `json:"must_fix"`
	LookAt  int `json:"look_at"`
	Notes   int `json:"notes"`
}

// Summary gives the figures a leader watches.
func (p *Plan) Summary() Summary {
	s := Summary{
		MustFix: findings.Count(p.Findings, findings.MustFix),
		LookAt:  findings.Count(p.Findings, findings.LookAt),
		Notes:   findings.Count(p.Findings, findings.Note),
	}
	if p.Refused() {
		return s
	}
	s.addFood(p)
	s.addLoads(p)
	for _, fuel := range p.Cooking.Fuel {
		s.Fuel += fuel.Needed
	}
	s.Cost, s.CostComplete = p.Shopping.Cost+p.Shopping.Fees, p.Shopping.Unpriced == 0
	return s
}

func (s *Summary) addFood(p *Plan) {
	served := servedDays(p)
	for i, intake := range p.Portions.Intakes {
		for d, day := range intake.Days {
			need := p.Needs.Members[i].Days[d]
			if !need.Present {
				continue
			}
			s.PersonDays++
			s.Food += day.Food
			if need.TargetKcal <= 0 || !served[d] {
				continue
			}
			share := float64(day.Kcal / need.TargetKcal)
			if s.LeastFed == 0 || share < s.LeastFedShare {
				s.LeastFed, s.LeastFedDay, s.LeastFedShare = intake.Member, d+1, share
			}
		}
	}
	for i := range p.Portions.Batches {
		for _, more := range p.Portions.Batches[i].Seconds {
			s.Food += more.Mass
		}
	}
	for i := range p.Portions.Reserve {
		s.Reserve += p.Portions.Reserve[i].Mass()
	}
	if s.PersonDays > 0 {
		s.FoodPerPersonDay = s.Food / units.Mass(s.PersonDays)
	}
}

// servedDays tells on which days anybody is served food from the packs. A day
// without says nothing about who is fed least: it is not planned yet.
func servedDays(p *Plan) []bool {
	served := make([]bool, len(p.Trip.Days))
	for _, intake := range p.Portions.Intakes {
		for d, day := range intake.Days {
			served[d] = served[d] || day.Kcal > 0
		}
	}
	return served
}

func (s *Summary) addLoads(p *Plan) {
	for _, member := range p.Carry.Members {
		for d, day := range member.Days {
			if day.Present && day.Share > s.HeaviestShare {
				s.Heaviest, s.HeaviestDay = member.Member, d+1
				s.HeaviestShare, s.HeaviestLoad = day.Share, day.Load
			}
		}
	}
}

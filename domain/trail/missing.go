package trail

import (
	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Shortage is what it means on the evening of a day that a box does not come.
type Shortage struct {
	Point trip.PointID
	// The box: what is missing.
	Bags int
	Food units.Mass
	// The packs: what is left for the days after this evening, beside the box.
	LeftBags int
	LeftFood units.Mass
	LeftKcal units.Kcal
	Lasts    float64 // days of need of those who are there; 0 where no need is known
	// The way back to where the food came from, at the same pace.
	BackDays   int
	TurnBackBy int // last evening from which the planned food reaches back; 0: none
}

// ReachesBack tells whether what is left feeds the way back in full.
func (s Shortage) ReachesBack() bool { return s.LeftBags > 0 && s.Lasts >= float64(s.BackDays) }

// Finding says on the evening of a day what the shortage means, and what to do.
func (s Shortage) Finding(day int) findings.Finding {
	f := findings.Finding{
		Severity: findings.MustFix, Stage: findings.Resupply, Code: "box-missing", Place: findings.Place{Day: day, Point: s.Point},
		What: prose.Plural(s.Bags, prose.Say("One bag with %s of food is missing.", s.Food), prose.Say("%d bags with %s of food are missing.", s.Bags, s.Food)).
			Then(prose.Plural(s.LeftBags, prose.Say("After the evening of day %d the packs hold one bag, %s: %.1f days of what the group burns.", day, s.LeftFood, s.Lasts),
				prose.Say("After the evening of day %d the packs hold %d bags, %s: %.1f days of what the group burns.", day, s.LeftBags, s.LeftFood, s.Lasts))),
		Why: prose.Say("Food left against days back to where it came from, at the same pace (common practice, no source)."),
	}
	back := prose.Plural(s.BackDays, prose.Say("The way back takes a day"), prose.Say("The way back takes %d days", s.BackDays))
	switch {
	case s.ReachesBack():
		f.Severity = findings.LookAt
		f.Remedy = prose.Say("%s to where it came from; what is left reaches for that. Turn back by the evening of day %d, or go on only if food can be bought near the point.", back, s.TurnBackBy)
	case s.TurnBackBy > 0 && day > s.TurnBackBy:
		f.Remedy = prose.Say("%s, and the evening to turn back, day %d, is past: find food near the point, take the shortest safe way out, and call for help while you still have some.", back, s.TurnBackBy)
	default:
		f.Remedy = prose.Say("%s: eat less and share it out, find food near the point, or take the shortest safe way out.", back)
	}
	return f
}

// Ahead lists the boxes that are still to be picked up after the morning of a
// day, the one taken on that very morning among them.
func Ahead(p *plan.Plan, day int) []resupply.Box {
	var list []resupply.Box
	for _, box := range p.Resupply.Boxes {
		if box.Leg > 0 && box.Leg < len(p.Legs) && p.Legs[box.Leg].FirstDay >= day {
			list = append(list, box)
		}
	}
	return list
}

// IfMissing reckons on the evening of a day that a box does not come. A bag
// of an earlier day counts as eaten if nothing was noted of it, and one of a
// later day is left unless its end was noted: nothing is counted twice as food.
func IfMissing(p *plan.Plan, done *trip.Progress, box resupply.Box, day int) Shortage {
	s := Shortage{Point: box.Point, Bags: len(box.Bags), TurnBackBy: box.TurnBackBy}
	missing := make(map[string]bool, len(box.Bags))
	for _, key := range box.Bags {
		missing[key] = true
	}
	ended := make(map[string]bool, len(done.Ends))
	for _, end := range done.Ends {
		ended[end.Bag] = true
	}
	for i := range p.Bags.Bags {
		bag := &p.Bags.Bags[i]
		switch {
		case missing[bag.Key]:
			s.Food += bag.Food
		case bag.Leg < box.Leg && bag.LastDay > day && !ended[bag.Key]:
			s.LeftBags++
			s.LeftFood += bag.Left(day + 1)
			if bag.Kind == bags.ReserveBag {
				s.LeftKcal += bag.Kcal // what it is for
			}
			for i := range bag.Uses {
				if bag.Uses[i].Day > day {
					s.LeftKcal += bag.Uses[i].Kcal
				}
			}
		}
	}
	if need := crewNeed(p, min(day+1, len(p.Trip.Days))); need > 0 {
		s.Lasts = float64(s.LeftKcal / need)
	}
	if box.Leg > 0 && box.Leg < len(p.Legs) {
		s.BackDays = max(0, min(day, p.Legs[box.Leg-1].LastDay)-p.Legs[box.Leg-1].FirstDay+1)
	}
	return s
}

// Eater is somebody who would have to live on what is left.
type Eater struct {
	Member trip.MemberID
	Lasts  float64 // days of their need that their own dishes and reserve last; 0 where no need is known
}

// Eaters lists, in the order of the crew, those who are there on the day after
// an evening, and for how long their own dishes feed each if the box does not
// come. Who has a diet or an allergy cannot count on the dishes of others.
func Eaters(p *plan.Plan, box resupply.Box, day int) []Eater {
	if box.Leg < 1 || box.Leg >= len(p.Legs) {
		return nil
	}
	next, last := min(day+1, len(p.Trip.Days)), p.Legs[box.Leg-1].LastDay
	var list []Eater
	for i := range p.Needs.Members {
		member := &p.Needs.Members[i]
		if next < 1 || next > len(member.Days) || !member.Days[next-1].Present {
			continue
		}
		e := Eater{Member: member.Member}
		if need := member.Days[next-1].Kcal; need > 0 {
			e.Lasts = float64(ownLeft(p, e.Member, day, last) / need)
		}
		list = append(list, e)
	}
	return list
}

// ownLeft is what a member is to eat after one evening until another, with
// the reserve packed on top.
func ownLeft(p *plan.Plan, id trip.MemberID, from, to int) units.Kcal {
	sum := units.Kcal(0)
	for i := range p.Portions.Intakes {
		if intake := &p.Portions.Intakes[i]; intake.Member == id {
			for day := from; day < min(to, len(intake.Days)); day++ {
				sum += intake.Days[day].Kcal
			}
		}
	}
	for i := range p.Portions.Reserve {
		if r := &p.Portions.Reserve[i]; r.Member == id && r.FirstDay <= to && r.LastDay > from {
			sum += r.PackedKcal
		}
	}
	return sum
}

// crewNeed is what those present on a day burn together: the way back is
// walked with nothing bought.
func crewNeed(p *plan.Plan, day int) units.Kcal {
	sum := units.Kcal(0)
	for _, member := range p.Needs.Members {
		if day >= 1 && day <= len(member.Days) && member.Days[day-1].Present {
			sum += member.Days[day-1].Kcal
		}
	}
	return sum
}

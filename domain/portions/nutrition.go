package portions

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
)

// nutrient is a range that the days of a trip are held against together: one day more or less does not matter, so that the mean over a
// member's days counts.
type nutrient struct {
	code          string
	of            func(*DayIntake) (amount float64, unknown int)
	target        func(*sizer, int, int) float64 // of a member and day
	most          bool                           // the target is the most there should be
	what          func(names prose.Text, got, target float64) prose.Text
	why, whatToDo prose.Text
}

// rangeSlack is the share by which a mean may miss its range before it is told: the ranges are for weeks, not for days (design choice).
const rangeSlack = 0.1

func nutrients() []nutrient {
	fat := func(d *DayIntake) (float64, int) { return d.FatGrams, d.UnknownFat }
	return []nutrient{
		{
			code: "fibre-low", of: func(d *DayIntake) (float64, int) { return d.FibreGrams, d.UnknownFibre },
			target: func(s *sizer, i, d int) float64 { return s.needOf(i, d).FibreGrams },
			what: func(names prose.Text, got, target float64) prose.Text {
				return prose.Say("Little fibre for %s: %.0f of %.0f g a day where it is least.", names, got, target)
			},
			why:      prose.Say("Adequate intake of the Institute of Medicine, 2005 (from memory), as a mean over the trip."),
			whatToDo: prose.Say("Choose dishes with oats, pulses, seeds or dried fruit, and drink enough with them."),
		},
		{
			code: "salt-low", of: func(d *DayIntake) (float64, int) { return d.SodiumMilligrams, d.UnknownSodium },
			target: func(s *sizer, i, d int) float64 { return s.needOf(i, d).SodiumLowMilligrams },
			what: func(names prose.Text, got, target float64) prose.Text {
				return prose.Say("Little salt for %s: %.0f of %.0f mg sodium a day where it is least.", names, got, target)
			},
			why:      prose.Say("1,500 mg a day and 460 mg for each litre of sweat: National Academies 2019, ACSM 2007 (both from memory), as a mean over the trip."),
			whatToDo: prose.Say("Carry salt or salty snacks, most of all for hot days. Whoever must eat little salt follows their doctor."),
		},
		{
			code: "fat-low", of: fat,
			target: func(s *sizer, i, d int) float64 { return s.needOf(i, d).FatLowGrams },
			what: func(names prose.Text, got, target float64) prose.Text {
				return prose.Say("Little fat for %s: %.0f of %.0f g a day where it is least.", names, got, target)
			},
			why:      prose.Say("Acceptable range of the Institute of Medicine, 2005 (from memory), as a mean over the trip."),
			whatToDo: prose.Say("Add oil, nuts or nut butter: nothing weighs less for its energy."),
		},
		{
			code: "fat-high", of: fat, most: true,
			target: func(s *sizer, i, d int) float64 { return s.needOf(i, d).FatHighGrams },
			what: func(names prose.Text, got, target float64) prose.Text {
				return prose.Say("Much fat for %s: %.0f g a day where %.0f g are the most, where it is most.", names, got, target)
			},
			why:      prose.Say("Acceptable range of the Institute of Medicine, 2005 (from memory), as a mean over the trip. Light food is rich in fat; for a trip that is a choice, not a danger."),
			whatToDo: prose.Say("Leave it if you carry far, or choose dishes with more grain, fruit or pulses."),
		},
	}
}

// lookAtNutrients notes the ranges that members miss over the trip, one finding for each.
func (s *sizer) lookAtNutrients(r *Result) []findings.Finding {
	var list []findings.Finding
	for _, n := range nutrients() {
		var missed []string
		var worst mean
		first := findings.Place{}
		for i := range r.Intakes {
			m := s.meanOf(&n, i, &r.Intakes[i])
			if !m.misses(n.most) {
				continue
			}
			if len(missed) == 0 {
				first.Member = s.trip.Crew[i].ID
			}
			if len(missed) == 0 || m.by(n.most) > worst.by(n.most) {
				worst = m
			}
			missed = append(missed, s.trip.Crew[i].Name)
		}
		if len(missed) == 0 {
			continue
		}
		names := prose.List(", ", missed)
		if len(missed) == len(r.Intakes) && len(missed) > 2 {
			names, first = prose.Say("everybody"), findings.Place{}
		}
		list = append(list, finding(findings.Note, n.code, first, n.what(names, worst.got, worst.target), n.why, n.whatToDo))
	}
	return list
}

// mean is what a member gets of a nutrient a day, against the target.
type mean struct{ got, target float64 }

// meanOf adds up the days with food whose amount of the nutrient is known.
func (s *sizer) meanOf(n *nutrient, member int, in *Intake) mean {
	var m mean
	days := 0.0
	for d := range in.Days {
		got, unknown := n.of(&in.Days[d])
		target := n.target(s, member, d)
		if in.Days[d].Food == 0 || target <= 0 || unknown > 0 && !n.most {
			continue
		}
		m.got, m.target, days = m.got+got, m.target+target, days+s.needOf(member, d).FromPacks
	}
	if days <= 0 {
		return mean{}
	}
	return mean{m.got / days, m.target / days}
}

func (m mean) by(most bool) float64 {
	if m.target <= 0 {
		return 0
	}
	if most {
		return m.got/m.target - 1
	}
	return 1 - m.got/m.target
}

func (m mean) misses(most bool) bool { return m.by(most) > rangeSlack }

package needs

import (
	"math"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/science/metabolism"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Limits beyond which a figure is worth a second look (design choice).
const (
	leastKcal        = 1600.0
	leastTimesRest   = 1.2
	mostKcal         = 5500.0
	opinionsApart    = 1.5  // Naismith against Tobler
	longDayHours     = 12.0 // on the move and stopping
	crossCheckApart  = 0.10 // Harris-Benedict against the equation used
	crossCheckTo     = 60   // years; from there the two part honestly
	givenApart       = 0.25 // a given figure outside the bracket by more
	oldestDerivation = 78   // years; Mifflin-St Jeor was derived on 19 to 78
	olderFrom        = 65
)

func note(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) findings.Finding {
	return findings.Finding{Severity: severity, Stage: findings.Needs, Code: code, Place: place, What: what, Why: why, Remedy: remedy}
}

// routeFindings looks at the days of the route, which are the same for all.
func routeFindings(t *trip.Trip, routes []route) []findings.Finding {
	var list []findings.Finding
	for d := range routes {
		day, r, place := &t.Days[d], &routes[d], findings.Place{Day: d + 1}
		naismith, tobler := float64(r.walk.Hours), float64(r.walk.ToblerHours)
		switch {
		case r.tooSteep:
			list = append(list, note(findings.LookAt, "day-too-steep", place,
				prose.Say("Day %d climbs %s and descends %s within %s, steeper than people walk.", d+1,
					prose.Height(day.Ascent), prose.Height(day.Descent), prose.Distance(day.Distance)),
				prose.Say("The walking equations end at slopes of 45 %%; the energy was reckoned at that slope."),
				prose.Say("Check the distance and the heights of the day.")))
		case r.noLength:
			list = append(list, note(findings.Note, "day-without-distance", place,
				prose.Say("Day %d has %.1f h on the move but no distance: %.0f km/h on the level were taken.", d+1, naismith, plainKmPerH),
				prose.Say("The cost of walking depends on speed and slope."), prose.Say("Enter distance, ascent and descent of the day.")))
		case r.tooFast:
			list = append(list, note(findings.LookAt, "day-too-fast", place,
				prose.Say("Day %d asks for %s in %.1f h, faster than a walk.", d+1, prose.Distance(day.Distance), naismith),
				prose.Say("The walking equations end at 7.1 km/h; the energy was reckoned at that speed."),
				prose.Say("Enter more moving hours; the rule of Naismith and Langmuir gives %.1f h.", computedHours(day, &t.Settings))))
		case !r.walk.GivenByHand && naismith > 0 && (tobler > opinionsApart*naismith || naismith > opinionsApart*tobler):
			list = append(list, note(findings.LookAt, "moving-time-uncertain", place,
				prose.Say("Two rules differ on day %d: %.1f h by Naismith and Langmuir, %.1f h by Tobler.", d+1, naismith, tobler),
				prose.Say("Naismith 1892 with Langmuir 1984; Tobler 1993, slower off the path."),
				prose.Say("Enter your own moving hours if you know the ground.")))
		}
		if whole := naismith + float64(r.walk.StopHours); whole > longDayHours {
			list = append(list, note(findings.LookAt, "long-day", place,
				prose.Say("Day %d takes %.1f h with stops, which leaves %.1f h for sleep, cooking and camp.", d+1, whole, 24-whole),
				prose.Say("A day longer than 12 h leaves too little sleep (design choice)."),
				prose.Say("Cut the day at a place before the camp, or take at least %.1f h off it.", whole-longDayHours)))
		}
	}
	return list
}

func computedHours(day *trip.Day, settings *trip.Settings) float64 {
	own := *day
	own.MovingHours = trip.Day{}.MovingHours
	r := routeOf(&own, settings)
	return float64(r.walk.Hours)
}

// memberFindings looks at each member once, not at each of their days.
func memberFindings(t *trip.Trip, result *Result) []findings.Finding {
	var list []findings.Finding
	for i := range t.Crew {
		m := &t.Crew[i]
		b := bodyOf(m)
		list = append(list, bodyFindings(m, b)...)
		list = append(list, dayFindings(m, b, result.Members[i].Days)...)
	}
	return list
}

func bodyFindings(m *trip.Member, b body) []findings.Finding {
	var list []findings.Finding
	place := findings.Place{Member: m.ID}
	if b.guessed {
		list = append(list, note(findings.MustFix, "body-mass-missing", place,
			prose.Say("%s has no body mass; %s was taken.", m.Name, units.FromKilograms(guessedMassKg)),
			prose.Say("Every equation of energy starts from body mass."), prose.Say("Enter the body mass, or a need given by hand together with it.")))
	}
	if m.GivenNeed.Known() {
		return list
	}
	if b.sex == metabolism.NotGiven {
		list = append(list, note(findings.Note, "sex-not-given", place,
			prose.Say("The need of %s is the mean of two equations that lie %.0f kcal a day apart at rest.", m.Name, math.Abs(b.spread())),
			prose.Say("The published equations are made for women and for men."), prose.Say("If you know better, enter the sex or a need by hand.")))
	}
	switch {
	case b.minor():
		list = append(list, note(findings.Note, "minor", place,
			prose.Say("%s is %d: the need is reckoned for a growing body and never below %.0f kcal a day.", m.Name, m.Age, floorOf(b)),
			prose.Say("Schofield 1985; Torun 2001 in FAO/WHO/UNU 2004. Load and grade terms were measured on adults."),
			prose.Say("Let young members eat as much as they want, and ask their parents about food and illness.")))
	case b.heightCm <= 0:
		list = append(list, note(findings.Note, "height-not-given", place,
			prose.Say("%s has no height: Schofield's equation by mass and age alone was used.", m.Name),
			prose.Say("Its standard error is about %.0f kcal a day.", metabolism.SchofieldError(b.sex, b.age)), prose.Say("Enter the height.")))
	case b.age > oldestDerivation:
		list = append(list, note(findings.LookAt, "age-beyond-equation", place,
			prose.Say("%s is %d; the equation was made on people up to %d.", m.Name, m.Age, oldestDerivation),
			prose.Say("Mifflin-St Jeor 1990."), prose.Say("Ask the member, their doctor or a dietitian for a figure and enter it by hand.")))
	case b.age >= olderFrom:
		list = append(list, note(findings.Note, "older-member", place,
			prose.Say("%s is %d: appetite and thirst may be smaller than the need.", m.Name, m.Age),
			prose.Say("Common practice, no source."), prose.Say("Offer food and drink more often, and ask what loads and days suit.")))
	}
	if apart := crossCheck(b); apart > crossCheckApart {
		list = append(list, note(findings.LookAt, "body-figures-odd", place,
			prose.Say("Two equations for %s at rest lie %.0f %% apart.", m.Name, 100*apart),
			prose.Say("Harris-Benedict as revised 1984 usually reads 3 to 5 %% above; more than 10 %% points to a typing error."),
			prose.Say("Check mass (%s), height (%.2f m) and age (%d).", m.BodyMass, float64(m.Height), m.Age)))
	}
	return list
}

// crossCheck gives how far Harris-Benedict lies from the equation used, as a
// share; 0 where it does not apply.
func crossCheck(b body) float64 {
	if b.minor() || b.age >= crossCheckTo || b.heightCm <= 0 || b.guessed {
		return 0
	}
	used := b.resting()
	if used <= 0 {
		return 1
	}
	return math.Abs(metabolism.HarrisBenedict(b.sex, b.massKg, b.heightCm, b.age)/used - 1)
}

// dayFindings tells of the first and worst day out of the usual.
func dayFindings(m *trip.Member, b body, days []Day) []findings.Finding {
	var list []findings.Finding
	low, high, outside := -1, -1, -1
	for d := range days {
		if !days[d].Present {
			continue
		}
		kcal := float64(days[d].Kcal)
		if kcal < max(leastKcal, leastTimesRest*b.resting()) && (low < 0 || kcal < float64(days[low].Kcal)) {
			low = d
		}
		if kcal > mostKcal && (high < 0 || kcal > float64(days[high].Kcal)) {
			high = d
		}
		if m.GivenNeed.Known() && outside < 0 && (kcal < (1-givenApart)*float64(days[d].Low) || kcal > (1+givenApart)*float64(days[d].High)) {
			outside = d
		}
	}
	if low >= 0 {
		list = append(list, note(findings.LookAt, "need-low", findings.Place{Member: m.ID, Day: low + 1},
			prose.Say("The need of %s on day %d is only %.0f kcal.", m.Name, low+1, float64(days[low].Kcal)),
			prose.Say("Below 1.2 times rest or 1,600 kcal a day (design choice)."), prose.Say("Check the body figures, the day's hours, or the figure given by hand.")))
	}
	if high >= 0 {
		list = append(list, note(findings.LookAt, "need-high", findings.Place{Member: m.ID, Day: high + 1},
			prose.Say("The need of %s on day %d is %.0f kcal, more than most people can eat.", m.Name, high+1, float64(days[high].Kcal)),
			prose.Say("Above 5,500 kcal a day (design choice)."), prose.Say("Shorten the day, lighten the load, or plan rich food and an easier day after it.")))
	}
	if outside >= 0 {
		d := days[outside]
		list = append(list, note(findings.Note, "given-need-apart", findings.Place{Member: m.ID, Day: outside + 1},
			prose.Say("The %.0f kcal given for %s lie far from the %.0f to %.0f kcal reckoned for day %d.", float64(d.Kcal), m.Name, float64(d.Low), float64(d.High), outside+1),
			prose.Say("A figure given by hand stands."), prose.Say("Make sure that it means a day on the move, with the pack.")))
	}
	return list
}

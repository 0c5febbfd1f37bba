package needs

import (
	"sumpter/domain/science/dayenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// earlyDays is how many days of the trip EarlyAppetite holds for.
const earlyDays = 2

// Compute works out the needs of every member on every day. The trip is
// canonical; loads may be nil, and members or days it leaves out carry their
// own kit.
//
// The day's energy is the factorial sum of FAO/WHO/UNU 2004: still hours as
// multiples of resting energy, walking as gross power by the equation the
// leader chose, each slope of the day at its own grade with that day's load.
func Compute(t *trip.Trip, loads Loads) Result { return compute(t, loads, true) }

// Figures is Compute without the steps, for the rounds of the plan whose
// result nobody reads: it takes a quarter of the time.
func Figures(t *trip.Trip, loads Loads) Result { return compute(t, loads, false) }

func compute(t *trip.Trip, loads Loads, steps bool) Result {
	result := Result{Members: make([]Member, len(t.Crew)), Walks: make([]Walk, len(t.Days))}
	routes := make([]route, len(t.Days))
	for d := range t.Days {
		routes[d] = routeOf(&t.Days[d], &t.Settings)
		result.Walks[d] = routes[d].walk
	}
	for i := range t.Crew {
		result.Members[i] = memberNeeds(t, routes, i, loads, steps)
	}
	result.Findings = append(routeFindings(t, routes), memberFindings(t, &result)...)
	return result
}

func memberNeeds(t *trip.Trip, routes []route, i int, loads Loads, steps bool) Member {
	m := &t.Crew[i]
	b := bodyOf(m)
	needs := Member{
		Member: m.ID, RestingKcal: units.Kcal(b.resting()), RestingBasis: b.basis(), Days: make([]Day, len(t.Days)),
	}
	for d := range t.Days {
		if !m.Present(d + 1) {
			continue
		}
		load := m.OwnKit
		if i < len(loads) && d < len(loads[i]) {
			load = loads[i][d]
		}
		a := accountOf(t, &routes[d], m, b, d, load)
		needs.Days[d] = a.close(&t.Days[d], steps)
	}
	return needs
}

// accountOf gathers what one member burns on one day, by every equation.
func accountOf(t *trip.Trip, r *route, m *trip.Member, b body, d int, load units.Mass) *account {
	day, settings := &t.Days[d], &t.Settings
	loadKg := max(0, load.Kilograms())
	a := &account{
		trip: t, member: m, body: b, route: r, still: stillOf(r.walk), resting: b.resting(), loadKg: loadKg,
		equation: chosen(settings), floor: floorOf(b), number: d + 1,
	}
	a.cold, a.height = additions(day, settings)
	a.planned = burnOf(a.equation, a.resting, b.massKg, loadKg, r, a.still)
	a.low, a.high = a.planned.total, a.planned.total
	for _, equation := range equations() {
		if equation != a.equation {
			other := burnOf(equation, a.resting, b.massKg, loadKg, r, a.still).total
			a.low, a.high = min(a.low, other), max(a.high, other)
		}
	}
	return a
}

// close settles the account of one member's day.
func (a *account) close(day *trip.Day, steps bool) Day {
	more := 1 + a.cold + a.height
	settings := &a.trip.Settings
	d := Day{
		Present: true, FromPacks: fromPacks(day, settings.MealShares),
		Low: units.Kcal(max(a.floor, a.low*more)), High: units.Kcal(max(a.floor, a.high*more)),
		Kcal: units.Kcal(max(a.floor, a.planned.total*more)),
	}
	if a.route.walk.Hours > 0 {
		d.MovingWatts = a.planned.movingKcal / float64(a.route.walk.Hours) / dayenergy.KcalPerHourPerWatt
	}
	a.appetite = 1
	if given, ok := a.member.GivenNeed.Get(); ok {
		d.Kcal, a.given = given, true
	} else {
		a.appetite = appetiteOf(a.member, settings, a.number)
	}
	d.TargetKcal = units.Kcal(float64(d.Kcal) * a.appetite * d.FromPacks)
	perKg, setBy := proteinPerKg(a.member, settings)
	d.setNutrients(a.body, perKg, a.route.walk, float64(day.High))
	if steps {
		d.Steps = a.steps(&d, perKg, setBy)
	}
	return d
}

// appetiteOf gives the part of a computed need that is eaten: the member's
// usual appetite, and less on the first days of the trip.
func appetiteOf(m *trip.Member, settings *trip.Settings, number int) float64 {
	appetite := m.Appetite
	if appetite <= 0 {
		appetite = 1
	}
	if number <= earlyDays && settings.EarlyAppetite > 0 {
		appetite *= settings.EarlyAppetite
	}
	return appetite
}

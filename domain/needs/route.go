package needs

import (
	"sumpter/domain/prose"
	"sumpter/domain/science/walking"
	"sumpter/domain/science/walktime"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Slopes a day is made of when only its distance and heights are known: a
// path climbs and falls at pathSlope, and at steepSlope where the leader says
// it is steep (above 12 degrees). Where that does not fit into the distance,
// all slopes steepen alike. Design choice: the mean grade of a day that goes
// up and down would cost too little.
const (
	pathSlope   = 0.10
	steepSlope  = 0.25
	steepestFit = 0.45 // the published equations end here
)

// fastestMPerS is where the walking equations end; a hand-given time that asks
// for more is reckoned at this speed.
const fastestMPerS = 1.97

// leg is a part of a day with one slope.
type leg struct {
	name     prose.Text
	lengthKm float64 // along the horizontal
	riseM    float64 // negative for a descent
	hours    float64
}

func (l leg) gradePercent() float64 { return l.riseM / (10 * l.lengthKm) }

func (l leg) speedMPerS() float64 { return min(fastestMPerS, l.lengthKm/l.hours/3.6) }

// route is a day on foot, before anybody walks it.
type route struct {
	walk     Walk
	legs     []leg
	terrain  float64
	tooSteep bool // distance and heights do not fit together
	tooFast  bool // the time given by hand asks for more than a walk
	noLength bool // a time was given by hand and no distance
}

// plainKmPerH is the speed on the level taken where only a time is given:
// ordinary ground (common practice, no source).
const plainKmPerH = 4.0

// routeOf works out the legs and the moving time of a day.
func routeOf(day *trip.Day, settings *trip.Settings) route {
	r := route{terrain: terrainFactor(day.Terrain)}
	r.legs, r.tooSteep = legsOf(day)
	if given, ok := day.MovingHours.Get(); ok && given > 0 && len(r.legs) == 0 {
		r.legs, r.noLength = []leg{{name: prose.Say("on the level"), lengthKm: plainKmPerH * float64(given)}}, true
	}
	party := settings.PartyFactor
	if party <= 0 {
		party = 1
	}
	hours, tobler := 0.0, 0.0
	for i := range r.legs {
		l := &r.legs[i]
		l.hours = langmuirHours(*l)
		hours += l.hours
		tobler += walktime.Tobler(l.lengthKm, l.riseM)
	}
	if offPath(day.Terrain) {
		tobler *= walktime.ToblerSpeed(0) / walktime.ToblerSpeedOffPath(0)
	}
	planned := hours * party
	if given, ok := day.MovingHours.Get(); ok {
		planned, r.walk.GivenByHand = float64(given), true
	}
	planned = min(24, max(0, planned))
	for i := range r.legs {
		r.legs[i].hours *= planned / hours
		// The published rules for the time are no demand: gentle descents by
		// Langmuir's can be a little faster than the walking equations reach.
		r.tooFast = r.tooFast || r.walk.GivenByHand && r.legs[i].lengthKm > r.legs[i].hours*3.6*fastestMPerS*1.001
	}
	if planned == 0 {
		r.legs = nil // driven, or a day of rest
	}
	r.walk.Hours = units.Hours(planned)
	r.walk.ToblerHours = units.Hours(tobler * party)
	r.walk.StopHours = units.Hours(min(24-planned, max(0, settings.StopShare)*planned))
	return r
}

// legsOf cuts a day into a climb, a level part, a gentle and a steep descent.
func legsOf(day *trip.Day) (legs []leg, tooSteep bool) {
	distance := max(0, day.Distance.Kilometres())
	up, down := max(0, float64(day.Ascent)), max(0, float64(day.Descent))
	steep := min(down, max(0, float64(day.SteepDescent)))
	parts := []leg{
		{name: prose.Say("uphill"), lengthKm: up / pathSlope / 1000, riseM: up},
		{name: prose.Say("downhill"), lengthKm: (down - steep) / pathSlope / 1000, riseM: steep - down},
		{name: prose.Say("steeply downhill"), lengthKm: steep / steepSlope / 1000, riseM: -steep},
	}
	sloped := 0.0
	for _, part := range parts {
		sloped += part.lengthKm
	}
	if level := distance - sloped; level > 0 {
		legs = append(legs, leg{name: prose.Say("on the level"), lengthKm: level})
	}
	for _, part := range parts {
		if part.riseM == 0 {
			continue
		}
		part.lengthKm *= min(1, distance/sloped)
		if shortest := abs(part.riseM) / steepestFit / 1000; part.lengthKm < shortest {
			part.lengthKm, tooSteep = shortest, true
		}
		legs = append(legs, part)
	}
	return legs, tooSteep
}

// langmuirHours is the time of one leg by Naismith with Langmuir's
// corrections; those of the legs add up to that of the day.
func langmuirHours(l leg) float64 {
	if l.riseM >= 0 {
		return walktime.Naismith(l.lengthKm, l.riseM)
	}
	gentle, steep := walktime.DescentKinds(l.lengthKm, -l.riseM)
	return walktime.Langmuir(l.lengthKm, 0, gentle, steep)
}

// terrainFactor gives the factor of the ground; a kind nobody knows counts as
// a trail.
func terrainFactor(terrain trip.Terrain) float64 {
	switch terrain {
	case trip.Road:
		return walking.Blacktop
	case trip.DirtRoad:
		return walking.DirtRoad
	case trip.RoughTrail:
		return walking.RoughTrail
	case trip.LightBrush:
		return walking.LightBrush
	case trip.HeavyBrush:
		return walking.HeavyBrush
	case trip.Scree:
		return walking.Scree
	case trip.Bog:
		return walking.SwampyBog
	case trip.Sand:
		return walking.LooseSand
	case trip.SoftSnow:
		return walking.SoftSnow15
	default:
		return walking.MaintainedTrail
	}
}

// offPath tells where Tobler's speeds away from paths apply.
func offPath(terrain trip.Terrain) bool {
	switch terrain {
	case trip.HeavyBrush, trip.Scree, trip.Bog, trip.Sand, trip.SoftSnow:
		return true
	default:
		return false
	}
}

func abs(x float64) float64 { return max(x, -x) }

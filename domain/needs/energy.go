package needs

import (
	"sumpter/domain/prose"
	"sumpter/domain/science/dayenergy"
	"sumpter/domain/science/metabolism"
	"sumpter/domain/science/walking"
	"sumpter/domain/trip"
)

// Hours of a day not on the move (design choice after the worked days of the
// factorial method).
const (
	sleepHours    = 8.0
	restDaySleep  = 9.0
	campWorkHours = 8.0 // what is left after them is spent as on a rest day
)

// stillHours is one kind of time not on the move.
type stillHours struct {
	name prose.Text
	dayenergy.Still
}

// stillOf shares out the hours of a day that are not walked; with those they
// add up to 24.
func stillOf(walk Walk) []stillHours {
	moving, stops := float64(walk.Hours), float64(walk.StopHours)
	if moving == 0 {
		return []stillHours{
			{prose.Say("asleep"), dayenergy.Still{ActivityRatio: dayenergy.Sleep, Hours: restDaySleep}},
			{prose.Say("about the camp"), dayenergy.Still{ActivityRatio: dayenergy.CampDay, Hours: 24 - restDaySleep}},
		}
	}
	left := max(0, 24-moving-stops)
	sleep := min(left, sleepHours)
	camp := min(left-sleep, campWorkHours)
	return []stillHours{
		{prose.Say("asleep"), dayenergy.Still{ActivityRatio: dayenergy.Sleep, Hours: sleep}},
		{prose.Say("camp work"), dayenergy.Still{ActivityRatio: dayenergy.CampWork, Hours: camp}},
		{prose.Say("about the camp"), dayenergy.Still{ActivityRatio: dayenergy.CampDay, Hours: left - sleep - camp}},
		{prose.Say("stops"), dayenergy.Still{ActivityRatio: dayenergy.Stops, Hours: stops}},
	}
}

// equations lists the published equations a day is reckoned by.
func equations() []trip.WalkingEquation {
	return []trip.WalkingEquation{trip.LCDABackpacking, trip.LCDAWalking, trip.Pandolf}
}

// chosen gives the equation the leader plans with; one nobody knows is
// replaced by the default.
func chosen(settings *trip.Settings) trip.WalkingEquation {
	for _, known := range equations() {
		if settings.Walking == known {
			return known
		}
	}
	return trip.LCDABackpacking
}

// power gives the gross watts on a leg. Nobody burns less than at rest, where
// an equation built on other people says so on a descent.
func power(equation trip.WalkingEquation, restW, bodyKg, loadKg float64, l leg, terrain float64) float64 {
	speed, grade := l.speedMPerS(), l.gradePercent()
	var watts float64
	switch equation {
	case trip.LCDAWalking:
		watts = walking.LCDATotalMass(bodyKg, loadKg, speed, grade, terrain)
	case trip.Pandolf:
		watts = walking.PandolfSantee(bodyKg, loadKg, speed, grade, terrain)
	default:
		watts = walking.LCDABackpacking(restW/bodyKg, bodyKg, loadKg, speed, grade, terrain)
	}
	return max(watts, restW)
}

// burn is the energy of one day by one equation, before cold and height.
type burn struct {
	stillKcal  []float64 // by place in still
	legWatts   []float64 // by place in the legs
	legKcal    []float64
	movingKcal float64
	total      float64
}

func burnOf(equation trip.WalkingEquation, resting, bodyKg, loadKg float64, r *route, still []stillHours) burn {
	b := burn{
		stillKcal: make([]float64, len(still)), legWatts: make([]float64, len(r.legs)), legKcal: make([]float64, len(r.legs)),
	}
	for i, part := range still {
		b.stillKcal[i] = dayenergy.StillKcal(resting, part.Still)
		b.total += b.stillKcal[i]
	}
	restW := walking.RestWPerKg(resting, bodyKg) * bodyKg
	for i, l := range r.legs {
		b.legWatts[i] = power(equation, restW, bodyKg, loadKg, l, r.terrain)
		b.legKcal[i] = dayenergy.MovingKcal(dayenergy.Moving{PowerW: b.legWatts[i], Hours: l.hours})
		b.movingKcal += b.legKcal[i]
	}
	b.total += b.movingKcal
	return b
}

// additions gives what cold and height add to a day, as shares.
func additions(day *trip.Day, settings *trip.Settings) (cold, height float64) {
	if day.Low < 0 {
		cold = max(0, settings.ColdShare)
	}
	return cold, dayenergy.HeightShare(float64(day.CampHeight))
}

// floorOf is what a growing member's day is never set below; 0 for adults.
func floorOf(b body) float64 {
	if !b.minor() {
		return 0
	}
	return metabolism.MinorTotal(b.sex, b.massKg)
}

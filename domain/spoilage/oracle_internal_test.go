package spoilage

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/portions/portionstest"
	"sumpter/domain/science/daytemp"
	"sumpter/domain/science/foodsafety"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// tick is the step of the simulation, in hours.
const tick = 0.05

// simulate walks along the way of a food in small steps and adds up what each
// step uses, by the published rules alone.
func simulate(t *trip.Trip, w *ware, route way, day int, hour float64) (dose, used float64) {
	step := func(celsius float64) {
		dose += foodsafety.Exposure(tick, min(celsius, 59.9))
		used += math.Pow(w.q10, (celsius-20)/10) * tick / 24
	}
	for _, s := range route.before {
		if route.sold[w.food.ID] { // bought fresh where the leg begins
			break
		}
		if w.keptCold(&t.Settings) && s.where == home {
			s.day = daytemp.Day{Low: 4, High: 4}
		}
		for h := tick / 2; h < 24*s.days; h += tick {
			step(s.day.At(h))
		}
	}
	for h := 24*float64(route.arrives) + route.hour + tick/2; h < 24*float64(day)+hour; h += tick {
		d := int(h / 24)
		air := daytemp.Day{Low: float64(t.Days[d].Low), High: float64(t.Days[d].High) + t.Settings.PackSunHeat}
		step(air.At(math.Mod(h, 24)))
	}
	return dose, used
}

// The account in closed form against the simulation of the same way.
func TestAccountAgainstSimulation(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		j := newJudge(made)
		for _, s := range servingsOf(made, portionstest.Serve(made), j.legs)[:min(3, len(servingsOf(made, portionstest.Serve(made), j.legs)))] {
			w := j.wares[s.food]
			a := j.account(&w, s.leg, s.day-1, hourOf(s.meal), true)
			dose, used := simulate(made, &w, j.ways[s.leg], s.day-1, hourOf(s.meal))
			if !w.perishable() {
				dose = 0
			}
			if math.Abs(a.dose-dose) > 0.02+0.01*dose || math.Abs(a.used-used) > 0.01+0.01*used {
				rt.Errorf("food %d on day %d: have dose %v and %v days, simulated %v and %v", s.food, s.day, a.dose, a.used, dose, used)
			}
		}
	})
}

// The latest day is where moving the very meal there would still be safe.
func TestLatestDayIsWhatMovingTheMealGives(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		for i := range made.Foods {
			made.Foods[i].Storage.TCSWhenOpen = false // an open package is a matter of its own slot
		}
		for i := range made.Recipes {
			made.Recipes[i].Soak = 0
		}
		j := newJudge(made)
		for _, s := range servingsOf(made, portionstest.Serve(made), j.legs) {
			fate, ok := j.judge(s)
			if !ok {
				rt.Fatal("a food of the trip has no fate")
			}
			for day := j.legs[s.leg].FirstDay; day <= len(made.Days); day++ {
				moved := s
				moved.day = day
				there, _ := j.judge(moved)
				if (there.Verdict == Safe) != (day <= fate.LatestDay) {
					rt.Errorf("food %d: latest day %d, but on day %d it is %s", s.food, fate.LatestDay, day, there.Verdict)
				}
			}
		}
	})
}

func TestClockAddsUp(t *testing.T) {
	days := []daytemp.Day{{Low: 5, High: 20}, {Low: 10, High: 38}, {Low: -3, High: 2}}
	c := newClock(days, exposureBetween)
	direct := exposureBetween(days[0], 8, 24) + exposureBetween(days[1], 0, 24) + exposureBetween(days[2], 0, 12.5)
	if have := c.between(0, 8, 2, 12.5); math.Abs(have-direct) > 1e-12 {
		t.Errorf("have %v, want %v", have, direct)
	}
	if have := c.between(1, 17, 1, 19); math.Abs(have-exposureBetween(days[1], 17, 19)) > 1e-12 {
		t.Errorf("within a day: %v", have)
	}
	if have := c.between(1, 17, 1, 7); have != 0 {
		t.Errorf("before it came into the pack: %v", have)
	}
}

// testdata/check_values.csv, food_safety: 1.0 h at 25 C and 0.5 h at 34 C use
// the whole allowance; 0.5 h at 20, 3 h at 3 and 0.75 h at 30 use 0.625 of it.
func TestExposureOfSteadyTemperatures(t *testing.T) {
	steady := func(celsius, hours float64) float64 {
		return exposureBetween(daytemp.Day{Low: celsius, High: celsius}, 0, hours)
	}
	if have := steady(25, 1) + steady(34, 0.5); math.Abs(have-1) > 1e-12 {
		t.Errorf("have %v, want 1", have)
	}
	if have := steady(20, 0.5) + steady(3, 3) + steady(30, 0.75); math.Abs(have-0.625) > 1e-12 {
		t.Errorf("have %v, want 0.625", have)
	}
	if have := steady(70, 1); have != 1 {
		t.Errorf("hot by accident counts as above 32.2 C: have %v", have)
	}
}

func TestExtremesOfAPartOfADay(t *testing.T) {
	day := daytemp.Day{Low: 14, High: 36}
	for _, c := range []struct{ from, to, low, high float64 }{
		{0, 24, 14, 36}, {8, 19, day.At(8), 36}, {0, 7, 14, day.At(7)}, {17, 24, day.At(24), day.At(17)}, {9, 9, 25, 25},
	} {
		low, high := extremes(day, c.from, c.to)
		if math.Abs(low-c.low) > 1e-9 || math.Abs(high-c.high) > 1e-9 {
			t.Errorf("%v to %v: have %v and %v, want %v and %v", c.from, c.to, low, high, c.low, c.high)
		}
	}
}

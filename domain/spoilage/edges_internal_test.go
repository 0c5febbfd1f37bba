package spoilage

import (
	"math"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/science/daytemp"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// edge is a judge over three days, for one food that comes along from the
// start after a way of its own.
func edge(food trip.Food, days []daytemp.Day, before ...stage) *judge {
	food.ID = 1
	made := &trip.Trip{Settings: trip.DefaultSettings(), Foods: []trip.Food{food}}
	made.Settings.PackSunHeat, made.Settings.HomeFridge = 0, false
	for _, day := range days {
		made.Days = append(made.Days, trip.Day{Low: units.Celsius(day.Low), High: units.Celsius(day.High)})
	}
	j := newJudge(made)
	j.ways[0].before = before
	return j
}

func keepsFor(days float64) trip.Food {
	return trip.Food{Storage: trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(days), Q10: 2}}
}

func fateAt(t *testing.T, j *judge, day int, meal trip.Meal) Fate {
	t.Helper()
	fate, ok := j.judge(serving{day: day, meal: meal, food: 1})
	if !ok {
		t.Fatal("no fate")
	}
	return fate
}

var mild = []daytemp.Day{{Low: 10, High: 20}, {Low: 12, High: 30}, {Low: 4, High: 18}}

// The stretch in the pack tells the lowest and highest temperature that the
// food met there, not those of the whole days.
func TestPackStretchTellsWhatTheFoodMet(t *testing.T) {
	j := edge(keepsFor(100), mild)
	for _, c := range []struct {
		day       int
		meal      trip.Meal
		low, high float64
	}{
		{1, trip.Lunch, mild[0].At(8), mild[0].At(12.5)},
		{1, trip.Dinner, mild[0].At(8), 20},
		{2, trip.Breakfast, mild[0].At(24), 20}, // the second day's heat is still to come
		{2, trip.Dinner, mild[0].At(24), 30},
		{3, trip.Lunch, 4, 30},
	} {
		path := fateAt(t, j, c.day, c.meal).Path
		if have := path[len(path)-1]; math.Abs(float64(have.Low)-c.low) > 1e-9 || math.Abs(float64(have.High)-c.high) > 1e-9 {
			t.Errorf("day %d %s: have %v to %v, want %v to %v", c.day, c.meal, have.Low, have.High, c.low, c.high)
		}
	}
}

func TestMeltingAtTheVeryPoint(t *testing.T) {
	food := keepsFor(100)
	food.Storage.SoftensAt = optional.Of(units.Celsius(30))
	j := edge(food, mild)
	if !fateAt(t, j, 2, trip.Dinner).Melts || fateAt(t, j, 2, trip.Lunch).Melts {
		t.Error("it melts at 30 C, which the second day reaches at three in the afternoon")
	}
	hotCar := edge(food, mild, stage{where: car, days: 0.1, day: daytemp.Day{Low: 40, High: 40}, known: true})
	if !fateAt(t, hotCar, 1, trip.Lunch).Melts {
		t.Error("it melts in a hot car")
	}
}

// The mean of a stage or day counts against the food's highest warmth, if it
// lasts half a day.
func TestWarmStagesCountAgainstTheHighestWarmth(t *testing.T) {
	food := keepsFor(100)
	food.Storage.MaxHeat = optional.Of(units.Celsius(22))
	van := stage{where: post, days: 0.5, day: daytemp.Day{Low: 20, High: 30}, known: true}
	if fate := fateAt(t, edge(food, mild[:1], van), 1, trip.Dinner); fate.Why.String() != warmButFresh.words().String() {
		t.Errorf("half a day in a warm van: %s", fate.Why)
	}
	van.days = 0.49
	if fate := fateAt(t, edge(food, mild[:1], van), 1, trip.Dinner); fate.Why.String() != keeps.words().String() {
		t.Errorf("less than half a day: %s", fate.Why)
	}
	hot := []daytemp.Day{{Low: 10, High: 20}, {Low: 20, High: 30}, {Low: 5, High: 15}}
	for day, want := range map[int]reason{1: keeps, 2: warmButFresh, 3: warmButFresh} {
		if fate := fateAt(t, edge(food, hot), day, trip.Dinner); fate.Why.String() != want.words().String() {
			t.Errorf("day %d: %s", day, fate.Why)
		}
	}
	if fate := fateAt(t, edge(food, hot), 2, trip.Breakfast); fate.Why.String() != keeps.words().String() {
		t.Errorf("a warm day that has hardly begun: %s", fate.Why)
	}
}

func TestDaysLeftIsTheSooner(t *testing.T) {
	cold := []daytemp.Day{{Low: 5, High: 5}, {Low: 4, High: 4}}
	food := keepsFor(1000)
	food.Storage.TCS = trip.TCSYes
	fate := fateAt(t, edge(food, cold), 1, trip.Breakfast)
	if want := 2.0 / 24; math.Abs(fate.DaysLeft-want) > 1e-9 { // two hours at 5 C, whatever its quality
		t.Errorf("have %v days, want %v", fate.DaysLeft, want)
	}
	food.Storage.ShelfDays = optional.Of(0.01)
	fate = fateAt(t, edge(food, cold), 1, trip.Breakfast)
	if want := 0.01 / math.Pow(2, -1.5); math.Abs(fate.DaysLeft-want) > 1e-9 {
		t.Errorf("have %v days, want %v", fate.DaysLeft, want)
	}
	fate = fateAt(t, edge(food, cold[1:]), 1, trip.Breakfast)
	if want := 0.01 / math.Pow(2, -1.6); math.Abs(fate.DaysLeft-want) > 1e-9 { // at 4 C no allowance is used
		t.Errorf("have %v days, want %v", fate.DaysLeft, want)
	}
}

func TestAnHourOfSoakingCounts(t *testing.T) {
	j := edge(keepsFor(100), []daytemp.Day{{Low: 25, High: 25}})
	for minutes, want := range map[float64]float64{59: 0, 60: 0.5, 119: 119.0 / 120, 120: 1} {
		fate, _ := j.judge(serving{day: 1, meal: trip.Dinner, food: 1, soak: minutes})
		if math.Abs(fate.Dose-want) > 1e-9 || (fate.Verdict == NotSafe) != (minutes >= 120) {
			t.Errorf("%v minutes: dose %v, %s", minutes, fate.Dose, fate.Verdict)
		}
	}
}

// Two hours at 25 C are the whole allowance: discard at 1, not beyond it.
func TestTheWholeAllowanceIsTheEnd(t *testing.T) {
	food := trip.Food{Storage: trip.Storage{TCS: trip.TCSYes}}
	for hours, want := range map[float64]Verdict{1.99: Safe, 2: NotSafe} {
		parked := stage{where: car, days: hours / 24, day: daytemp.Day{Low: 25, High: 25}, known: true}
		if fate := fateAt(t, edge(food, []daytemp.Day{{}}, parked), 1, trip.Breakfast); fate.Verdict != want {
			t.Errorf("%v hours: %s, dose %v", hours, fate.Verdict, fate.Dose)
		}
	}
}

func TestAFoodTheTripDoesNotHaveHasNoFate(t *testing.T) {
	if _, ok := edge(keepsFor(1), mild).judge(serving{day: 1, meal: trip.Dinner, food: 99}); ok {
		t.Error("nothing can be said of it")
	}
}

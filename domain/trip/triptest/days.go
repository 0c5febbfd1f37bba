package triptest

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func (b *builder) head() {
	start, err := units.NewDate(b.pick(2025, 2032), b.pick(1, 12), b.pick(1, 28))
	if err != nil {
		panic(err) // the ranges above hold dates only
	}
	b.trip.Title = oneOf(b, "Ridge week", "Höhenweg", "Two valleys & a pass", "山の旅")
	b.trip.Start = start
	b.trip.Units = oneOf(b, units.Metric, units.US)
	b.trip.Currency = oneOf(b, "EUR", "USD", "CHF", "JPY")
	b.trip.Settings = b.settings()
	b.trip.Posting = trip.UsualPosting()
	if b.rarely() {
		b.trip.Posting.OpenDays = nil
	}
	if b.rarely() {
		b.trip.Posting.ReturnAddress = "Ann Example\n1 Home Street"
		b.trip.Posting.ClosedDates = []units.Date{b.trip.Start.AddDays(-9)}
		b.trip.Identity = "0123456789abcdef"
	}
	if b.rarely() {
		b.trip.Notes = "Bring the spare lighter.\nAsk about the \"bridge\"."
	}
}

func (b *builder) settings() trip.Settings {
	s := trip.DefaultSettings()
	s.PackingNight = b.trip.Start.AddDays(-b.pick(1, 5))
	s.ShoppingDay = s.PackingNight.AddDays(-b.pick(0, 4))
	if !b.odd {
		return s
	}
	s.Walking = oneOf(b, trip.LCDABackpacking, trip.LCDAWalking, trip.Pandolf)
	s.PartyFactor = b.hundredths(100, 150)
	s.ColdShare = b.hundredths(0, 10)
	s.DayLow, s.DayHigh = b.hundredths(85, 98), b.hundredths(102, 120)
	s.ScaleStep = oneOf(b, units.Gram, 5*units.Gram, units.Gram/10)
	s.RepeatGap = b.pick(0, 4)
	s.MenuAim = b.hundredths(-100, 100)
	s.CookMinutes = units.Minutes(b.pick(0, 6) * 30)
	s.Seconds = b.hundredths(0, 15)
	s.FillOpenSlots = b.chance(70)
	s.HomeFridge = b.chance(70)
	s.HotDrink = units.Volume(b.pick(0, 5)) * 100 * units.Millilitre
	s.DinnerShare = b.hundredths(30, 100)
	s.Helpers = b.pick(1, 6)
	s.StoreMeals, s.SnackDays, s.LunchPerEater = b.pick(0, 3), b.pick(1, 4), b.chance(30)
	s.Smellables = units.Volume(b.pick(0, 8)) * 100 * units.Millilitre
	s.ReserveDays = b.tenths(0, 10)
	s.ReserveEnd = oneOf(b, trip.ReserveEnds()...)
	s.Budget = maybe(b, 30, units.Money(b.pick(0, 2_000_000)))
	return s
}

func (b *builder) days(count int) {
	camp := units.Metres(b.pick(0, 2500))
	for range count {
		day := b.day(camp)
		camp = day.CampHeight
		b.trip.Days = append(b.trip.Days, day)
	}
	if !b.odd {
		first, last := &b.trip.Days[0], &b.trip.Days[count-1]
		first.Meals = []trip.Meal{trip.Lunch, trip.Dinner, trip.Snack}
		if count > 1 {
			last.Meals = []trip.Meal{trip.Breakfast, trip.Lunch, trip.Snack}
		}
	}
}

func (b *builder) day(from units.Metres) trip.Day {
	ascent := units.Metres(b.pick(0, 130) * 10)
	camp := units.Metres(min(4200, max(0, float64(from)+float64(b.pick(-60, 60)*10))))
	descent := max(0, from+ascent-camp)
	low := b.pick(-12, 18)
	day := trip.Day{
		Distance: units.Metres(b.pick(0, 220) * 100), Ascent: ascent, Descent: descent,
		SteepDescent: units.Metres(float64(b.pick(0, int(descent)/10)) * 10),
		Terrain:      oneOf(b, trip.Trail, trip.Trail, trip.RoughTrail, trip.DirtRoad, trip.Scree, trip.SoftSnow),
		CampHeight:   camp, LunchHeight: camp + units.Metres(b.pick(0, 40)*10),
		Low: units.Celsius(low), High: units.Celsius(low + b.pick(0, 20)),
		Meals: trip.Meals(),
	}
	day.DryCamp, day.NoFlame, day.SnowWater = b.chance(10), b.chance(10), b.chance(5)
	if b.rarely() {
		day.Name = "Hut → Col"
		day.Meals = some(b, 60, trip.Meals())
		day.MovingHours = optional.Of(units.Hours(float64(b.pick(int(day.Distance)/500+1, 100)) / 10))
	}
	return day
}

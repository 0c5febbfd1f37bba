package spoilage

import (
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/science/daytemp"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// journey is a trip of five days, bought ten days before, with a point after
// the third day.
func journey(point trip.ResupplyPoint) *trip.Trip {
	start, _ := units.NewDate(2026, 7, 20)
	made := &trip.Trip{Start: start, Settings: trip.DefaultSettings(), Days: make([]trip.Day, 5)}
	made.Settings.ShoppingDay = start.AddDays(-10)
	made.Settings.HomeLow, made.Settings.HomeHigh, made.Settings.CarHours, made.Settings.CarHigh = 18, 24, 3, 35
	point.ID, point.AfterDay, point.Use = 4, 3, true
	made.Points = []trip.ResupplyPoint{point}
	return made
}

func date(year, month, day int) units.Date {
	d, _ := units.NewDate(year, month, day)
	return d
}

func known(celsius float64) optional.Value[units.Celsius] { return optional.Of(units.Celsius(celsius)) }

func TestWays(t *testing.T) {
	room, parked, van := daytemp.Day{Low: 18, High: 24}, daytemp.Day{Low: 35, High: 35}, daytemp.Day{Low: 18, High: 35}
	sent := trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 2, BufferDays: 3, StoreLow: known(5), StoreHigh: known(15)}
	hut, carrier, met, unsure, turned := sent, sent, sent, sent, sent
	hut.Kind, hut.TransitDays, carrier.Kind, met.Kind = trip.Hut, 0, trip.Hut, trip.Meeting
	early, late := sent, sent
	early.Sending.SendOn, late.Sending.SendOn = date(2026, 7, 13), date(2026, 7, 21)
	unsure.StoreHigh = optional.Unknown[units.Celsius]()
	turned.StoreLow, turned.StoreHigh = known(15), known(5)
	for name, c := range map[string]struct {
		point trip.ResupplyPoint
		want  []stage
	}{ // picked up on the 22nd
		"post":                   {sent, []stage{{home, 7, room, true}, {post, 2, van, true}, {box, 3, daytemp.Day{Low: 5, High: 15}, true}}},
		"to a hut by a carrier":  {carrier, []stage{{home, 7, room, true}, {post, 2, van, true}, {box, 3, daytemp.Day{Low: 5, High: 15}, true}}},
		"hut":                    {hut, []stage{{home, 9, room, true}, {car, 0.125, parked, true}, {box, 3, daytemp.Day{Low: 5, High: 15}, true}}},
		"sent on a chosen day":   {early, []stage{{home, 3, room, true}, {post, 2, van, true}, {box, 7, daytemp.Day{Low: 5, High: 15}, true}}},
		"sent too late":          {late, []stage{{home, 11, room, true}, {post, 2, van, true}, {box, 0, daytemp.Day{Low: 5, High: 15}, true}}},
		"met":                    {met, []stage{{home, 12, room, true}, {car, 0.125, parked, true}}},
		"nobody knows how warm":  {unsure, []stage{{home, 7, room, true}, {post, 2, van, true}, {box, 3, van, false}}},
		"low and high exchanged": {turned, []stage{{home, 7, room, true}, {post, 2, van, true}, {box, 3, daytemp.Day{Low: 5, High: 5}, true}}},
	} {
		made := journey(c.point)
		w := wayOf(made, made.Legs()[1])
		if w.arrives != 2 || w.hour != pickUpHour || len(w.before) != len(c.want) {
			t.Errorf("%s: %+v", name, w)
			continue
		}
		for i, want := range c.want {
			if w.before[i] != want {
				t.Errorf("%s: have %+v, want %+v", name, w.before[i], want)
			}
		}
	}
	made := journey(sent)
	if w := wayOf(made, made.Legs()[0]); w.arrives != 0 || w.hour != startHour || w.before[0].days != 10 || w.before[1].where != car {
		t.Errorf("from the start: %+v", w)
	}
}

func TestDaysAtHome(t *testing.T) {
	made := journey(trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 9, BufferDays: 9})
	for name, c := range map[string]struct {
		shopping units.Date
		want     float64
	}{
		"bought a week before": {made.Start.AddDays(-7), 7}, "on the day": {made.Start, 0}, "after the start": {made.Start.AddDays(2), 0}, "not said": {0, 0},
	} {
		made.Settings.ShoppingDay = c.shopping
		if have := wayOf(made, made.Legs()[0]).before[0].days; have != c.want {
			t.Errorf("%s: have %v days, want %v", name, have, c.want)
		}
	}
	made.Settings.ShoppingDay = made.Start.AddDays(-10)
	if have := wayOf(made, made.Legs()[1]).before[0].days; have != 0 {
		t.Errorf("a box that had to leave before it was bought: %v days at home", have)
	}
}

func TestOddTemperaturesAreTakenWithSense(t *testing.T) {
	made := journey(trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 1})
	made.Settings.HomeLow, made.Settings.HomeHigh, made.Settings.CarHigh = 26, 20, 10
	w := wayOf(made, made.Legs()[1])
	if home, van := w.before[0].day, w.before[1].day; home != (daytemp.Day{Low: 20, High: 20}) || van != (daytemp.Day{Low: 20, High: 20}) {
		t.Errorf("home %+v, van %+v", home, van)
	}
	made.Days[0] = trip.Day{Low: 30, High: 10}
	made.Days[1] = trip.Day{Low: -10, High: 20}
	made.Settings.PackSunHeat = 5
	if days := packDays(made); days[0] != (daytemp.Day{Low: 10, High: 15}) || days[1] != (daytemp.Day{Low: -10, High: 25}) {
		t.Errorf("have %+v", days[:2])
	}
	made.Settings.PackSunHeat = -5
	if days := packDays(made); days[1].High != 20 {
		t.Errorf("a pack in the sun is never colder than the air: %+v", days[1])
	}
	food := trip.Food{Storage: trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(-3.0)}}
	if w := wareOf(&food); w.shelfDays != 0 {
		t.Errorf("a shelf life below zero is none: %v", w.shelfDays)
	}
}

// What a shop at the point sells is not at home, in the van or in a box.
func TestFoodBoughtOnTheWayComesFresh(t *testing.T) {
	made := journey(trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 2, BufferDays: 3})
	made.Foods = []trip.Food{{ID: 1, Packages: []trip.Package{{Net: units.Kilogram, Shop: "Kiosk"}}}, {ID: 2, Packages: []trip.Package{{Net: units.Kilogram, Shop: "market"}}}}
	made.Shops = []trip.Shop{{Name: "Kiosk", Use: true, Point: 4}}
	j := newJudge(made)
	bread, rice := wareOf(&made.Foods[0]), wareOf(&made.Foods[1])
	if a := j.account(&bread, 1, 3, 12, false); a.path != nil || a.days >= 1 {
		t.Errorf("%+v", a)
	}
	if a := j.account(&rice, 1, 3, 12, false); len(a.path) != 3 {
		t.Errorf("%+v", a)
	}
	if a := j.account(&bread, 0, 0, 19, false); len(a.path) == 0 {
		t.Errorf("on the leg before it comes from home: %+v", a)
	}
}

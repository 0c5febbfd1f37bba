package trip_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Whatever the calendar: the first and the last open date are open, and no
// date between them and where the search began is.
func TestOpenDatesAreTheNearest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		from, _ := units.NewDate(rapid.IntRange(2023, 2029).Draw(rt, "year"), rapid.IntRange(1, 12).Draw(rt, "month"), rapid.IntRange(1, 28).Draw(rt, "day"))
		var o trip.Opening
		for _, day := range trip.OpenDayNames() {
			if rapid.Bool().Draw(rt, day) {
				o.OpenDays = append(o.OpenDays, day)
			}
		}
		for range rapid.IntRange(0, 5).Draw(rt, "holidays") {
			o.ClosedDates = append(o.ClosedDates, from.AddDays(rapid.IntRange(-9, 9).Draw(rt, "holiday")))
		}
		for step, search := range map[int]func(units.Date) (units.Date, bool){1: o.FirstOpen, -1: o.LastOpen} {
			found, ok := search(from)
			if !ok || !o.OpenOn(found) {
				rt.Fatalf("from %s: %s, %v of %+v", from, found, ok, o)
			}
			for date := from; date != found; date = date.AddDays(step) {
				if o.OpenOn(date) {
					rt.Fatalf("%s is passed over for %s", date, found)
				}
			}
		}
	})
}

func TestNeverOpen(t *testing.T) {
	never := trip.Opening{OpenDays: []string{"no day"}}
	if _, ok := never.FirstOpen(20_000); ok {
		t.Error("a place that never opens is open")
	}
	if date, ok := (trip.Opening{}).LastOpen(0); ok {
		t.Errorf("no date gives %s", date)
	}
}

func TestShopsOfATrip(t *testing.T) {
	tr := plain()
	tr.Points = []trip.ResupplyPoint{trip.NewPoint(7, "Halt", 2)}
	tr.Shops = []trip.Shop{trip.NewShop("Mill"), {Name: "Stall", Use: true, Point: 7}}
	food := &tr.Foods[0]
	food.Packages = []trip.Package{{Net: units.Gram, Shop: "stall "}, {Net: units.Gram, Shop: "Barn"}, {Net: units.Gram}}
	for i := range tr.Foods[1:] {
		tr.Foods[1+i].Packages = nil
	}
	if names := tr.ShopNames(); !slices.Equal(names, []string{"Mill", "Stall", "Barn"}) {
		t.Errorf("%q", names)
	}
	if !tr.SoldAt(7, food) || tr.SoldAt(0, food) || tr.SoldAt(8, food) || tr.SoldAt(7, &tr.Foods[1]) {
		t.Error("what the stall sells is bought at its point and nowhere else")
	}
	tr.Progress.Purchases = []trip.Purchase{{Food: food.ID, Net: units.Gram, Shop: "STALL", Count: 1}}
	tr.RenameShop("stall", "Kiosk")
	if tr.Shop("kiosk") == nil || tr.Shop("Stall") != nil || food.Packages[0].Shop != "Kiosk" || tr.Progress.Purchases[0].Shop != "Kiosk" {
		t.Errorf("%+v, %+v, %+v", tr.Shops, food.Packages, tr.Progress.Purchases)
	}
	tr.Shop("Kiosk").Use = false
	if tr.SoldAt(7, food) {
		t.Error("a shop that is not used sells")
	}
}

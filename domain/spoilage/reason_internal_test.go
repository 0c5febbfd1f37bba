package spoilage

import (
	"strings"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestEveryReasonSpeaksAndOnlyThreeAreSafe(t *testing.T) {
	safe := map[reason]bool{keeps: true, keptColdAllTheWay: true, warmButFresh: true}
	words := map[string]reason{}
	for r := keeps; r <= coldTooLong; r++ {
		if (r.verdict() == Safe) != safe[r] {
			t.Errorf("reason %d is %s", r, r.verdict())
		}
		if r.words().IsZero() || !strings.HasSuffix(r.words().String(), ".") || !strings.HasSuffix(r.source().String(), ".") {
			t.Errorf("reason %d: %q because %q", r, r.words(), r.source())
		}
		if other, twice := words[r.words().String()]; twice {
			t.Errorf("reasons %d and %d say the same", r, other)
		}
		words[r.words().String()] = r
	}
}

func TestReasonForEveryCase(t *testing.T) {
	food := trip.Food{Storage: trip.Storage{MaxHeat: optional.Of(units.Celsius(25))}}
	for name, c := range map[string]struct {
		control      trip.TCS
		shelf        float64
		a            account
		dose, soaked float64
		opened       bool
		want         reason
	}{
		"stable and fresh":              {trip.TCSNo, 10, account{used: 5}, 0, 0, false, keeps},
		"stable, exactly used up":       {trip.TCSNo, 10, account{used: 10}, 0, 0, false, keeps},
		"stable and old":                {trip.TCSNo, 10, account{used: 10.1}, 0, 0, false, pastShelf},
		"stable, warm, half used":       {trip.TCSNo, 10, account{used: 5, warmest: 26}, 0, 0, false, warmButFresh},
		"stable, warm, over half used":  {trip.TCSNo, 10, account{used: 5.1, warmest: 26}, 0, 0, false, beyondHeat},
		"stable, at its highest warmth": {trip.TCSNo, 10, account{used: 9, warmest: 25}, 0, 0, false, keeps},
		"stable, box unknown":           {trip.TCSNo, 10, account{used: 1, unknown: true}, 0, 0, false, placeUnknown},
		"stable, shelf life unknown":    {trip.TCSNo, 0, account{}, 0, 0, false, shelfUnknown},
		"perishable and cold":           {trip.TCSYes, 0, account{dose: 0.99, days: 7}, 0.99, 0, false, keptColdAllTheWay},
		"perishable, allowance used":    {trip.TCSYes, 0, account{dose: 1}, 1, 0, false, warmTooLong},
		"perishable, cold for long":     {trip.TCSYes, 0, account{days: 7.1}, 0, 0, false, coldTooLong},
		"perishable, box unknown":       {trip.TCSYes, 0, account{unknown: true}, 0, 0, false, placeUnknown},
		"perishable, within its life":   {trip.TCSYes, 20, account{used: 3, days: 12}, 0, 0, false, keeps},
		"perishable and too old":        {trip.TCSYes, 20, account{used: 21, days: 12}, 0, 0, false, pastShelf},
		"control unknown and warm":      {trip.TCSUnknown, 20, account{dose: 1}, 1, 0, false, controlUnknown},
		"control unknown, kept cold":    {trip.TCSUnknown, 20, account{dose: 0.5, used: 1}, 0.5, 0, false, keeps},
		"opened and warm":               {trip.TCSNo, 20, account{}, 1, 0, true, openTooLong},
		"opened a little before":        {trip.TCSNo, 20, account{}, 0.9, 0, true, keeps},
		"soaked too long":               {trip.TCSNo, 20, account{}, 1, 1, false, soakedTooLong},
		"warm and then soaked":          {trip.TCSYes, 20, account{dose: 0.6}, 1.1, 0.5, false, warmTooLong},
	} {
		w := ware{food: &food, control: c.control, shelfDays: c.shelf}
		j := &judge{}
		if have := j.reasonFor(&w, &c.a, c.dose, c.soaked, c.opened); have != c.want {
			t.Errorf("%s: have %q, want %q", name, have.words(), c.want.words())
		}
	}
}

func TestWhatIsKeptColdAtHome(t *testing.T) {
	fridge := trip.DefaultSettings()
	for name, c := range map[string]struct {
		food trip.Food
		want bool
	}{
		"perishable":         {trip.Food{Storage: trip.Storage{TCS: trip.TCSYes}}, true},
		"unknown":            {trip.Food{}, true},
		"keeps for years":    {trip.Food{Storage: trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(700.0)}}, false},
		"keeps for ten days": {trip.Food{Storage: trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(10.0)}}, true},
		"nobody knows":       {trip.Food{Storage: trip.Storage{TCS: trip.TCSNo}}, false},
	} {
		w := wareOf(&c.food)
		if have := w.keptCold(&fridge); have != c.want {
			t.Errorf("%s: have %v", name, have)
		}
		none := fridge
		none.HomeFridge = false
		if w.keptCold(&none) {
			t.Errorf("%s: there is no refrigerator", name)
		}
	}
}

func TestWareTakesTheWorst(t *testing.T) {
	for name, c := range map[string]struct {
		storage trip.Storage
		form    trip.Form
		want    trip.TCS
		q10     float64
	}{
		"stable":                    {trip.Storage{TCS: trip.TCSNo, Q10: 3}, trip.Dry, trip.TCSNo, 3},
		"Q10 not given":             {trip.Storage{TCS: trip.TCSNo}, trip.Dry, trip.TCSNo, 2},
		"Q10 below one":             {trip.Storage{TCS: trip.TCSNo, Q10: 0.5}, trip.Dry, trip.TCSNo, 1},
		"a word nobody knows":       {trip.Storage{TCS: "perhaps"}, trip.Dry, trip.TCSUnknown, 2},
		"cream, opened when packed": {trip.Storage{TCS: trip.TCSNo, TCSWhenOpen: true}, trip.Liquid, trip.TCSYes, 2},
		"powder, wetted when eaten": {trip.Storage{TCS: trip.TCSNo, TCSWhenOpen: true}, trip.Powder, trip.TCSNo, 2},
		"unknown and opened":        {trip.Storage{TCSWhenOpen: true}, trip.Piece, trip.TCSUnknown, 2},
	} {
		food := trip.Food{Storage: c.storage, Form: c.form}
		if w := wareOf(&food); w.control != c.want || w.q10 != c.q10 {
			t.Errorf("%s: have %s and %v", name, w.control, w.q10)
		}
	}
}

// A package of 200 g: what is left over is open until it is eaten up.
func TestPackagesOpenOneAfterTheOther(t *testing.T) {
	made := &trip.Trip{Foods: []trip.Food{{
		ID: 1, PackedAsBought: true, Storage: trip.Storage{TCSWhenOpen: true},
		Packages: []trip.Package{{Net: 400 * units.Gram}, {Net: 200 * units.Gram}},
	}}}
	serve := func(day int, meal trip.Meal, grams int) serving {
		return serving{day: day, meal: meal, group: 1, food: 1, mass: units.Mass(grams) * units.Gram}
	}
	list := []serving{
		serve(1, trip.Lunch, 150), serve(1, trip.Dinner, 50), // one package, half a day apart
		serve(2, trip.Dinner, 200),                            // a whole one
		serve(3, trip.Lunch, 300), serve(4, trip.Dinner, 100), // two, the second open overnight
		serve(5, trip.Lunch, 210), serve(6, trip.Lunch, 210), // a third is opened on the second day
		serve(7, trip.Lunch, 10),
	}
	markOpened(made, list)
	for i, want := range []*moment{
		nil, {0, 12.5}, nil, nil, {2, 12.5}, nil, {4, 12.5}, {5, 12.5},
	} {
		have := list[i].openedAt
		if (have == nil) != (want == nil) || have != nil && *have != *want {
			t.Errorf("serving %d: opened at %v, want %v", i, have, want)
		}
	}
	other := serve(1, trip.Dinner, 50)
	other.leg = 1
	apart := []serving{serve(1, trip.Lunch, 150), other}
	markOpened(made, apart)
	if apart[1].openedAt != nil {
		t.Error("the next leg begins with fresh packages")
	}
}

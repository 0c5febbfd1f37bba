package carry

import (
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// A bottle stays as large as it was; 9.2 g of film, which is 10 mL of solid
// polyethylene, takes four times that pressed by hand.
func TestWhatIsLeftTakesRoom(t *testing.T) {
	c := calculation{Work: Work{Trip: &trip.Trip{Bags: []trip.BagType{
		{Name: "Bottle", Nominal: 500 * units.Millilitre, Liquids: true}, {Name: "Bag", Nominal: 3 * units.Litre},
	}}}}
	for kind, want := range map[string]units.Volume{"Bottle": 500 * units.Millilitre, "Bag": 40 * units.Millilitre, trip.AsBought: 40 * units.Millilitre} {
		if got := c.emptied(&bags.Bag{Type: kind, Tare: 9200 * units.Milligram}); got != want {
			t.Errorf("%s: %v, want %v", kind, got, want)
		}
	}
}

// Where something eaten is carried it takes room, and nothing eaten goes back
// into a bag before the stage ends.
func TestWasteTakesRoom(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := mustCompute(rt, crewWork(rt))
		for _, s := range r.Stages {
			for _, m := range r.Members {
				var before units.Volume
				for day := s.FirstDay; day <= s.LastDay; day++ {
					now := m.Days[day-1]
					if now.Present && (now.Waste >= units.Gram && now.WasteRoom == 0 || now.WasteRoom < before) {
						rt.Fatalf("member %d on day %d: %v of waste takes %v, before %v", m.Member, day, now.Waste, now.WasteRoom, before)
					}
					before = now.WasteRoom
				}
			}
		}
	})
}

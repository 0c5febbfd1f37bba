package naming_test

import (
	"testing"

	"sumpter/domain/carry"
	"sumpter/domain/naming"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

func TestThingsAreNamedAsTheLeaderDoes(t *testing.T) {
	tr := &trip.Trip{Crew: []trip.Member{{ID: 1, Name: "Ines"}}, Foods: []trip.Food{{ID: 2, Name: "Oats"}}, Gear: []trip.Gear{{ID: 3, Name: "Large pot"}}}
	bag := func(key string) prose.Text { return prose.Say("bag %s", key) }
	for want, got := range map[string]prose.Text{
		"Ines":                            naming.Member(tr, 1),
		"somebody who is not in the crew": naming.Member(tr, 9),
		"Oats":                            naming.Food(tr, 2),
		"a food that is not in the trip":  naming.Food(tr, 9),
		"Large pot":                       naming.Thing(tr, nil, carry.Item{Kind: carry.GearItem, Key: "3"}, bag),
		"bag 1-02W":                       naming.Thing(tr, nil, carry.Item{Kind: carry.BagItem, Key: "1-02W"}, bag),
	} {
		if got.String() != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

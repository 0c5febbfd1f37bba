package onward_test

import (
	"slices"
	"testing"

	"sumpter/domain/carry"
	"sumpter/domain/onward"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// What is decided is how it goes on from then: nothing is asked again, the
// things are where they were given, and stay there on the next morning.
func TestADecisionHolds(t *testing.T) {
	p := planned(t, triptest.Large(6, 6, 3))
	leaver := p.Trip.Crew[2].ID
	for choice := -1; choice < 3; choice++ {
		done := trip.Progress{CrewChanges: []trip.CrewChange{{Member: leaver, Day: 4}}}
		before := onwards(t, p, done, 4)
		if before.Decided || len(before.Choices) < 2 {
			t.Fatalf("decided %v, %d choices", before.Decided, len(before.Choices))
		}
		if choice >= len(before.Choices) {
			break
		}
		decided := before.Decide(choice, true)
		onward.Store(&done, decided)
		after := onwards(t, p, done, 4)
		if !after.Decided || len(after.Choices) > 0 {
			t.Errorf("choice %d is asked for again", choice)
		}
		for _, day := range []int{4, 5} {
			for _, over := range decided.HandOvers {
				if have := carrier(onwards(t, p, done, day), over, day); have != over.To && have != 0 {
					t.Errorf("choice %d, day %d: %+v is with %d", choice, day, over, have)
				}
			}
		}
		for _, h := range onwards(t, p, done, 5).HandOvers {
			t.Errorf("choice %d: %s changes hands again on day 5", choice, h.Item.Key)
		}
	}
}

func carrier(rest *onward.Rest, over trip.HandOver, day int) trip.MemberID {
	for _, stage := range rest.Plan.Carry.Stages {
		for _, item := range stage.Items {
			if stage.FirstDay <= day && day <= stage.LastDay && item.Kind == carry.BagItem && item.Key == over.Bag {
				return item.Carrier
			}
		}
	}
	return 0
}

// The choices go from few hand-overs to a fair load, and none is beaten.
func TestChoicesTradeHandOversForFairness(t *testing.T) {
	p := planned(t, triptest.Large(6, 6, 3))
	leaver := p.Trip.Crew[2].ID
	rest := onwards(t, p, trip.Progress{CrewChanges: []trip.CrewChange{{Member: leaver, Day: 4}}}, 4)
	taken := 0
	for i, choice := range rest.Choices {
		if choice.Taken {
			taken++
		}
		for _, h := range choice.HandOvers {
			if h.To == leaver || h.To == h.From {
				t.Errorf("choice %d: %+v", i, h)
			}
		}
		if i == 0 {
			continue
		}
		if before := rest.Choices[i-1]; choice.Changes() <= before.Changes() {
			t.Errorf("choice %d has %d changes after %d", i, choice.Changes(), before.Changes())
		}
	}
	if taken != 1 {
		t.Errorf("%d of %d choices are taken", taken, len(rest.Choices))
	}
}

// Somebody who stood by joins: they eat, the others have less, and they carry
// nothing before they are there.
func TestSomebodyJoins(t *testing.T) {
	on := triptest.Large(6, 6, 3)
	guest := on.Crew[0]
	guest.ID, guest.Name, guest.Standby = 99, "Guest", true
	guest.Allergies, guest.Diets, guest.Dislikes = nil, nil, nil
	guest.FirstDay, guest.LastDay = 0, 0
	on.Crew = append(on.Crew, guest)
	p := planned(t, on)
	before := onwards(t, p, trip.Progress{}, 4)
	rest := onwards(t, p, trip.Progress{CrewChanges: []trip.CrewChange{{Member: 99, Day: 4, There: true}}}, 4)
	for i, day := range rest.Days {
		at := slices.IndexFunc(day.Members, func(e onward.Eaten) bool { return e.Member == 99 })
		if at < 0 {
			t.Fatalf("who joined is not there on day %d", day.Number)
		}
		if e := day.Members[at]; e.Target <= 0 || e.Kcal <= 0 {
			t.Errorf("day %d: %+v", day.Number, e)
		}
		if day.Kcal > before.Days[i].Kcal+1 {
			t.Errorf("day %d: %.0f kcal are eaten, %.0f were packed", day.Number, day.Kcal, before.Days[i].Kcal)
		}
	}
	for _, stage := range rest.Plan.Carry.Stages {
		for _, item := range stage.Items {
			if item.Carrier == 99 && stage.FirstDay < 4 {
				t.Errorf("who is not there yet carries %s", item.Key)
			}
		}
	}
}

// Who joins and may not eat what is in the pots gets none of it.
func TestAnAllergicGuestIsServedNothingThatHarms(t *testing.T) {
	on := triptest.Large(6, 6, 3)
	guest := on.Crew[0]
	guest.ID, guest.Name, guest.Standby, guest.Diets, guest.Dislikes = 99, "Guest", true, nil, nil
	guest.FirstDay, guest.LastDay = 0, 0
	guest.Allergies = []trip.Allergy{{Allergen: "no food declares it free"}}
	on.Crew = append(on.Crew, guest)
	p := planned(t, on)
	rest := onwards(t, p, trip.Progress{CrewChanges: []trip.CrewChange{{Member: 99, Day: 3, There: true}}}, 3)
	for _, day := range rest.Days {
		for _, e := range day.Members {
			if e.Member == 99 && e.Kcal > 0 {
				t.Errorf("day %d: %.0f kcal of food that is not known to be safe", day.Number, e.Kcal)
			}
		}
	}
}

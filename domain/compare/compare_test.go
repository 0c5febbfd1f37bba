package compare

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func TestSameTripsDoNotDiffer(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mine := triptest.Trip().Draw(rt, "trip")
		found, err := Between(mine, mine.Clone())
		if err != nil || len(found) > 0 {
			rt.Fatalf("%+v, %v", found, err)
		}
	})
}

// Whoever takes everything has the other's trip; whoever takes nothing keeps
// their own.
func TestTakingAllOrNothing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mine, theirs := triptest.Trip().Draw(rt, "mine"), triptest.Trip().Draw(rt, "theirs")
		found, err := Between(mine, theirs)
		if err != nil {
			rt.Fatal(err)
		}
		kept, err := Take(mine, theirs, nil)
		if err != nil || !sameJSON(rt, kept, mine) {
			rt.Fatalf("taking nothing changed the trip, %v", err)
		}
		all, err := Take(mine, theirs, found)
		if err != nil {
			rt.Fatal(err)
		}
		left, err := Between(all, theirs)
		if err != nil || len(left) > 0 {
			rt.Fatalf("still different: %+v, %v", left, err)
		}
	})
}

func sameJSON(t interface{ Fatal(...any) }, a, b *trip.Trip) bool {
	one, err := json.Marshal(a.Canonical())
	if err != nil {
		t.Fatal(err)
	}
	two, err := json.Marshal(b.Canonical())
	if err != nil {
		t.Fatal(err)
	}
	return string(one) == string(two)
}

func TestDifferencesAreNamed(t *testing.T) {
	mine := triptest.Large(4, 3, 1)
	theirs := mine.Clone()
	theirs.Title = "The other tour"
	theirs.Crew[1].BodyMass += units.Kilogram
	theirs.Days[2].Ascent += 100
	theirs.Settings.RepeatGap++
	theirs.Gear = append(theirs.Gear, trip.Gear{ID: trip.NextID(theirs.Gear, func(g *trip.Gear) trip.GearID { return g.ID }), Name: "spare tarp", Kind: trip.Shelter, Mass: 500 * units.Gram})
	theirs.Menu = theirs.Menu[1:]
	found, err := Between(mine, theirs)
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, difference := range found {
		text := difference.List + "/" + difference.Name + "/" + string(difference.Kind)
		for _, field := range difference.Fields {
			text += "/" + field.Name
		}
		said = append(said, text)
	}
	want := []string{
		"/title/changed/title",
		"crew/" + mine.Crew[1].Name + "/changed/body_mass_g",
		"days/3/changed/ascent_m",
		"gear/spare tarp/only theirs",
		fmt.Sprintf("menu/%d %s/only mine", mine.Menu[0].Day, mine.Menu[0].Meal),
		"settings/repeat_gap_days/changed/repeat_gap_days",
	}
	have := strings.Join(said, "\n")
	for _, line := range want {
		if !strings.Contains(have+"\n", line+"\n") {
			t.Errorf("%q is missing", line)
		}
	}
	if t.Failed() || len(said) != len(want) {
		t.Errorf("have\n%s", have)
	}
	crew, err := Take(mine, theirs, found[1:2])
	if err != nil || crew.Title != mine.Title || len(crew.Menu) != len(mine.Menu) {
		t.Errorf("more was taken than chosen: %v", err)
	}
}

// A dish whose recipe is left behind makes no trip.
func TestTakingHalfAThingIsRefused(t *testing.T) {
	mine := triptest.Large(4, 3, 1)
	theirs := mine.Clone()
	recipe := theirs.Recipes[0]
	recipe.ID, recipe.Name = 9999, "New stew"
	theirs.Recipes = append(theirs.Recipes, recipe)
	theirs.Menu[0].Dishes = []trip.Dish{{Recipe: 9999}}
	found, err := Between(mine, theirs)
	if err != nil {
		t.Fatal(err)
	}
	for _, difference := range found {
		_, err := Take(mine, theirs, []Difference{difference})
		if (difference.List == "menu") != (err != nil) {
			t.Errorf("%s: %v", difference.List, err)
		}
	}
	if _, err := Take(mine, theirs, found); err != nil {
		t.Error(err)
	}
}

package foods

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

type presencesOf = map[trip.Allergen]trip.Presence

// The names are those of Regulation (EU) 1169/2011 Annex II and 21 USC
// 321(qq); how sheets write them is common practice, no source.
func TestWhatALabelDeclaresIsRead(t *testing.T) {
	for text, want := range map[string]presencesOf{
		"milk":                          {trip.Milk: trip.Contains},
		"Milk, Soya; may contain nuts.": {trip.Milk: trip.Contains, trip.Soybeans: trip.Contains, trip.Nuts: trip.MayContain},
		"Contains: wheat and eggs. May contain traces of tree nuts and sesame": {trip.Wheat: trip.Contains, trip.Eggs: trip.Contains, trip.Nuts: trip.MayContain, trip.Sesame: trip.MayContain},
		"E: milk; M: peanuts, celery":                                          {trip.Milk: trip.Contains, trip.Peanuts: trip.MayContain, trip.Celery: trip.MayContain},
		"milk (traces), fish":                                                  {trip.Milk: trip.MayContain, trip.Fish: trip.Contains},
		"peanuts: may contain; lupin: contains":                                {trip.Peanuts: trip.MayContain, trip.Lupin: trip.Contains},
		"gluten-free, contains almonds":                                        {trip.Gluten: trip.Free, trip.Almonds: trip.Contains},
		"glutenfrei, milch":                                                    nil, // German names in a German window only
		"free of gluten; free of milk":                                         {trip.Gluten: trip.Free, trip.Milk: trip.Free},
		"no fish, contains molluscs":                                           {trip.Fish: trip.Free, trip.Molluscs: trip.Contains},
		"may contain milk; contains milk":                                      {trip.Milk: trip.Contains},
		"free of milk; may contain milk":                                       {trip.Milk: trip.MayContain},
		"unknown: sesame, contains mustard":                                    {trip.Sesame: trip.NotKnown, trip.Mustard: trip.Contains},
		"lactose":                                                              {trip.Milk: trip.Contains},
		"brazil nuts & pistachios":                                             {trip.BrazilNuts: trip.Contains, trip.Pistachios: trip.Contains},
	} {
		food := &trip.Food{Name: "Bar"}
		err := setDeclared(food, text, units.Metric)
		if (err == nil) != (want != nil) {
			t.Errorf("%q: %v", text, err)
			continue
		}
		for _, allergen := range trip.KnownAllergens() {
			state, said := want[allergen]
			if !said {
				state = (&trip.Food{Allergens: want}).Presence(allergen)
			}
			if got := food.Presence(allergen); got != state {
				t.Errorf("%q: %s is %s, want %s", text, allergen, got, state)
			}
		}
	}
}

func TestNoneIsSaidOfAllThatMustBeDeclared(t *testing.T) {
	food := &trip.Food{Name: "Rice"}
	if err := setDeclared(food, "None.", units.Metric); err != nil || len(unreadOf(food)) != 0 || len(withPresence(food, trip.Free)) != len(trip.DeclaredAllergens()) {
		t.Errorf("%v, unread %v", err, unreadOf(food))
	}
	food = &trip.Food{Name: "Cheese", Allergens: presencesOf{trip.Milk: trip.Contains}}
	if err := setDeclared(food, "none", units.Metric); err == nil || food.Presence(trip.Milk) != trip.Contains {
		t.Errorf("milk is %s, %v", food.Presence(trip.Milk), err)
	}
}

// A label in the United States names the nine of 21 USC 321(qq): that it names
// none says nothing of barley, celery, mustard or sulfites.
func TestNoneInTheUnitedStatesIsSaidOfTheNine(t *testing.T) {
	food := &trip.Food{Name: "Bouillon", Allergens: presencesOf{trip.Mustard: trip.Free}}
	if err := setDeclared(food, "none", units.US); err != nil {
		t.Fatal(err)
	}
	free := []trip.Allergen{trip.Milk, trip.Eggs, trip.Fish, trip.Crustaceans, trip.Nuts, trip.Wheat, trip.Peanuts, trip.Soybeans, trip.Sesame, trip.Mustard}
	for _, allergen := range trip.DeclaredAllergens() {
		want := trip.NotKnown
		if slices.Contains(free, allergen) {
			want = trip.Free
		}
		if got := food.Presence(allergen); got != want {
			t.Errorf("%s is %s, want %s", allergen, got, want)
		}
	}
	food = &trip.Food{Name: "Broth", Allergens: presencesOf{trip.Celery: trip.Contains}}
	if err := setDeclared(food, "none", units.US); err == nil || food.Presence(trip.Celery) != trip.Contains {
		t.Errorf("celery is %s, %v", food.Presence(trip.Celery), err)
	}
}

func TestWhatIsNotClearIsRefusedAndNothingIsFree(t *testing.T) {
	for text, word := range map[string]string{
		"milk, glue":           "glue",
		"free of gluten, milk": "milk",
		"lactose-free":         "milk",
		"dairy free":           "milk",
		"free of shrimp":       "crustaceans",
		"yes":                  "yes",
		"see packet":           "see packet",
	} {
		food := &trip.Food{Name: "Bar", Allergens: presencesOf{trip.Eggs: trip.Contains}}
		if err := setDeclared(food, text, units.Metric); err == nil || !strings.Contains(err.Error(), word) || food.Presence(trip.Eggs) != trip.Contains || len(food.Allergens) != 1 {
			t.Errorf("%q: %v, %v", text, err, food.Allergens)
		}
	}
	food := &trip.Food{Allergens: presencesOf{trip.Milk: trip.MayContain, trip.Nuts: trip.Contains, trip.Fish: trip.Free}}
	if err := setDeclared(food, "free of milk", units.Metric); err == nil {
		t.Error("a list made free what was contained")
	}
	if err := setDeclared(food, "milk", units.Metric); err != nil || food.Presence(trip.Milk) != trip.Contains || food.Presence(trip.Nuts) != trip.NotKnown || food.Presence(trip.Fish) != trip.Free {
		t.Errorf("%v: %v", err, food.Allergens)
	}
}

// What the cell shows says the same when it is read back.
func TestTheCellReadsBackAsItIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		food := &trip.Food{Name: "Bar", Allergens: presencesOf{}}
		for _, allergen := range trip.KnownAllergens() {
			if state := rapid.SampledFrom(append(presences(), "")).Draw(t, string(allergen)); state != "" {
				food.Allergens[allergen] = state
			}
		}
		before := &trip.Food{Allergens: maps.Clone(food.Allergens)}
		if err := setDeclared(food, allergensInShort(food, units.Metric), units.Metric); err != nil {
			t.Fatalf("%q: %v", allergensInShort(food, units.Metric), err)
		}
		for _, allergen := range trip.KnownAllergens() {
			if was, is := before.Presence(allergen), food.Presence(allergen); was != is {
				t.Fatalf("%q: %s was %s, is %s", allergensInShort(before, units.Metric), allergen, was, is)
			}
		}
	})
}

// No text makes an allergen free that it does not name, but for those that say
// so of all.
func TestFreeIsOnlyWhatIsSaidFree(t *testing.T) {
	words := []string{"milk", "nuts", "free", "of", "no", "contains", "may", "gluten", "-", ":", ",", ";", "and", "(", ")", "e", "m", "lactose", "soya"}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 1, 8).Draw(t, "words"), " ")
		food := &trip.Food{Name: "Bar"}
		if setDeclared(food, text, units.Metric) != nil {
			return
		}
		for _, allergen := range trip.DeclaredAllergens() {
			named := strings.Contains(text, string(allergen)) || allergen == trip.Soybeans && strings.Contains(text, "soya")
			if food.Presence(allergen) == trip.Free && (!named || !strings.Contains(text, "free") && !strings.Contains(text, "no")) {
				t.Fatalf("%q makes %s free", text, allergen)
			}
		}
	})
}

// A column of allergens is taken with the table, and what it leaves out is not
// known.
func TestATableTellsAllergens(t *testing.T) {
	d := pantryDesk(t)
	d.table.Paste("Name\tEnergy (kcal)\tAllergens\nRusks\t390\tgluten, wheat; may contain nuts\nTea\t1\t\nRice\t350\tnone\n")
	for name, want := range map[string]presencesOf{
		"Rusks": {trip.Wheat: trip.Contains, trip.Nuts: trip.MayContain, trip.Milk: trip.NotKnown},
		"Tea":   {trip.Wheat: trip.NotKnown, trip.Milk: trip.NotKnown},
		"Rice":  {trip.Wheat: trip.Free, trip.Milk: trip.Free},
	} {
		for allergen, state := range want {
			if got := d.food(name).Presence(allergen); got != state {
				t.Errorf("%s of %s is %s, want %s; said %q", allergen, name, got, state, d.Said)
			}
		}
	}
	d.table.Paste("Name\tEnergy (kcal)\tAllergens\nBread\t250\twheat\nCake\t390\tmilk, sugarr\n")
	for _, want := range []string{"Nothing was pasted", "Cake", "sugarr"} {
		if !strings.Contains(d.Said, want) {
			t.Errorf("said %q, want %q in it", d.Said, want)
		}
	}
}

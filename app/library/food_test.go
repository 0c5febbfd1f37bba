package library

import (
	"strings"
	"testing"

	"sumpter/domain/trip"
)

func food(t *testing.T, id string) trip.Food {
	t.Helper()
	f, ok := Food(id)
	if !ok {
		t.Fatalf("no food %s", id)
	}
	return f
}

func TestUnknownNumberIsNoFood(t *testing.T) {
	if _, ok := Food("99999"); ok {
		t.Error("99999 is a food")
	}
	if _, ok := Lookup(""); ok {
		t.Error("the empty number is a food")
	}
}

func TestAllergenStates(t *testing.T) {
	const c, u, f = trip.Contains, trip.NotKnown, trip.Free
	cases := []struct {
		id, name string
		allergen trip.Allergen
		want     trip.Presence
	}{
		{"20120", "pasta", trip.Gluten, c},
		{"20120", "pasta", trip.Wheat, c},
		{"20120", "pasta: the label must tell", trip.Eggs, u},
		{"20120", "pasta: not declared, not plain", trip.Soybeans, u},
		{"20005", "pearl barley", trip.Gluten, c},
		{"20005", "pearl barley: not on the table, still not free", trip.Wheat, u},
		{"08120", "oats", trip.Gluten, c},
		{"08120", "oats: by cross-contact", trip.Wheat, u},
		{"16098", "peanut butter", trip.Peanuts, c},
		{"16098", "peanut butter", trip.Nuts, u},
		{"04042", "peanut oil: the label must tell", trip.Peanuts, u},
		{"12061", "almonds", trip.Nuts, c},
		{"12061", "almonds", trip.Almonds, c},
		{"12061", "almonds", trip.Walnuts, u},
		{"16144", "red lentils: often milled beside wheat", trip.Gluten, u},
		{"01001", "butter", trip.Milk, c},
		{"01001", "butter", trip.Gluten, f},
		{"02047", "salt", trip.Gluten, f},
		{"11124", "carrots", trip.Celery, f},
		{"11143", "celery", trip.Celery, c},
		{"11143", "celery", trip.Peanuts, f},
		{"09298", "raisins: sulphites are often added", trip.Sulphites, u},
		{"09032", "sulphured apricots", trip.Sulphites, c},
		{"19411", "crisps", trip.Milk, u},
		{"01003", "ghee", trip.Milk, c},
		{"15121", "tuna", trip.Fish, c},
		{"13047", "a food nobody judged", trip.Milk, u},
	}
	for _, k := range cases {
		f := food(t, k.id)
		if got := f.Presence(k.allergen); got != k.want {
			t.Errorf("%s %s, %s: %s, want %s", k.id, k.name, k.allergen, got, k.want)
		}
	}
}

// A label word always makes the state unknown, and only plain foods are ever
// free of anything: silence of a typical recipe is no promise.
func TestNothingUnreadIsFree(t *testing.T) {
	plain := 0
	for _, e := range All() {
		f := e.Food()
		for _, allergen := range trip.KnownAllergens() {
			state := f.Presence(allergen)
			if state == trip.Free && (e.Trail == nil || !e.Trail.Plain) {
				t.Fatalf("%s %s is said to be free of %s", e.ID, e.Name, allergen)
			}
			if e.Trail == nil {
				continue
			}
			for _, word := range e.Trail.CheckLabel {
				if word == allergen && state != trip.NotKnown && state != trip.Contains {
					t.Errorf("%s %s: %s is %s though the label must be read", e.ID, e.Name, allergen, state)
				}
			}
		}
		if e.Trail != nil && e.Trail.Plain {
			plain++
			if len(e.Trail.CheckLabel) > 0 {
				t.Errorf("%s %s is plain and yet its label must be read", e.ID, e.Name)
			}
		}
	}
	if plain < 20 || plain > 40 {
		t.Errorf("%d plain foods", plain)
	}
}

func TestDiets(t *testing.T) {
	const yes, no, open = trip.Suits, trip.DoesNotSuit, trip.SuitsUnknown
	cases := []struct {
		id, name string
		diet     trip.Diet
		want     trip.Suitability
	}{
		{"16144", "lentils", trip.Vegan, yes},
		{"16144", "lentils", trip.NoPork, yes},
		{"19296", "honey", trip.Vegan, no},
		{"19296", "honey", trip.Vegetarian, yes},
		{"01009", "cheddar: rennet", trip.Vegetarian, open},
		{"01009", "cheddar: rennet of what animal", trip.NoPork, open},
		{"01009", "cheddar", trip.Vegan, no},
		{"07071", "salami", trip.NoPork, no},
		{"07071", "pork salami may hold beef", trip.NoBeef, open},
		{"07072", "salami of both", trip.NoBeef, no},
		{"07072", "salami of both", trip.NoPork, no},
		{"19002", "beef jerky", trip.NoBeef, no},
		{"19002", "beef jerky: the recipe", trip.NoPork, open},
		{"05311", "tinned chicken", trip.NoPork, yes},
		{"05311", "tinned chicken", trip.Pescatarian, no},
		{"05284", "tinned turkey in broth: the label", trip.NoPork, open},
		{"06075", "beef stock", trip.NoBeef, no},
		{"06075", "beef stock", trip.NoPork, open},
		{"15121", "tuna", trip.NoPork, yes},
		{"15121", "tuna", trip.Vegetarian, no},
		{"04002", "lard", trip.NoPork, no},
		{"19116", "marshmallows: gelatine", trip.NoPork, open},
		{"16144", "lentils", trip.Halal, open},
		{"19120", "milk chocolate", trip.LactoseFree, open},
		{"04053", "olive oil", trip.LactoseFree, yes},
		{"13047", "beef", trip.NoBeef, no},
		{"13047", "beef", trip.NoPork, open},
		{"17089", "veal is of cattle", trip.NoBeef, no},
	}
	for _, k := range cases {
		f := food(t, k.id)
		if got := f.Suitability(k.diet); got != k.want {
			t.Errorf("%s %s, %s: %s, want %s", k.id, k.name, k.diet, got, k.want)
		}
	}
}

func TestNoMeatEverSuitsAVegetarian(t *testing.T) {
	meat := map[string]bool{"Pork Products": true, "Beef Products": true, "Poultry Products": true, "Lamb, Veal, and Game Products": true, "Finfish and Shellfish Products": true}
	for _, e := range All() {
		f := e.Food()
		if meat[e.Group] && f.Suitability(trip.Vegetarian) != trip.DoesNotSuit {
			t.Fatalf("%s %s: %s", e.ID, e.Description, f.Suitability(trip.Vegetarian))
		}
		if e.Group == "Pork Products" && f.Suitability(trip.NoPork) != trip.DoesNotSuit {
			t.Fatalf("%s %s is no pork", e.ID, e.Description)
		}
		if contains, _ := f.Allergens[trip.Milk]; contains == trip.Contains && f.Suitability(trip.Vegan) != trip.DoesNotSuit {
			t.Errorf("%s %s holds milk and suits vegans", e.ID, e.Name)
		}
	}
}

func TestStorage(t *testing.T) {
	cases := []struct {
		id      string
		tcs     trip.TCS
		open    bool
		q10     float64
		softens float64 // 0: never
		crush   bool
		form    trip.Form
	}{
		{"20120", trip.TCSNo, false, 2, 0, false, trip.Dry},
		{"05064", trip.TCSYes, false, 2, 0, false, trip.Piece},
		{"05311", trip.TCSNo, true, 2, 0, false, trip.Piece},
		{"19902", trip.TCSNo, false, 3, 30, false, trip.Piece},
		{"04047", trip.TCSNo, false, 3, 24, false, trip.Liquid},
		{"19411", trip.TCSNo, false, 3, 0, true, trip.Dry},
		{"01212", trip.TCSNo, false, 3, 0, false, trip.Powder},
		{"16098", trip.TCSNo, false, 3, 0, false, trip.Spread},
		{"13047", trip.TCSUnknown, false, 2, 0, false, trip.Piece},
	}
	for _, k := range cases {
		f := food(t, k.id)
		s := f.Storage
		softens, melts := s.SoftensAt.Get()
		if s.TCS != k.tcs || s.TCSWhenOpen != k.open || s.Q10 != k.q10 || melts != (k.softens > 0) || float64(softens) != k.softens || s.Crushable != k.crush || f.Form != k.form {
			t.Errorf("%s %s: %+v, form %s", k.id, f.Name, s, f.Form)
		}
		if s.Basis == "" {
			t.Errorf("%s %s: storage without a basis", k.id, f.Name)
		}
	}
}

func TestShellsAreNotRefuseOfShelledNuts(t *testing.T) {
	for id, want := range map[string]float64{"12061": 0, "12155": 0, "12151": 0.47, "11352": 0.03, "09040": 0.36, "12005": 0} {
		if got := food(t, id).RefuseShare; got != want {
			t.Errorf("%s: refuse %g, want %g", id, got, want)
		}
	}
}

// Every food says what its figures rest on, and every trail food has a form
// the bags know and a name of its own.
func TestEveryFoodTellsItsBasis(t *testing.T) {
	names := map[string]string{}
	for _, e := range All() {
		f := e.Food()
		if !strings.Contains(f.Notes, "Nutrients: USDA") || f.Source != "USDA SR28 "+e.ID {
			t.Fatalf("%s: source %q, notes %q", e.ID, f.Source, f.Notes)
		}
		if f.RefuseShare < 0 || f.RefuseShare >= 1 {
			t.Errorf("%s %s: refuse %g", e.ID, e.Name, f.RefuseShare)
		}
		if e.Trail == nil {
			continue
		}
		if !strings.Contains(f.Notes, "label") || !strings.HasPrefix(f.Storage.Basis, "judgement: ") {
			t.Errorf("%s: notes %q, storage %q", e.ID, f.Notes, f.Storage.Basis)
		}
		switch f.Form {
		case trip.Dry, trip.Powder, trip.Liquid, trip.Spread, trip.Piece:
		default:
			t.Errorf("%s: form %q", e.ID, f.Form)
		}
		if other, taken := names[e.Name]; taken {
			t.Errorf("%s and %s are both called %q", other, e.ID, e.Name)
		}
		names[e.Name] = e.ID
	}
}

// Every food may be put into a trip as it is: the trip's own check finds
// nothing to say but that long names can fall together.
func TestEveryFoodFitsATrip(t *testing.T) {
	all := All()
	for start := 0; start < len(all); start += trip.MaxFoods {
		demo := trip.Trip{}
		for i := start; i < min(start+trip.MaxFoods, len(all)); i++ {
			f := all[i].Food()
			f.ID = trip.FoodID(i + 1)
			demo.Foods = append(demo.Foods, f)
		}
		for _, problem := range trip.Validate(&demo) {
			if problem.Where.List == "foods" && !strings.Contains(problem.What.String(), "is already that of") {
				t.Fatal(problem)
			}
		}
	}
}

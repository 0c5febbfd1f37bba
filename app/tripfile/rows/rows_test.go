package rows

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func TestLoadUndoesDump(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		snapshot, err := Dump(made)
		if err != nil {
			rt.Fatal(err)
		}
		back, err := Load(snapshot)
		if err != nil {
			rt.Fatal(err)
		}
		if !reflect.DeepEqual(back, made) {
			rt.Fatalf("have %+v\nwant %+v", back, made)
		}
	})
}

func TestRowsFitTheirColumns(t *testing.T) {
	snapshot, err := Dump(triptest.Large(20, 10, 1))
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for i, table := range Tables() {
		if seen[table.Name] {
			t.Errorf("there are two tables %s", table.Name)
		}
		seen[table.Name] = true
		if table.Keys > most {
			t.Errorf("%s has %d key columns", table.Name, table.Keys)
		}
		for _, row := range snapshot[i] {
			if len(row) != len(table.Columns) {
				t.Fatalf("%s: %d values for %d columns", table.Name, len(row), len(table.Columns))
			}
		}
	}
}

// changesBetween compares two trips as the file does.
func changesBetween(t *testing.T, from, to *trip.Trip) []Change {
	t.Helper()
	old, err := Dump(from)
	if err != nil {
		t.Fatal(err)
	}
	next, err := Dump(to)
	if err != nil {
		t.Fatal(err)
	}
	changes, err := Changes(old, next)
	if err != nil {
		t.Fatal(err)
	}
	return changes
}

func TestAnEditChangesItsRowOnly(t *testing.T) {
	for _, c := range []struct {
		name                   string
		edit                   func(*trip.Trip)
		table                  string
		deletes, updates, adds int
	}{
		{"a member's name", func(t *trip.Trip) { t.Crew[3].Name = "Kim" }, "member", 0, 1, 0},
		{"a setting", func(t *trip.Trip) { t.Settings.FuelReserve = 0.4 }, "settings", 0, 1, 0},
		{"a title", func(t *trip.Trip) { t.Title = "Other" }, "trip", 0, 1, 0},
		{"an amount", func(t *trip.Trip) { t.Recipes[2].Ingredients[1].Amount++ }, "ingredient", 0, 1, 0},
		{"an allergen", func(t *trip.Trip) { t.Foods[4].Allergens[trip.Milk] = trip.MayContain }, "food_allergen", 0, 1, 0},
		{"a dish", func(t *trip.Trip) { t.Menu[9].Dishes[0].Recipe = t.Recipes[0].ID }, "dish", 0, 1, 0},
		{"a new group", func(t *trip.Trip) { t.Groups = append(t.Groups, trip.CookGroup{ID: 99, Name: "New"}) }, "cook_group", 0, 0, 1},
		{"one group less", func(t *trip.Trip) { t.Groups = t.Groups[1:] }, "cook_group", 1, 0, 0},
		{"two groups swapped", func(t *trip.Trip) { t.Groups[0], t.Groups[1] = t.Groups[1], t.Groups[0] }, "cook_group", 0, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			edited := triptest.Large(30, 10, 1)
			c.edit(edited)
			changes := changesBetween(t, triptest.Large(30, 10, 1), edited)
			if len(changes) != 1 {
				t.Fatalf("%d tables change, want 1", len(changes))
			}
			have := changes[0]
			if have.Table.Name != c.table || len(have.Delete) != c.deletes || len(have.Update) != c.updates || len(have.Insert) != c.adds {
				t.Errorf("%s: %d deleted, %d updated, %d inserted; want %s: %d, %d, %d", have.Table.Name,
					len(have.Delete), len(have.Update), len(have.Insert), c.table, c.deletes, c.updates, c.adds)
			}
		})
	}
}

func TestNothingChangedIsNoChange(t *testing.T) {
	if changes := changesBetween(t, triptest.Large(30, 10, 1), triptest.Large(30, 10, 1)); len(changes) != 0 {
		t.Errorf("%d tables change", len(changes))
	}
}

// Carrying out the changes on one state must give the other, whatever the two
// are, with the order of the lists.
func TestChangesLeadFromOneTripToAnother(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		state := make(Snapshot, len(Tables()))
		for range 3 {
			want := triptest.Trip().Draw(rt, "trip")
			next, err := Dump(want)
			if err != nil {
				rt.Fatal(err)
			}
			changes, err := Changes(state, next)
			if err != nil {
				rt.Fatal(err)
			}
			state = carryOut(state, changes)
			back, err := Load(state)
			if err != nil {
				rt.Fatal(err)
			}
			if !reflect.DeepEqual(back, want) {
				rt.Fatalf("have %+v\nwant %+v", back, want)
			}
		}
	})
}

// carryOut does what a database does with changes, the plain way.
func carryOut(state Snapshot, changes []Change) Snapshot {
	byName := map[string]Change{}
	for _, change := range changes {
		byName[change.Table.Name] = change
	}
	after := make(Snapshot, len(state))
	for i, table := range Tables() {
		change := byName[table.Name]
		rows := map[Key]Row{}
		for _, row := range state[i] {
			rows[table.KeyOf(row)] = row
		}
		for _, key := range change.Delete {
			delete(rows, key)
		}
		for _, row := range append(change.Update, change.Insert...) {
			rows[table.KeyOf(row)] = row
		}
		after[i] = inOrder(table, rows)
	}
	return after
}

func TestWhatCannotBeStored(t *testing.T) {
	for name, spoil := range map[string]func(*trip.Trip){
		"not a number": func(t *trip.Trip) { t.Crew[0].Appetite = math.NaN() },
		"endless":      func(t *trip.Trip) { t.Days[0].Distance = trip.Day{}.Distance + 1; t.Foods[0].RefuseShare = math.Inf(1) },
		"far date":     func(t *trip.Trip) { t.Start = 1 << 30 },
	} {
		spoilt := triptest.Large(4, 3, 1)
		spoil(spoilt)
		if _, err := Dump(spoilt); err == nil {
			t.Errorf("%s: was stored", name)
		}
	}
}

func TestTwoOfOneKey(t *testing.T) {
	doubled := triptest.Large(4, 3, 1)
	doubled.Crew[1].ID = doubled.Crew[0].ID
	snapshot, err := Dump(doubled)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Changes(make(Snapshot, len(Tables())), snapshot); err == nil || !strings.Contains(err.Error(), "member") {
		t.Errorf("have %v", err)
	}
}

func TestForeignRowsAreRefused(t *testing.T) {
	at := func(name string) int {
		for i, table := range Tables() {
			if table.Name == name {
				return i
			}
		}
		t.Fatalf("no table %s", name)
		return 0
	}
	for name, spoil := range map[string]func(Snapshot){
		"no trip row":        func(s Snapshot) { s[at("trip")] = nil },
		"two settings":       func(s Snapshot) { s[at("settings")] = append(s[at("settings")], s[at("settings")][0]) },
		"text for a number":  func(s Snapshot) { s[at("member")][0][4] = "old" },
		"nothing for text":   func(s Snapshot) { s[at("member")][0][1] = nil },
		"whole for fraction": func(s Snapshot) { s[at("member")][0][6] = int64(2) },
		"not a number":       func(s Snapshot) { s[at("member")][0][6] = math.NaN() },
		"two for a flag":     func(s Snapshot) { s[at("day")][0][12] = int64(2) },
		"bytes for text":     func(s Snapshot) { s[at("food")][0][1] = []byte("oats") },
		"no date":            func(s Snapshot) { s[at("trip")][0][3] = "tomorrow" },
		"meal of no day":     func(s Snapshot) { s[at("day_meal")][0][0] = int64(99) },
		"gap in a list":      func(s Snapshot) { s[at("day")][1][0] = int64(5) },
		"allergen of none":   func(s Snapshot) { s[at("food_allergen")][0][0] = int64(9999) },
	} {
		snapshot, err := Dump(triptest.Large(4, 3, 1))
		if err != nil {
			t.Fatal(err)
		}
		spoil(snapshot)
		if _, err := Load(snapshot); err == nil {
			t.Errorf("%s: was loaded", name)
		}
	}
}

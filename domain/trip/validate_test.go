package trip_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// fault spoils a valid trip in one way and says which one problem it makes.
type fault struct {
	name  string
	spoil func(*trip.Trip)
	where string // list, index and field
	what  string // part of What
}

// plain is a small valid trip with two of most things.
func plain() *trip.Trip {
	t := triptest.Large(4, 6, 3)
	t.Groups = append(t.Groups, trip.CookGroup{ID: 90, Name: "Second"})
	t.Currency = "EUR"
	t.Pins = []trip.Pin{{Gear: t.Gear[0].ID, Member: t.Crew[0].ID}}
	t.Crew[0].Allergies, t.Crew[0].Diets = nil, nil
	return t
}

func checkFaults(t *testing.T, faults []fault) {
	t.Helper()
	if problems := trip.Validate(plain()); len(problems) > 0 {
		t.Fatalf("the plain trip is not valid: %v", problems)
	}
	for _, f := range faults {
		t.Run(f.name, func(t *testing.T) {
			spoilt := plain()
			f.spoil(spoilt)
			problems := trip.Validate(spoilt)
			if len(problems) != 1 {
				t.Fatalf("%d problems, want 1: %v", len(problems), problems)
			}
			got := problems[0]
			where := fmt.Sprintf("%s %d %s", got.Where.List, got.Where.Index, got.Where.Field)
			if where != f.where || !strings.Contains(got.What.String(), f.what) {
				t.Errorf("got  %q: %q\nwant %q: ...%q...", where, got.What, f.where, f.what)
			}
			if got.Allowed.IsZero() || got.Remedy.IsZero() {
				t.Errorf("what is allowed or the remedy is missing: %+v", got)
			}
		})
	}
}

func TestTripFaults(t *testing.T) {
	checkFaults(t, []fault{
		{"no start", func(t *trip.Trip) { t.Start = 0; t.Settings.PackingNight, t.Settings.ShoppingDay = 0, 0 }, "trip 0 start", "not set"},
		{"start in another age", func(t *trip.Trip) {
			t.Start, t.Settings.PackingNight, t.Settings.ShoppingDay = 10_000_000, 0, 0
		}, "trip 0 start", "out of range"},
		{"unknown units", func(t *trip.Trip) { t.Units = "cubits" }, "trip 0 units", `"cubits"`},
		{"small currency", func(t *trip.Trip) { t.Currency = "eur" }, "trip 0 currency", `"eur"`},
		{"long title", func(t *trip.Trip) { t.Title = strings.Repeat("ä", trip.MaxNameRunes+1) }, "trip 0 title", "121 characters"},
		{"title not text", func(t *trip.Trip) { t.Title = "a\xffb" }, "trip 0 title", "not valid text"},
		{"bell in the notes", func(t *trip.Trip) { t.Notes = "ding\a" }, "trip 0 notes", "U+0007"},
		{"nobody", func(t *trip.Trip) { t.Crew, t.Pins = nil, nil }, "crew 0 ", "0 members"},
		{"no bag types", func(t *trip.Trip) { t.Bags = nil }, "bag_types 0 ", "0 kinds of bag"},
		{"too many members", func(t *trip.Trip) {
			one := t.Crew[0]
			for i := range trip.MaxMembers {
				one.ID, one.Name = trip.MemberID(1000+i), fmt.Sprint("M", i)
				t.Crew = append(t.Crew, one)
			}
			t.Pins = nil
		}, "crew 0 ", "204 members"},
		{"too many days", func(t *trip.Trip) {
			for len(t.Days) <= trip.MaxDays {
				t.Days = append(t.Days, t.Days[0])
			}
		}, "days 0 ", "121 days"},
	})
}

func TestIdentityFaults(t *testing.T) {
	checkFaults(t, []fault{
		{"zero ID", func(t *trip.Trip) { t.Groups[1].ID = 0 }, "groups 2 id", "the ID is 0"},
		{"negative ID", func(t *trip.Trip) { t.Groups[1].ID = -4 }, "groups 2 id", "the ID is -4"},
		{"ID twice", func(t *trip.Trip) { t.Groups[1].ID = t.Groups[0].ID }, "groups 2 id", "already taken"},
		{"no name", func(t *trip.Trip) { t.Crew[1].Name = " " }, "crew 2 name", "empty"},
		{"name twice", func(t *trip.Trip) { t.Crew[1].Name = strings.ToUpper(t.Crew[0].Name) }, "crew 2 name", "already that of number 1"},
		{"blank after the name", func(t *trip.Trip) { t.Crew[1].Name = "Jo " }, "crew 2 name", "blank"},
		{"line break in a name", func(t *trip.Trip) { t.Foods[2].Name = "Oats\nand more" }, "foods 3 name", "U+000A"},
		{"long name", func(t *trip.Trip) { t.Recipes[0].Name = strings.Repeat("o", 500) }, "recipes 1 name", "500 characters"},
		{"fuel name twice", func(t *trip.Trip) { t.Fuels = append(t.Fuels, t.Fuels[0]) }, fmt.Sprintf("fuels %d name", len(plain().Fuels)+1), "already"},
		{"bag name taken by the program", func(t *trip.Trip) { t.Bags[0].Name = trip.AsBought }, "bag_types 1 name", "meaning of its own"},
	})
}

func TestSettingsFaults(t *testing.T) {
	checkFaults(t, []fault{
		{"unknown equation", func(t *trip.Trip) { t.Settings.Walking = "" }, "settings 0 walking_equation", `""`},
		{"party faster than one", func(t *trip.Trip) { t.Settings.PartyFactor = 0.5 }, "settings 0 party_factor", "0.5"},
		{"not a number", func(t *trip.Trip) { t.Settings.StopShare = math.NaN() }, "settings 0 stop_share", "NaN"},
		{"shares sum to 0.9", func(t *trip.Trip) { t.Settings.MealShares.Snack -= 0.1 }, "settings 0 meal_shares", "sum to 0.9"},
		{"negative share", func(t *trip.Trip) { t.Settings.MealShares.Snack = -0.1 }, "settings 0 meal_shares.snack", "-0.1"},
		{"day low above one", func(t *trip.Trip) { t.Settings.DayLow = 1.2 }, "settings 0 day_low", "1.2"},
		{"day high below one", func(t *trip.Trip) { t.Settings.DayHigh = 0.9 }, "settings 0 day_high", "0.9"},
		{"scale that shows nothing", func(t *trip.Trip) { t.Settings.ScaleStep = 0 }, "settings 0 scale_step_g", "0 g"},
		{"gap below zero", func(t *trip.Trip) { t.Settings.RepeatGap = -1 }, "settings 0 repeat_gap_days", "-1"},
		{"packing after the start", func(t *trip.Trip) { t.Settings.PackingNight = t.Start + 1 }, "settings 0 packing_night", "does not fit"},
		{"shopping after packing", func(t *trip.Trip) { t.Settings.ShoppingDay = t.Settings.PackingNight + 1 }, "settings 0 shopping_day", "after the packing night"},
		{"shopping years before", func(t *trip.Trip) { t.Settings.ShoppingDay = t.Start - 1000 }, "settings 0 shopping_day", "does not fit"},
		{"home colder than cold", func(t *trip.Trip) { t.Settings.HomeLow = 30 }, "settings 0 home_low_c", "above the highest"},
		{"boiling water at the start", func(t *trip.Trip) { t.Settings.WaterStart = 100 }, "settings 0 water_start_c", "100"},
		{"no dinner share", func(t *trip.Trip) { t.Settings.DinnerShare = 0 }, "settings 0 dinner_share", "0"},
		{"negative budget", func(t *trip.Trip) { t.Settings.Budget = optional.Of(units.Money(-1)) }, "settings 0 budget", "-0."},
		{"no helpers", func(t *trip.Trip) { t.Settings.Helpers = 0 }, "settings 0 helpers", "0"},
		{"unknown reserve", func(t *trip.Trip) { t.Settings.ReserveRecipe = 99999 }, "settings 0 reserve_recipe", "no recipe with the ID 99999"},
	})
}

func TestCrewFaults(t *testing.T) {
	member := func(spoil func(*trip.Member)) func(*trip.Trip) {
		return func(t *trip.Trip) { spoil(&t.Crew[1]) }
	}
	checkFaults(t, []fault{
		{"no group", member(func(m *trip.Member) { m.Group = 0 }), "crew 2 group", "no cook group with the ID 0"},
		{"unknown sex", member(func(m *trip.Member) { m.Sex = "x" }), "crew 2 sex", `"x"`},
		{"too old", member(func(m *trip.Member) { m.Age = 111 }), "crew 2 age_years", "111 years"},
		{"too young", member(func(m *trip.Member) { m.Age = 4 }), "crew 2 age_years", "4 years"},
		{"pounds as kilograms of a giant", member(func(m *trip.Member) { m.BodyMass = 301 * units.Kilogram }), "crew 2 body_mass_g", "301 kg"},
		{"grams as kilograms", member(func(m *trip.Member) { m.BodyMass = 70 * units.Gram }), "crew 2 body_mass_g", "0.07 kg"},
		{"centimetres as metres", member(func(m *trip.Member) { m.Height = 175 }), "crew 2 height_m", "175 m"},
		{"kilojoules as kcal", member(func(m *trip.Member) { m.GivenNeed = optional.Of(units.Kcal(14_000)) }), "crew 2 given_need_kcal", "14000"},
		{"no appetite", member(func(m *trip.Member) { m.Appetite = 0 }), "crew 2 appetite", "0"},
		{"negative strength", member(func(m *trip.Member) { m.Strength = -1 }), "crew 2 strength", "-1"},
		{"negative kit", member(func(m *trip.Member) { m.OwnKit = -1 }), "crew 2 own_kit_g", "-"},
		{"negative room", member(func(m *trip.Member) { m.PackRoom = -1 }), "crew 2 pack_room_ml", "-"},
		{"endless protein", member(func(m *trip.Member) { m.ProteinPer = optional.Of(math.Inf(1)) }), "crew 2 protein_g_per_kg", "Inf"},
		{"negative limit", member(func(m *trip.Member) { m.LoadLimit = optional.Of(units.Mass(-5)) }), "crew 2 load_limit_g", "-"},
		{"joins after the end", member(func(m *trip.Member) { m.FirstDay = 7 }), "crew 2 first_day", "7"},
		{"leaves after the end", member(func(m *trip.Member) { m.LastDay = 7 }), "crew 2 last_day", "7"},
		{"leaves before joining", member(func(m *trip.Member) { m.FirstDay, m.LastDay = 3, 2 }), "crew 2 last_day", "before the first"},
		{"diet twice", member(func(m *trip.Member) { m.Diets = []trip.Diet{trip.Vegan, trip.Vegan} }), "crew 2 diets", "twice"},
		{"empty diet", member(func(m *trip.Member) { m.Diets = []trip.Diet{""} }), "crew 2 diets", "empty"},
		{"allergy twice", member(func(m *trip.Member) {
			m.Allergies = []trip.Allergy{{Allergen: trip.Milk}, {Allergen: trip.Milk, Severe: true}}
		}), "crew 2 allergies", "twice"},
		{"dislikes a ghost", member(func(m *trip.Member) { m.Dislikes = []trip.FoodID{4711} }), "crew 2 dislikes", "4711"},
		{"dislikes twice", func(t *trip.Trip) {
			t.Crew[1].Dislikes = []trip.FoodID{t.Foods[0].ID, t.Foods[0].ID}
		}, "crew 2 dislikes", "twice"},
	})
}

func TestDayFaults(t *testing.T) {
	day := func(spoil func(*trip.Day)) func(*trip.Trip) { return func(t *trip.Trip) { spoil(&t.Days[2]) } }
	checkFaults(t, []fault{
		{"endless walk", day(func(d *trip.Day) { d.Distance = 1e9 }), "days 3 distance_m", "e+09"},
		{"negative ascent", day(func(d *trip.Day) { d.Ascent = -1 }), "days 3 ascent_m", "-1"},
		{"steeper than down", day(func(d *trip.Day) { d.Descent, d.SteepDescent = 100, 200 }), "days 3 steep_descent_m", "more than the whole"},
		{"unknown ground", day(func(d *trip.Day) { d.Terrain = "lava" }), "days 3 terrain", `"lava"`},
		{"camp in space", day(func(d *trip.Day) { d.CampHeight = 9000 }), "days 3 camp_height_m", "9000"},
		{"lunch in the deep", day(func(d *trip.Day) { d.LunchHeight = -4000 }), "days 3 lunch_height_m", "-4000"},
		{"walks in no time", day(func(d *trip.Day) { d.Distance, d.MovingHours = 5000, optional.Of(units.Hours(0)) }), "days 3 moving_hours", "faster than anybody"},
		{"day of 25 hours", day(func(d *trip.Day) { d.MovingHours = optional.Of(units.Hours(25)) }), "days 3 moving_hours", "25 h"},
		{"low above high", day(func(d *trip.Day) { d.Low, d.High = 20, 10 }), "days 3 low_c", "above the highest"},
		{"Fahrenheit as Celsius", day(func(d *trip.Day) { d.High = 86 }), "days 3 high_c", "86"},
		{"unknown meal", day(func(d *trip.Day) { d.Meals = []trip.Meal{"brunch"} }), "days 3 meals", `"brunch"`},
		{"meal twice", day(func(d *trip.Day) { d.Meals = []trip.Meal{trip.Lunch, trip.Lunch} }), "days 3 meals", "twice"},
	})
}

package menu

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestWaysToServeARecipe(t *testing.T) {
	accepted := []trip.Acceptance{{Member: 1, Food: 2, Reason: "read"}}
	dishes := []trip.Dish{{Recipe: 1, For: []trip.MemberID{4, 5}, Accepted: accepted}, {Recipe: 2}}
	recipes := func(list []trip.Dish) (ids []trip.RecipeID) {
		for _, d := range list {
			ids = append(ids, d.Recipe)
		}
		return ids
	}
	for _, c := range []struct {
		name string
		got  []trip.Dish
		want []trip.RecipeID
	}{
		{"only another", only(dishes, 9), []trip.RecipeID{9}},
		{"only one that is there", only(dishes, 1), []trip.RecipeID{1}},
		{"instead of the first", replaced(dishes, 0, 9), []trip.RecipeID{9, 2}},
		{"instead of itself", replaced(dishes, 0, 1), []trip.RecipeID{1, 2}},
		{"instead of the first by the second", replaced(dishes, 0, 2), []trip.RecipeID{2}},
		{"instead of the second by the first", replaced(dishes, 1, 1), []trip.RecipeID{1}},
		{"beside", added(dishes, 9, nil), []trip.RecipeID{1, 2, 9}},
		{"beside what is there already", added(dishes, 2, nil), []trip.RecipeID{1, 2}},
	} {
		if !slices.Equal(recipes(c.got), c.want) {
			t.Errorf("%s: %v, want %v", c.name, recipes(c.got), c.want)
		}
	}
	if other := replaced(dishes, 0, 9)[0]; !slices.Equal(other.For, dishes[0].For) || len(other.Accepted) != 0 {
		t.Errorf("another dish is for %v and has accepted %v: the people stay, the dangers do not", other.For, other.Accepted)
	}
	if same := only(dishes, 1)[0]; !slices.Equal(same.Accepted, accepted) {
		t.Error("the same dish lost what was decided for it")
	}
	only(dishes, 1)[0].For[0] = 99
	if dishes[0].For[0] != 4 {
		t.Error("a way to serve changed the dishes it was given")
	}
}

func TestServingTheSameAgainIsNoEdit(t *testing.T) {
	s := openDemo(t)
	ways := s.seen.arrangements(lunch3)
	recipe := s.seen.dishes(lunch3)[0].Recipe
	if err := s.serve(lunch3, recipe, ways[0]); err == nil || s.Document.UndoName() != "" || !strings.Contains(s.Said, "already") {
		t.Errorf("err %v, undo %q, said %q", err, s.Document.UndoName(), s.Said)
	}
}

func TestTheFirstWayOfTwoDishesExchangesTheMainOne(t *testing.T) {
	s := openDemo(t)
	ways := s.seen.arrangements(dinner3)
	var words []string
	for _, way := range ways {
		words = append(words, way.words)
	}
	want := []string{"Instead of " + dal, "Instead of " + crumble, "Instead of everything there", "Beside what is there"}
	if !slices.Equal(words, want) {
		t.Errorf("offered: %q", words)
	}
	if one := s.seen.arrangements(lunch3); one[0].words != "Instead of what is there" {
		t.Errorf("of one dish: %q", one[0].words)
	}
	if none := s.seen.arrangements(slot{1, trip.Breakfast, 1}); len(none) != 1 {
		t.Errorf("where nothing is served there are %d ways", len(none))
	}
}

func TestChoicesBeginWithWhatSuitsAndSayWhy(t *testing.T) {
	s := openDemo(t)
	s.at(lunch3)
	s.key(fyne.KeyReturn)
	c := s.side.chooser
	if len(c.all) != len(s.Document.Trip().Recipes) {
		t.Fatalf("%d of %d recipes are listed", len(c.all), len(s.Document.Trip().Recipes))
	}
	others := false
	for i := range c.all {
		one := &c.all[i]
		suits := slices.Contains(s.seen.recipes[one.recipe].Meals, trip.Lunch)
		if one.suits != suits {
			t.Errorf("%s suits lunch: %v, shown %v", one.name, suits, one.suits)
		}
		if others = others || !suits; others && suits {
			t.Errorf("%s suits and comes after what does not", one.name)
		}
		words := c.changes(one) + " · " + c.asides(one)
		for part, wanted := range map[string]bool{
			"not meant for here": !suits, "served now": one.served, "go without": len(one.outcome.Without) > 0, "also day": len(one.days) > 0, "not safe here": len(one.unsafe) > 0,
		} {
			if strings.Contains(words, part) != wanted {
				t.Errorf("%s: %q says %q: %v", one.name, words, part, !wanted)
			}
		}
	}
}

func TestUnitsOfTheLeader(t *testing.T) {
	s := openDemo(t)
	s.edit(func(t *trip.Trip) { t.Units = units.US })
	s.at(dinner3)
	text := s.text()
	if strings.Contains(text, " g ·") || !strings.Contains(text, " oz") || !strings.Contains(text, "°F") {
		t.Errorf("in US units the side says:\n%s", text)
	}
	if head := s.board.columns[2].under; !strings.Contains(head, "mi") || !strings.Contains(head, "°F") {
		t.Errorf("the day says %q", head)
	}
}

func TestTheGridFollowsThemeAndSizeOfText(t *testing.T) {
	s := openDemo(t)
	narrow := s.board.m.cell
	fyne.CurrentApp().Settings().SetTheme(look.Theme{Variant: look.Dark, Scale: 1.5})
	s.board.Refresh()
	if s.board.m.cell.Width != narrow.Width*1.5 {
		t.Errorf("cells are %v wide, were %v", s.board.m.cell.Width, narrow.Width)
	}
	for at, c := range s.board.sheet.shown {
		if c.box.Size() != s.board.m.cell || c.box.Position() != s.board.m.corner(at) {
			t.Fatalf("the cell at %v is %v at %v", at, c.box.Size(), c.box.Position())
		}
		if c.names[0].TextSize != theme.TextSize() {
			t.Fatalf("names are written at %v", c.names[0].TextSize)
		}
		if c.shown.state == decided && c.ground.FillColor != theme.Color(look.Panel) {
			t.Fatal("a cell has the ground of the other theme")
		}
	}
	s.checkShown()
}

func TestGroupsAreChosenAndDaysTell(t *testing.T) {
	s := openDemo(t)
	if len(s.board.rows) != 8 {
		t.Fatalf("two groups have %d rows", len(s.board.rows))
	}
	s.nextGroup()
	s.nextGroup()
	if len(s.board.rows) != 4 || s.board.rows[0].group != 2 {
		t.Errorf("the second group has rows %+v", s.board.rows)
	}
	if under := s.board.columns[1].under; !strings.Contains(under, "no flame") {
		t.Errorf("a day without flame says %q", under)
	}
	s.nextGroup()
	if s.group != 0 {
		t.Errorf("after the last group comes %d", s.group)
	}
}

func TestTheNextTroubleIsFound(t *testing.T) {
	s := openDemo(t)
	s.nextTrouble()
	if !strings.Contains(s.Said, "Nothing is wrong") {
		t.Fatalf("said %q", s.Said)
	}
	for _, k := range []slot{{2, trip.Lunch, 2}, {4, trip.Dinner, 1}} {
		if err := s.clear(k); err != nil {
			t.Fatal(err)
		}
	}
	var found []slot
	for range 3 {
		s.nextTrouble()
		k, _ := s.board.selected()
		found = append(found, k)
	}
	if !slices.Contains(found, slot{2, trip.Lunch, 2}) || !slices.Contains(found, slot{4, trip.Dinner, 1}) {
		t.Errorf("found %v", found)
	}
	if s.Waiting() < 2 {
		t.Errorf("%d wait beside the title", s.Waiting())
	}
}

// TestEveryActionRuns: no command of the menu fails on any slot.
func TestEveryActionRuns(t *testing.T) {
	s := openDemo(t)
	for _, k := range []slot{dinner3, {1, trip.Breakfast, 1}} {
		for _, action := range s.Actions() {
			at, _ := s.board.placeOf(k)
			s.board.moveTo(at, false)
			action.Do()
			s.leavePending()
			if problems := trip.Validate(s.Document.Trip()); action.Name == "" || len(problems) > 0 {
				t.Errorf("%q leaves %v", action.Name, problems)
			}
		}
	}
	if !s.Commit() || s.Name() != "menu" || s.Title() == "" {
		t.Error("the screen is not what the window expects")
	}
}

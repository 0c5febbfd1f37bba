package tripbook

import (
	"strconv"
	"strings"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// scope is what one reading or writing knows besides the cell at hand.
type scope struct {
	system   units.System // of the numbers written
	currency string
	from1904 bool // how the workbook read counts its days

	groups, members, foods, recipes, gear, points names
}

// names links the IDs of one kind of thing to what people call it.
type names struct {
	kind   string // "food"
	sheet  string // where they are listed
	byID   map[int64]string
	byName map[string]int64
}

func newNames(kind, sheet string) names {
	return names{kind: kind, sheet: sheet, byID: map[int64]string{}, byName: map[string]int64{}}
}

func newScope() *scope {
	return &scope{
		groups: newNames("cook group", sheetGroups), members: newNames("member", sheetCrew), foods: newNames("food", sheetFoods),
		recipes: newNames("recipe", sheetRecipes), gear: newNames("piece of gear", sheetGear), points: newNames("resupply point", sheetResupply),
	}
}

// scopeOf gives the scope in which a trip is written.
func scopeOf(t *trip.Trip, system units.System) *scope {
	s := newScope()
	s.system, s.currency = system, t.Currency
	for i := range t.Groups {
		s.groups.add(int64(t.Groups[i].ID), t.Groups[i].Name)
	}
	for i := range t.Crew {
		s.members.add(int64(t.Crew[i].ID), t.Crew[i].Name)
	}
	for i := range t.Foods {
		s.foods.add(int64(t.Foods[i].ID), t.Foods[i].Name)
	}
	for i := range t.Recipes {
		s.recipes.add(int64(t.Recipes[i].ID), t.Recipes[i].Name)
	}
	for i := range t.Gear {
		s.gear.add(int64(t.Gear[i].ID), t.Gear[i].Name)
	}
	for i := range t.Points {
		s.points.add(int64(t.Points[i].ID), t.Points[i].Name)
	}
	return s
}

// nameKey is how names are compared: as people do, capitals and blanks aside.
func nameKey(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

func (n *names) add(id int64, name string) {
	n.byID[id] = name
	n.byName[nameKey(name)] = id
}

// name gives what to write for an ID: its name, or the bare number of a thing
// that is not there, so that reading it back says so.
func (n *names) name(id int64) string {
	if name, ok := n.byID[id]; ok {
		return name
	}
	return "#" + strconv.FormatInt(id, 10)
}

// id finds a name.
func (n *names) id(name string) (int64, bool) {
	id, ok := n.byName[nameKey(name)]
	return id, ok
}

// allowed says what a reference may be.
func (n *names) allowed() string {
	return "the name of a " + n.kind + " of the trip, as on sheet " + n.sheet
}

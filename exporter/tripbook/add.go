package tripbook

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Added is what a list in a file brings to a trip.
type Added struct {
	Trip  *trip.Trip // the trip with the new things; nil when a problem is more than a note
	Sheet string     // which of the workbook's sheets the headings are those of
	Count int
	// Assumed are the columns the table lacked and what was taken for them, as
	// "Kind: other".
	Assumed []string
}

// AddTable reads new members, foods, gear or recipes from a table under the
// headings of the trip workbook or usual ones, in any order and with their units: the first
// sheet with such headings of a workbook (xlsx), or comma-separated values (RFC
// 4180; semicolons and tabs are taken as well, as spreadsheets copy them). A
// recipe has a row for each ingredient. Nothing that is in the trip changes; a
// name that is there already is a problem. An error means that the file could
// not be read at all.
func AddTable(t *trip.Trip, name string, r io.Reader) (added Added, problems []Problem, err error) {
	start := bufio.NewReader(r)
	if head, _ := start.Peek(2); string(head) == "PK" {
		return addWorkbook(t, start)
	}
	raw, err := readCSV(start)
	if err != nil {
		return Added{}, nil, err
	}
	return addRows(t, name, raw)
}

// addWorkbook takes the first sheet whose headings are known.
func addWorkbook(t *trip.Trip, r io.Reader) (added Added, problems []Problem, err error) {
	defer func() {
		// The library under us has been made to panic by damaged files.
		if broken := recover(); broken != nil {
			added, problems, err = Added{}, nil, damaged(prose.Errorf("%v", broken))
		}
	}()
	file, err := open(r)
	if err != nil {
		return Added{}, nil, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	var none error
	for _, name := range file.GetSheetList() {
		blank := &reading{scope: newScope(), trip: &trip.Trip{}, faulty: map[origin]bool{}, origins: map[string]origin{}}
		raw, err := blank.rawSheet(file, name)
		if err != nil {
			return Added{}, nil, err
		}
		if added, problems, none = addRows(t, name, raw); none == nil {
			return added, problems, nil
		}
	}
	return Added{}, nil, none
}

// addRows reads the rows of one table.
func addRows(t *trip.Trip, name string, raw []gridRow) (Added, []Problem, error) {
	theirs, most := raw, 0
	var list adder
	headings := -1
	for _, candidate := range addable() {
		ours, at := candidate.usual.retitled(candidate.sheet.heads(), theirs)
		probe := &reading{scope: scopeOf(t, t.Units), trip: &trip.Trip{}, faulty: map[origin]bool{}, origins: map[string]origin{}}
		if found := recognised(probe.across(candidate.sheet, name, 0, ours)); found > most {
			list, most, raw, headings = candidate, found, ours, at
		}
	}
	if most < 2 {
		return Added{}, nil, prose.Errorf("%s: take headings such as Name, Age, Body mass (kg) for members, Name, Energy (kcal), Protein, Fat, Carbohydrate for foods, Name, Mass (g) for gear, or Name, Meals, Ingredient, Amount, Water, Minutes, Method for recipes", rowsSeen(theirs))
	}
	raw, assumed := list.usual.assume(t, raw, headings)
	made := &reading{scope: scopeOf(t, t.Units), trip: &trip.Trip{}, faulty: map[origin]bool{}, origins: map[string]origin{}}
	g := made.across(list.sheet, name, 0, raw)
	made.grids = []*grid{g}
	if list.names != nil {
		made.clearIDs(g)
		made.refuseKnownNames(g, list.names(made.scope))
	}
	list.sheet.read(g, made)
	count := 0
	if !Faulty(made.problems) {
		first := list.size(t)
		joined := t.Clone()
		count = list.join(joined, made.trip)
		made.judge(joined, list.sheet.listName(), first)
		made.trip = joined
	}
	made.sort()
	if Faulty(made.problems) {
		return Added{Sheet: list.sheet.title()}, made.problems, nil
	}
	return Added{Trip: made.trip, Sheet: list.sheet.title(), Count: count, Assumed: assumed}, made.problems, nil
}

// rowsSeen says what stands in the first row of a table in which no headings
// were found.
func rowsSeen(raw []gridRow) prose.Text {
	if len(raw) == 0 {
		return prose.Say("the table is empty")
	}
	var cells []string
	for _, text := range raw[0].cells {
		if !isBlank(text) {
			cells = append(cells, shown(text))
		}
		if len(cells) == mostSeen {
			break
		}
	}
	return prose.Say("row %d, with %s, is no row of headings of members, foods, gear or recipes", raw[0].number, strings.Join(cells, ", "))
}

// mostSeen is how many cells of a row a message repeats.
const mostSeen = 4

// adder is a list that can be added to.
type adder struct {
	sheet sheet
	usual usual
	names func(*scope) *names // of lists with a row for each thing
	size  func(*trip.Trip) int
	join  func(to, from *trip.Trip) int
}

func addable() []adder {
	return []adder{
		{crewSheet(), usualCrew(), func(s *scope) *names { return &s.members }, func(t *trip.Trip) int { return len(t.Crew) }, func(to, from *trip.Trip) int {
			for _, member := range from.Crew {
				member.ID = trip.NextID(to.Crew, func(m *trip.Member) trip.MemberID { return m.ID })
				to.Crew = append(to.Crew, member)
			}
			return len(from.Crew)
		}},
		{foodSheet(), usualFoods(), func(s *scope) *names { return &s.foods }, func(t *trip.Trip) int { return len(t.Foods) }, func(to, from *trip.Trip) int {
			for _, food := range from.Foods {
				food.ID = trip.NextID(to.Foods, func(f *trip.Food) trip.FoodID { return f.ID })
				to.Foods = append(to.Foods, food)
			}
			return len(from.Foods)
		}},
		{gearSheet(), usualGear(), func(s *scope) *names { return &s.gear }, func(t *trip.Trip) int { return len(t.Gear) }, func(to, from *trip.Trip) int {
			for _, gear := range from.Gear {
				gear.ID = trip.NextID(to.Gear, func(g *trip.Gear) trip.GearID { return g.ID })
				to.Gear = append(to.Gear, gear)
			}
			return len(from.Gear)
		}},
		{recipeListSheet(), usual{}, nil, func(t *trip.Trip) int { return len(t.Recipes) }, func(to, from *trip.Trip) int {
			for _, recipe := range from.Recipes {
				recipe.ID = trip.NextID(to.Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
				to.Recipes = append(to.Recipes, recipe)
			}
			return len(from.Recipes)
		}},
	}
}

func recognised(g *grid) int {
	found := 0
	for _, column := range g.columns {
		if column.place >= 0 {
			found++
		}
	}
	return found
}

// clearIDs makes every row something new.
func (r *reading) clearIDs(g *grid) {
	id := g.field("id")
	g.columns[id].place = -1
	for i := range g.rows {
		g.rows[i].cells[id] = ""
	}
}

func (r *reading) refuseKnownNames(g *grid, known *names) {
	name := g.field("name")
	if g.columns[name].place < 0 {
		return // the missing column is told already
	}
	first := map[string]int{}
	for i := range g.rows {
		key := nameKey(g.rows[i].cells[name])
		above, twice := first[key]
		switch {
		case key == "":
		case twice:
			r.fault(g, i, name, fmt.Sprintf("is the name of row %d already", g.rows[above].number), "a name that no other row has")
		case known.byName[key] != 0:
			r.fault(g, i, name, "is in the trip already", "a new name, or change it in the program")
		default:
			first[key] = i
		}
	}
}

// judge validates the trip with what is new in it, whose first thing has a
// place in the list.
func (r *reading) judge(joined *trip.Trip, list string, first int) {
	for _, p := range trip.Validate(joined) {
		if p.Where.List == list && p.Where.Index > first {
			p.Where.Index -= first
		}
		at := r.locate(p.Where)
		at.Wrong, at.Allowed = p.What.String(), p.Allowed.String()
		r.report(at)
	}
}

// readCSV reads all rows; the sign between fields is that of the first line.
func readCSV(r io.Reader) ([]gridRow, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("read the table: %w", err)
	case len(data) > MaxBytes:
		return nil, fmt.Errorf("%w: more than %d MB", ErrTooLarge, MaxBytes>>20)
	case !utf8.Valid(data):
		return nil, errors.New("the letters of the file are not UTF-8: save it as CSV UTF-8")
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	lines := csv.NewReader(strings.NewReader(text))
	lines.Comma = separator(text)
	lines.FieldsPerRecord = -1
	var raw []gridRow
	for {
		cells, err := lines.Read()
		if errors.Is(err, io.EOF) {
			return raw, nil
		}
		if err != nil {
			return nil, fmt.Errorf("the table is not well formed: %w", err)
		}
		line, _ := lines.FieldPos(0)
		last := lastFilled(cells)
		if last < 0 {
			continue
		}
		if len(raw) >= maxRows || last >= maxColumns {
			return nil, fmt.Errorf("%w: more than %d filled rows or %d columns", ErrTooLarge, maxRows, maxColumns)
		}
		raw = append(raw, gridRow{line, slices.Clone(cells[:last+1])})
	}
}

func separator(text string) rune {
	head, _, _ := strings.Cut(text, "\n")
	best, most := ',', 0
	for _, sign := range []rune{',', ';', '\t'} {
		if found := strings.Count(head, string(sign)); found > most {
			best, most = sign, found
		}
	}
	return best
}

package crew

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// field is one thing the table holds of a member.
type field struct {
	title, unit string
	also        string // other heads of a pasted table, parted by commas
	width       float32
	number      func(m *trip.Member) float64 // what it sorts by; nil: a text
	text        func(t *trip.Trip, m *trip.Member) string
	edit        func(m *trip.Member) string                           // what the editor starts from; nil: the text
	set         func(t *trip.Trip, m *trip.Member, text string) error // nil: worked out
	choices     func(t *trip.Trip) []string
}

// columns turns the fields into columns of the table.
func (s *Screen) columns() []grid.Column[trip.MemberID] {
	var columns []grid.Column[trip.MemberID]
	s.shown = s.fields()
	for i, f := range s.shown {
		column := grid.Column[trip.MemberID]{
			Title: f.title, Also: typed.List(f.also), Unit: f.unit, Width: f.width, Right: f.number != nil,
			Text: func(id trip.MemberID) string { return s.textOf(i, id) },
		}
		if f.number != nil {
			column.Compare = func(a, b trip.MemberID) int { return cmp.Compare(s.numberOf(i, a), s.numberOf(i, b)) }
		}
		if f.set != nil {
			column.Set = func(id trip.MemberID, text string) error {
				return s.change(id, f.title, func(t *trip.Trip, m *trip.Member) error { return s.shown[i].set(t, m, text) })
			}
		} else {
			column.Tone = func(trip.MemberID) fyne.ThemeColorName { return look.Quiet }
		}
		if f.edit != nil {
			column.EditText = func(id trip.MemberID) string { return s.editTextOf(i, id) }
		}
		if f.choices != nil {
			column.Choices = func(trip.MemberID) []string { return f.choices(s.bench.Trip()) }
		}
		columns = append(columns, column)
	}
	return columns
}

func (s *Screen) textOf(column int, id trip.MemberID) string {
	t := s.bench.Trip()
	m := t.Member(id)
	if m == nil {
		return ""
	}
	return s.shown[column].text(t, m)
}

func (s *Screen) editTextOf(column int, id trip.MemberID) string {
	m := s.bench.Trip().Member(id)
	if m == nil {
		return ""
	}
	return s.shown[column].edit(m)
}

func (s *Screen) numberOf(column int, id trip.MemberID) float64 {
	m := s.bench.Trip().Member(id)
	if m == nil {
		return 0
	}
	return s.shown[column].number(m)
}

// fields lists the columns in the units the leader reads.
func (s *Screen) fields() []field {
	u := s.bench.Units()
	return []field{
		{title: lang.L("Name"), also: lang.X("heads-name", "Member, Person, First name, Full name"), width: 116, text: func(_ *trip.Trip, m *trip.Member) string { return m.Name },
			set: func(_ *trip.Trip, m *trip.Member, text string) error { m.Name = text; return nil }},
		{title: lang.L("Need"), unit: lang.L("kcal a day"), width: 110, number: s.averageNeed,
			text: func(_ *trip.Trip, m *trip.Member) string { return wholeOrDash(s.averageNeed(m)) }},
		{title: lang.L("Age"), width: 52, number: func(m *trip.Member) float64 { return float64(m.Age) },
			text: func(_ *trip.Trip, m *trip.Member) string { return strconv.Itoa(m.Age) },
			set: func(_ *trip.Trip, m *trip.Member, text string) (err error) {
				m.Age, err = typed.Whole(text, 5, 110)
				return err
			}},
		{title: lang.L("Sex"), also: lang.X("heads-sex", "Gender"), width: 84, text: func(_ *trip.Trip, m *trip.Member) string { return lang.L(string(m.Sex)) },
			choices: func(*trip.Trip) []string { return sexWords() }, set: setSex},
		{title: lang.L("Body"), also: lang.X("heads-body", "Weight, Body weight, Mass"), unit: typed.MassUnit(u, true), width: 72, number: func(m *trip.Member) float64 { return float64(m.BodyMass) },
			text: func(_ *trip.Trip, m *trip.Member) string { return bodyText(m, u) },
			edit: func(m *trip.Member) string { return written.Bare(typed.MassText(m.BodyMass, u, true)) },
			set: func(_ *trip.Trip, m *trip.Member, text string) (err error) {
				m.BodyMass, err = typed.Mass(text, u, true)
				return err
			}},
		{title: lang.L("Height"), unit: typed.StatureUnit(u), width: 84, number: func(m *trip.Member) float64 { return float64(m.Height) },
			text: func(_ *trip.Trip, m *trip.Member) string { return written.Bare(typed.StatureText(m.Height, u)) },
			set: func(_ *trip.Trip, m *trip.Member, text string) (err error) {
				m.Height, err = typed.Stature(text, u)
				return err
			}},
		{title: lang.L("Group"), also: lang.X("heads-group", "Cook group"), width: 84, text: groupName, set: setGroup, choices: groupNames},
		{title: lang.L("Allergies"), also: lang.X("heads-allergies", "Allergy, Allergens"), width: 150, text: allergyText, set: setAllergies},
		{title: lang.L("Diets"), also: lang.X("heads-diets", "Diet, Eats"), width: 120, text: dietText, set: setDiets},
		{title: lang.L("From day"), width: 80, number: func(m *trip.Member) float64 { return float64(max(m.FirstDay, 1)) },
			text: func(_ *trip.Trip, m *trip.Member) string { return firstDayText(m) }, set: setFirstDay, choices: firstDays},
		{title: lang.L("To day"), width: 66, number: func(m *trip.Member) float64 { return float64(lastDay(s.bench.Trip(), m)) },
			text: func(t *trip.Trip, m *trip.Member) string { return lastDayText(t, m) },
			set: func(t *trip.Trip, m *trip.Member, text string) (err error) {
				m.LastDay, err = typed.Whole(text, 1, len(t.Days))
				return err
			}},
		{title: lang.L("Own kit"), unit: typed.MassUnit(u, true), width: 88, number: func(m *trip.Member) float64 { return float64(m.OwnKit) },
			text: func(_ *trip.Trip, m *trip.Member) string { return written.Bare(typed.MassText(m.OwnKit, u, true)) },
			set: func(_ *trip.Trip, m *trip.Member, text string) (err error) {
				m.OwnKit, err = typed.Mass(text, u, true)
				return err
			}},
		{title: lang.L("Room"), unit: typed.VolumeUnit(u, true), width: 70, number: func(m *trip.Member) float64 { return float64(m.PackRoom) },
			text: func(_ *trip.Trip, m *trip.Member) string { return written.Bare(typed.VolumeText(m.PackRoom, u, true)) },
			set: func(_ *trip.Trip, m *trip.Member, text string) (err error) {
				m.PackRoom, err = typed.Volume(text, u, true)
				return err
			}},
		{title: lang.L("Limit"), unit: typed.MassUnit(u, true), width: 70, number: func(m *trip.Member) float64 { return float64(m.LoadLimit.Or(0)) },
			text: func(_ *trip.Trip, m *trip.Member) string { return limitText(m, u) },
			set:  func(_ *trip.Trip, m *trip.Member, text string) error { return setLimit(m, text, u) }},
		{title: lang.L("Strength"), unit: "%", width: 92, number: func(m *trip.Member) float64 { return m.Strength },
			text: func(_ *trip.Trip, m *trip.Member) string { return typed.PercentText(m.Strength) },
			set: func(_ *trip.Trip, m *trip.Member, text string) (err error) {
				m.Strength, err = typed.Percent(text)
				return err
			}},
	}
}

// averageNeed is the mean need over the member's days, 0 if not worked out.
func (s *Screen) averageNeed(m *trip.Member) float64 {
	p := s.bench.Plan()
	if p == nil {
		return 0
	}
	for _, member := range p.Needs.Members {
		if member.Member != m.ID {
			continue
		}
		sum, days := 0.0, 0
		for _, day := range member.Days {
			if day.Present {
				sum, days = sum+float64(day.Kcal), days+1
			}
		}
		if days > 0 {
			return sum / float64(days)
		}
	}
	return 0
}

// bodyText writes a body mass as bathroom scales show it.
func bodyText(m *trip.Member, u units.System) string {
	mass := m.BodyMass.Kilograms()
	if u == units.US {
		mass = m.BodyMass.Pounds()
	}
	return written.AtMost(mass, 1)
}

func wholeOrDash(value float64) string {
	if value <= 0 {
		return "–"
	}
	return strconv.FormatFloat(value, 'f', 0, 64)
}

// mayJoin is what stands for the first day of somebody who is planned for no
// day, but may join on the way.
func mayJoin() string { return lang.L("may join") }

func firstDayText(m *trip.Member) string {
	if m.Standby {
		return mayJoin()
	}
	return strconv.Itoa(max(m.FirstDay, 1))
}

func setFirstDay(t *trip.Trip, m *trip.Member, text string) error {
	if strings.EqualFold(strings.TrimSpace(text), mayJoin()) {
		m.Standby, m.FirstDay, m.LastDay = true, 0, 0
		return nil
	}
	first, err := typed.Whole(text, 1, len(t.Days))
	if err == nil {
		m.Standby, m.FirstDay = false, first
	}
	return err
}

// firstDays are the days of the trip and joining on the way.
func firstDays(t *trip.Trip) []string {
	list := make([]string, 0, len(t.Days)+1)
	for day := range t.Days {
		list = append(list, strconv.Itoa(day+1))
	}
	return append(list, mayJoin())
}

func lastDayText(t *trip.Trip, m *trip.Member) string {
	if m.Standby {
		return ""
	}
	return strconv.Itoa(lastDay(t, m))
}

func lastDay(t *trip.Trip, m *trip.Member) int {
	if m.LastDay == 0 {
		return len(t.Days)
	}
	return m.LastDay
}

func limitText(m *trip.Member, u units.System) string {
	if limit, ok := m.LoadLimit.Get(); ok {
		return written.Bare(typed.MassText(limit, u, true))
	}
	return ""
}

func setLimit(m *trip.Member, text string, u units.System) error {
	if strings.TrimSpace(text) == "" {
		m.LoadLimit = optional.Unknown[units.Mass]()
		return nil
	}
	mass, err := typed.Mass(text, u, true)
	if err == nil {
		m.LoadLimit = optional.Of(mass)
	}
	return err
}

func sexWords() []string {
	return []string{lang.L(string(trip.Female)), lang.L(string(trip.Male)), lang.L(string(trip.SexNotGiven))}
}

func setSex(_ *trip.Trip, m *trip.Member, text string) error {
	for _, sex := range []trip.Sex{trip.Female, trip.Male, trip.SexNotGiven} {
		for _, word := range []string{lang.L(string(sex)), string(sex)} {
			if typed.Begins(word, text) {
				m.Sex = sex
				return nil
			}
		}
	}
	return prose.Errorf("%s: %s", lang.L("One of"), strings.Join(sexWords(), ", "))
}

func groupName(t *trip.Trip, m *trip.Member) string {
	if group := t.Group(m.Group); group != nil {
		return group.Name
	}
	return "–"
}

func groupNames(t *trip.Trip) []string {
	var names []string
	for _, group := range t.Groups {
		names = append(names, group.Name)
	}
	return names
}

// setGroup puts a member into a cook group; a name that none has makes one. A
// group nobody is left in goes, unless gear or meals are for it.
func setGroup(t *trip.Trip, m *trip.Member, text string) error {
	name, left := strings.TrimSpace(text), m.Group
	if name == "" {
		return errors.New(lang.L("A cook group needs a name."))
	}
	at := slices.IndexFunc(t.Groups, func(g trip.CookGroup) bool { return strings.EqualFold(g.Name, name) })
	if at < 0 {
		at = len(t.Groups)
		t.Groups = append(t.Groups, trip.CookGroup{ID: trip.NextID(t.Groups, func(g *trip.CookGroup) trip.GroupID { return g.ID }), Name: name})
	}
	m.Group = t.Groups[at].ID
	if !inUse(t, left) {
		t.Groups = slices.DeleteFunc(t.Groups, func(g trip.CookGroup) bool { return g.ID == left })
	}
	return nil
}

// inUse tells whether somebody, gear or a meal belongs to a cook group.
func inUse(t *trip.Trip, group trip.GroupID) bool {
	return slices.ContainsFunc(t.Crew, func(m trip.Member) bool { return m.Group == group }) ||
		slices.ContainsFunc(t.Gear, func(g trip.Gear) bool { return g.Group == group }) ||
		slices.ContainsFunc(t.Menu, func(c trip.Cell) bool { return c.Group == group })
}

func dietText(_ *trip.Trip, m *trip.Member) string {
	words := make([]string, len(m.Diets))
	for i, diet := range m.Diets {
		words[i] = bench.DietWord(diet)
	}
	return strings.Join(words, ", ")
}

func setDiets(_ *trip.Trip, m *trip.Member, text string) error {
	m.Diets = nil
	for _, word := range typed.List(text) {
		m.Diets = append(m.Diets, bench.ReadDiet(word))
	}
	return nil
}

// severeMark follows an allergen whose traces harm: "peanuts (traces)".
func severeMark() string { return "(" + lang.L("traces") + ")" }

func allergyText(t *trip.Trip, m *trip.Member) string {
	words := make([]string, len(m.Allergies))
	for i, allergy := range m.Allergies {
		words[i] = bench.AllergenWord(allergy.Allergen, t.Units)
		if allergy.Severe {
			words[i] += " " + severeMark()
		}
	}
	return strings.Join(words, ", ")
}

// setAllergies reads a list of allergens. What it does not know by name it
// takes as written: every food then has to declare it.
func setAllergies(_ *trip.Trip, m *trip.Member, text string) error {
	m.Allergies = nil
	for _, word := range typed.List(text) {
		name, severe := cutSevere(word)
		if name == "" {
			return errors.New(lang.L("An allergy needs a name."))
		}
		m.Allergies = append(m.Allergies, trip.Allergy{Allergen: bench.ReadAllergen(name), Severe: severe})
	}
	return nil
}

// cutSevere parts an allergen from the mark of severity, in the reader's
// language or ours: a mark that is not understood must never be lost.
func cutSevere(word string) (name string, severe bool) {
	for _, mark := range []string{severeMark(), "(traces)"} {
		if at := len(word) - len(mark); at >= 0 && strings.EqualFold(word[at:], mark) {
			return strings.TrimSpace(word[:at]), true
		}
	}
	return strings.TrimSpace(word), false
}

package route

import (
	"cmp"
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// field is one thing the table holds of a day.
type field struct {
	title, unit string
	also        string // other heads of a pasted table, parted by commas
	width       float32
	right       bool
	text        func(day *trip.Day, number int) string
	edit        func(day *trip.Day, number int) string // what the editor starts from; nil: the text
	order       func(day *trip.Day, number int) float64
	set         func(day *trip.Day, text string) error // nil: worked out, or the whole trip's
	choices     []string
	quiet       func(day *trip.Day) bool
}

// columns turns the fields into columns of the table.
func (s *Screen) columns() []grid.Column[int] {
	var columns []grid.Column[int]
	for i, f := range s.fields() {
		column := grid.Column[int]{
			Title: f.title, Also: typed.List(f.also), Unit: f.unit, Width: f.width, Right: f.right,
			Text: func(number int) string { return s.textOf(number, f.text) },
			Tone: func(number int) fyne.ThemeColorName { return s.toneOf(number, f) },
		}
		if f.edit != nil {
			column.EditText = func(number int) string { return s.textOf(number, f.edit) }
		}
		if f.order != nil {
			column.Compare = func(a, b int) int { return cmp.Compare(s.orderOf(a, f), s.orderOf(b, f)) }
		}
		if f.set != nil {
			column.Set = func(number int, text string) error { return s.change(number, i, text) }
		}
		if f.choices != nil {
			column.Choices = func(int) []string { return f.choices }
		}
		columns = append(columns, column)
	}
	columns[dateColumn].Set = s.setDate
	return columns
}

func (s *Screen) dayOf(number int) *trip.Day {
	if days := s.bench.Trip().Days; number >= 1 && number <= len(days) {
		return &days[number-1]
	}
	return nil
}

func (s *Screen) textOf(number int, text func(*trip.Day, int) string) string {
	if day := s.dayOf(number); day != nil {
		return text(day, number)
	}
	return ""
}

func (s *Screen) orderOf(number int, f field) float64 {
	if day := s.dayOf(number); day != nil {
		return f.order(day, number)
	}
	return 0
}

func (s *Screen) toneOf(number int, f field) fyne.ThemeColorName {
	if day := s.dayOf(number); day != nil && f.quiet != nil && f.quiet(day) {
		return look.Quiet
	}
	return look.Ink
}

// oneDecimal writes a way so that the points of a column stand in line.
func oneDecimal(m units.Metres, u units.System) string {
	return written.Number(inUnit(m, u), 1)
}

func always(*trip.Day) bool { return true }

// dateColumn is the place of the date among the fields; setting it moves the
// whole trip.
const dateColumn = 2

// fields lists the columns in the units the leader reads.
func (s *Screen) fields() []field {
	u := s.bench.Units()
	height, distance, degrees := typed.HeightUnit(u), typed.DistanceUnit(u), typed.TemperatureUnit(u)
	return []field{
		{title: lang.L("Day"), width: 46, right: true, quiet: always, text: func(_ *trip.Day, n int) string { return strconv.Itoa(n) },
			order: func(_ *trip.Day, n int) float64 { return float64(n) }},
		{title: lang.L("From where to where"), also: lang.X("heads-way", "Stage, Leg, Name, Route, Way"), width: 236, text: func(d *trip.Day, _ int) string { return d.Name },
			set: func(d *trip.Day, text string) error { d.Name = text; return nil }},
		{title: lang.L("Date"), width: 98, text: func(_ *trip.Day, n int) string { return bench.DayWords(s.bench.Trip().DateOf(n)) },
			edit:  func(_ *trip.Day, n int) string { return s.bench.Trip().DateOf(n).String() },
			order: func(_ *trip.Day, n int) float64 { return float64(n) }},
		s.metres(lang.L("Distance"), distance, 92, oneDecimal, typed.Distance, func(d *trip.Day) *units.Metres { return &d.Distance }),
		s.metres(lang.L("Ascent"), height, 84, typed.HeightText, typed.Height, func(d *trip.Day) *units.Metres { return &d.Ascent }),
		s.metres(lang.L("Descent"), height, 90, typed.HeightText, typed.Height, func(d *trip.Day) *units.Metres { return &d.Descent }),
		s.metres(lang.L("Steep descent"), height, 102, typed.HeightText, typed.Height, func(d *trip.Day) *units.Metres { return &d.SteepDescent }),
		{title: lang.L("Ground"), width: 104, text: func(d *trip.Day, _ int) string { return lang.L(string(d.Terrain)) }, choices: terrainWords(), set: setTerrain},
		{title: lang.L("Walking"), unit: "h", width: 86, right: true, text: s.hoursText, edit: givenHours, set: setHours,
			order: func(d *trip.Day, n int) float64 { return float64(s.walk(n).Hours) },
			quiet: func(d *trip.Day) bool { return !d.MovingHours.Known() }},
		{title: lang.L("Cross-check"), unit: "h", width: 110, right: true, quiet: always,
			text:  func(_ *trip.Day, n int) string { return hours(s.walk(n).ToblerHours) },
			order: func(_ *trip.Day, n int) float64 { return float64(s.walk(n).ToblerHours) }},
		s.metres(lang.L("Camp"), height, 76, typed.HeightText, typed.Height, func(d *trip.Day) *units.Metres { return &d.CampHeight }),
		s.metres(lang.L("Lunch"), height, 80, typed.HeightText, typed.Height, func(d *trip.Day) *units.Metres { return &d.LunchHeight }),
		s.degrees(lang.L("Low"), degrees, func(d *trip.Day) *units.Celsius { return &d.Low }),
		s.degrees(lang.L("High"), degrees, func(d *trip.Day) *units.Celsius { return &d.High }),
		yesNo(lang.L("Dry camp"), func(d *trip.Day) *bool { return &d.DryCamp }),
		yesNo(lang.L("Snow water"), func(d *trip.Day) *bool { return &d.SnowWater }),
		yesNo(lang.L("No flame"), func(d *trip.Day) *bool { return &d.NoFlame }),
		{title: lang.L("Meals from the packs"), width: 176, text: mealText, set: setMeals},
		{title: lang.L("Notes"), width: 260, text: func(d *trip.Day, _ int) string { return strings.Join(strings.Fields(d.Notes), " ") },
			edit: func(d *trip.Day, _ int) string { return d.Notes },
			set:  func(d *trip.Day, text string) error { d.Notes = text; return nil }},
	}
}

// metres is a column of lengths of one kind.
func (s *Screen) metres(title, unit string, width float32, text func(units.Metres, units.System) string,
	read func(string, units.System) (units.Metres, error), of func(*trip.Day) *units.Metres,
) field {
	u := s.bench.Units
	return field{
		title: title, unit: unit, width: width, right: true,
		text:  func(d *trip.Day, _ int) string { return text(*of(d), u()) },
		order: func(d *trip.Day, _ int) float64 { return float64(*of(d)) },
		set: func(d *trip.Day, typed string) (err error) {
			*of(d), err = read(typed, u())
			return err
		},
	}
}

func (s *Screen) degrees(title, unit string, of func(*trip.Day) *units.Celsius) field {
	u := s.bench.Units
	return field{
		title: title, unit: unit, width: 70, right: true,
		text:  func(d *trip.Day, _ int) string { return typed.TemperatureText(*of(d), u()) },
		order: func(d *trip.Day, _ int) float64 { return float64(*of(d)) },
		set: func(d *trip.Day, text string) (err error) {
			*of(d), err = typed.Temperature(text, u())
			return err
		},
	}
}

func yesNo(title string, of func(*trip.Day) *bool) field {
	return field{
		title: title, width: 92, choices: []string{lang.L("yes"), lang.L("no")},
		text: func(d *trip.Day, _ int) string {
			if *of(d) {
				return lang.L("yes")
			}
			return ""
		},
		set: func(d *trip.Day, text string) (err error) {
			if strings.EqualFold(text, lang.L("yes")) {
				text = "yes"
			}
			*of(d), err = typed.Yes(text)
			return err
		},
	}
}

// walk is the walking of a day as planned, nothing before the plan.
func (s *Screen) walk(number int) needs.Walk {
	if p := s.bench.Plan(); p != nil && number <= len(p.Needs.Walks) {
		return p.Needs.Walks[number-1]
	}
	return needs.Walk{}
}

func hours(h units.Hours) string {
	if h <= 0 {
		return "–"
	}
	return written.Number(float64(h), 1)
}

func (s *Screen) hoursText(d *trip.Day, number int) string {
	if given, ok := d.MovingHours.Get(); ok {
		return written.Number(float64(given), 1)
	}
	return hours(s.walk(number).Hours)
}

func givenHours(d *trip.Day, _ int) string {
	if given, ok := d.MovingHours.Get(); ok {
		return written.AtMost(float64(given), 2)
	}
	return ""
}

// setHours takes hours given by hand; an empty cell has them reckoned again.
func setHours(d *trip.Day, text string) error {
	if text == "" {
		d.MovingHours = optional.Unknown[units.Hours]()
		return nil
	}
	given, err := typed.Hours(text)
	if err == nil {
		d.MovingHours = optional.Of(given)
	}
	return err
}

func terrainWords() []string {
	var words []string
	for _, terrain := range trip.Terrains() {
		words = append(words, lang.L(string(terrain)))
	}
	return words
}

func setTerrain(d *trip.Day, text string) error {
	for _, terrain := range trip.Terrains() {
		if strings.EqualFold(text, lang.L(string(terrain))) || strings.EqualFold(text, string(terrain)) {
			d.Terrain = terrain
			return nil
		}
	}
	return prose.Errorf("%s: %s", lang.L("One of"), strings.Join(terrainWords(), ", "))
}

func mealText(d *trip.Day, _ int) string {
	switch len(d.Meals) {
	case 0:
		return lang.L("none")
	case len(trip.Meals()):
		return lang.L("all")
	}
	var words []string
	for _, meal := range trip.Meals() {
		if hasMeal(d, meal) {
			words = append(words, lang.L(string(meal)))
		}
	}
	return strings.Join(words, ", ")
}

func hasMeal(d *trip.Day, meal trip.Meal) bool {
	for _, known := range d.Meals {
		if known == meal {
			return true
		}
	}
	return false
}

// setMeals reads "all", "none" or meals in any order, each by the beginning
// of its name.
func setMeals(d *trip.Day, text string) error {
	var meals []trip.Meal
	switch lower := strings.ToLower(text); {
	case lower == "all" || lower == strings.ToLower(lang.L("all")):
		meals = trip.Meals()
	case lower == "" || lower == "none" || lower == strings.ToLower(lang.L("none")):
	default:
		wanted := map[trip.Meal]bool{}
		for _, word := range typed.List(text) {
			meal, ok := mealNamed(word)
			if !ok {
				return errors.New(lang.X("meal-words", "{{.Word}} is no meal: write all, none, or some of breakfast, lunch, dinner, snack", map[string]any{"Word": strconv.Quote(word)}))
			}
			wanted[meal] = true
		}
		for _, meal := range trip.Meals() {
			if wanted[meal] {
				meals = append(meals, meal)
			}
		}
	}
	d.Meals = meals
	return nil
}

func mealNamed(word string) (trip.Meal, bool) {
	word = strings.ToLower(word)
	for _, meal := range trip.Meals() {
		if strings.HasPrefix(string(meal), word) || strings.HasPrefix(strings.ToLower(lang.L(string(meal))), word) {
			return meal, true
		}
	}
	return "", false
}

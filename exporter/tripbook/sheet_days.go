package tripbook

import (
	"fmt"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// dayRow is a day with its number, which the trip keeps as its place.
type dayRow struct {
	number int // 0: not given
	trip.Day
}

func daySheet() sheet {
	type R = dayRow
	return &table[R]{
		name: sheetDays, list: "days",
		about: "The route, one row a day.",
		fresh: func() R { return R{Day: trip.Day{Terrain: trip.Trail}} },
		from: func(t *trip.Trip) []R {
			rows := make([]R, len(t.Days))
			for i := range t.Days {
				rows[i] = R{i + 1, t.Days[i]}
			}
			return rows
		},
		into: gatherDays,
		columns: []column[R]{
			col("Day", "day", func(d *R) *int { return &d.number }, orBlank(count()), "1 for the first day. Empty: as the rows stand.").wide(6),
			col("From and to", "name", func(d *R) *string { return &d.Name }, line(), "Where the day leads.").wide(28),
			col("Distance", "distance_m", func(d *R) *units.Metres { return &d.Distance }, number[units.Metres](distance), "Walked this day.").must(),
			col("Ascent", "ascent_m", func(d *R) *units.Metres { return &d.Ascent }, number[units.Metres](height), "All climbs together.").must(),
			col("Descent", "descent_m", func(d *R) *units.Metres { return &d.Descent }, number[units.Metres](height), "All drops together.").must(),
			col("Steep descent", "steep_descent_m", func(d *R) *units.Metres { return &d.SteepDescent }, number[units.Metres](height), "The part of the descent on slopes above 12 degrees."),
			col("Ground", "terrain", func(d *R) *trip.Terrain { return &d.Terrain }, word(trip.Terrains()), "What is underfoot for most of the day. Empty: trail.").wide(12),
			col("Camp at", "camp_height_m", func(d *R) *units.Metres { return &d.CampHeight }, number[units.Metres](height), "Height of the camp above the sea: dinner and the next breakfast are cooked there.").must(),
			col("Lunch at", "lunch_height_m", func(d *R) *units.Metres { return &d.LunchHeight }, number[units.Metres](height), "Height where lunch is made.").must(),
			col("Lowest air", "low_c", func(d *R) *units.Celsius { return &d.Low }, number[units.Celsius](temperature), "Lowest temperature to expect, at night.").must(),
			col("Highest air", "high_c", func(d *R) *units.Celsius { return &d.High }, number[units.Celsius](temperature), "Highest temperature to expect, in the shade.").must(),
			col("Meals from the packs", "meals", func(d *R) *[]trip.Meal { return &d.Meals }, mealList(), "What is eaten from the packs this day, with ; between, or none.").must().wide(30),
			col("Dry camp", "dry_camp", func(d *R) *bool { return &d.DryCamp }, yesNo(), "No water at the camp: it is carried in.").wide(8),
			col("Snow for water", "snow_water", func(d *R) *bool { return &d.SnowWater }, yesNo(), "Water is melted from snow.").wide(8),
			col("No flame", "no_flame", func(d *R) *bool { return &d.NoFlame }, yesNo(), "Stoves are forbidden this day. Ask locally: bans change from day to day.").wide(8),
			col("Moving hours", "moving_hours", func(d *R) *optional.Value[units.Hours] { return &d.MovingHours }, maybe(number[units.Hours](same("h"))), "Only if known from experience; it goes before the reckoning."),
			col("Notes", "notes", func(d *R) *string { return &d.Notes }, notes(), "Anything."),
		},
	}
}

// gatherDays puts the days in the order of their numbers; each number from 1
// must be there once.
func gatherDays(g *gathered[dayRow]) {
	allowed := fmt.Sprintf("each of 1 to %d once", len(g.rows))
	places := make([]int, len(g.rows)+1) // row of each day, from 1; 0 is none
	for i := range places {
		places[i] = -1
	}
	for i := range g.rows {
		number := g.rows[i].number
		if number == 0 {
			number = i + 1
		}
		switch {
		case number > len(g.rows):
			g.fault(i, "Day", fmt.Sprintf("is beyond the %d days there are", len(g.rows)), allowed)
		case places[number] >= 0:
			g.fault(i, "Day", fmt.Sprintf("is the day of row %d already", g.grid.rows[places[number]].number), allowed)
		default:
			places[number] = i
		}
	}
	for day, row := range places[1:] {
		if row >= 0 {
			g.trip.Days = append(g.trip.Days, g.rows[row].Day)
			g.comes(row, "days[%d]", day)
		}
	}
}

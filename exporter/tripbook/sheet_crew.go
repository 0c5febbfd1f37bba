package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func crewSheet() sheet {
	type R = trip.Member
	t := &table[R]{
		name: sheetCrew, list: "crew", names: func(s *scope) *names { return &s.members },
		about: "Everybody who walks. One row a member. Health data stays in this file: share it with care.",
		fresh: func() R { return R{Sex: trip.SexNotGiven, Appetite: 1, Strength: 1} },
		columns: []column[R]{
			col("Name", "name", func(m *R) *string { return &m.Name }, line(), "A name that nobody else of the crew has.").must().wide(22),
			col("Cook group", "group", func(m *R) *trip.GroupID { return &m.Group }, toGroup(), "Whose pot they eat from.").must(),
			col("Sex", "sex", func(m *R) *trip.Sex { return &m.Sex }, word(trip.Sexes()), "For the equation of resting energy. Not given takes the mean of both.").wide(10),
			col("Age", "age_years", func(m *R) *int { return &m.Age }, count(), "In years at the start of the trip.").must().wide(7),
			col("Body mass", "body_mass_g", func(m *R) *units.Mass { return &m.BodyMass }, exact[units.Mass](bodyMass), "Without clothes and kit.").must(),
			col("Height", "height_m", func(m *R) *units.Metres { return &m.Height }, orBlank(number[units.Metres](stature)), "Empty: not given; an equation without height is used."),
			col("Own kit", "own_kit_g", func(m *R) *units.Mass { return &m.OwnKit }, exact[units.Mass](bodyMass), "Pack and all that is theirs alone, without food and shared gear.").must(),
			col("Room in the pack", "pack_room_ml", func(m *R) *units.Volume { return &m.PackRoom }, exact[units.Volume](packVolume), "Left for shared food and gear beside their own kit.").must(),
			col("Load limit", "load_limit_g", func(m *R) *optional.Value[units.Mass] { return &m.LoadLimit }, maybe(exact[units.Mass](bodyMass)), "Never more than this, own kit included. Empty: no limit."),
			col("Diets", "diets", func(m *R) *[]trip.Diet { return &m.Diets }, listOf(openWord(trip.KnownDiets()), "diets"), "With ; between: vegan; no pork. Gluten-free is the allergy gluten.").wide(20),
			col("Allergies", "allergies", func(m *R) *[]trip.Allergy { return &m.Allergies }, listOf(allergy(), "allergens"), "With ; between. Write (severe) behind one where traces harm: peanuts (severe); milk.").wide(26),
			col("Dislikes", "dislikes", func(m *R) *[]trip.FoodID { return &m.Dislikes }, listOf(toFood(), "foods"), "Foods of sheet Foods, with ; between.").wide(20),
			col("Medicine", "medicine", func(m *R) *string { return &m.Medicine }, line(), "Emergency medicine and where it is kept.").wide(24),
			col("First day", "first_day", func(m *R) *int { return &m.FirstDay }, orBlank(count()), "The number of the day they join. Empty: from the start.").wide(8),
			col("Last day", "last_day", func(m *R) *int { return &m.LastDay }, orBlank(count()), "The number of the day they leave. Empty: to the end.").wide(8),
			col("Standby", "standby", func(m *R) *bool { return &m.Standby }, yesNo(), "Planned for no day: somebody who may join on the way. Empty: no.").wide(9),
			col("Energy a day", "given_need_kcal", func(m *R) *optional.Value[units.Kcal] { return &m.GivenNeed }, maybe(number[units.Kcal](energy)), "Only if known from experience; it goes before the equations."),
			col("Appetite", "appetite", func(m *R) *float64 { return &m.Appetite }, number[float64](same("")), "A factor on the reckoned need. Empty: 1.").wide(9),
			col("Strength", "strength", func(m *R) *float64 { return &m.Strength }, number[float64](same("")), "A factor on what they can carry for their body mass. Empty: 1.").wide(9),
			col("Protein per kg", "protein_g_per_kg", func(m *R) *optional.Value[float64] { return &m.ProteinPer }, maybe(number[float64](same("g"))), "Grams a day for each kilogram of body mass, instead of the trip's."),
			col("Notes", "notes", func(m *R) *string { return &m.Notes }, notes(), "Anything."),
			idColumn(func(m *R) *trip.MemberID { return &m.ID }),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Crew })
	return t
}

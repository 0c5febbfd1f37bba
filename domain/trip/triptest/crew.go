package triptest

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func (b *builder) crew(count int) {
	for i, id := range b.ids(count) {
		group := b.trip.Groups[i%len(b.trip.Groups)].ID
		b.trip.Crew = append(b.trip.Crew, b.member(trip.MemberID(id), group))
	}
}

func (b *builder) member(id trip.MemberID, group trip.GroupID) trip.Member {
	member := trip.Member{
		ID: id, Name: named(oneOf(b, "Ana", "Jörg", "美咲", "Sam"), int64(id)), Group: group,
		Sex: oneOf(b, trip.Female, trip.Male, trip.SexNotGiven), Age: b.pick(14, 75),
		BodyMass: units.Mass(b.pick(450, 1050)) * 100 * units.Gram, Height: units.Metres(b.hundredths(150, 195)),
		Appetite: 1, Strength: 1, OwnKit: units.Mass(b.pick(50, 110)) * 100 * units.Gram,
		PackRoom:  units.Volume(b.pick(15, 35)) * units.Litre,
		LoadLimit: maybe(b, 30, units.Mass(b.pick(14, 25))*units.Kilogram),
	}
	if b.chance(12) {
		member.Allergies = b.allergies()
	}
	if b.chance(15) {
		member.Diets = some(b, 30, trip.KnownDiets()[:4])
	}
	if b.odd {
		b.oddMember(&member)
	}
	return member
}

func (b *builder) allergies() []trip.Allergy {
	var allergies []trip.Allergy
	for _, allergen := range some(b, 30, []trip.Allergen{trip.Peanuts, trip.Gluten, trip.Milk, trip.Nuts, trip.Almonds, "kiwi"}) {
		if allergen == "kiwi" && !b.odd {
			continue // no food of a plausible trip declares it
		}
		allergies = append(allergies, trip.Allergy{Allergen: allergen, Severe: b.chance(40)})
	}
	return allergies
}

func (b *builder) oddMember(member *trip.Member) {
	days := len(b.trip.Days)
	member.Standby = b.chance(5)
	if b.chance(20) {
		member.Group = oneOf(b, b.trip.Groups...).ID
		member.FirstDay = b.pick(0, days)
		if b.chance(50) {
			member.LastDay = b.pick(max(1, member.FirstDay), days)
		}
	}
	if b.chance(20) {
		member.Age, member.Height = b.pick(6, 88), 0
		member.Appetite, member.Strength = b.hundredths(70, 140), b.hundredths(0, 130)
		member.GivenNeed = maybe(b, 50, units.Kcal(b.pick(1200, 5500)))
		member.ProteinPer = maybe(b, 50, b.tenths(8, 20))
	}
	if b.chance(20) {
		member.OwnKit = units.Mass(b.pick(0, 16000)) * units.Gram
		member.PackRoom = units.Volume(b.pick(0, 40000)) * units.Millilitre
	}
	if b.chance(20) {
		for _, food := range some(b, 20, b.trip.Foods) {
			member.Dislikes = append(member.Dislikes, food.ID)
		}
		member.Medicine, member.Notes = "injector, top lid", "snores"
	}
}

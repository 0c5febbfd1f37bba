package demo

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// The two cook groups: one cooks without gluten and meat in the pot, the other
// without peanuts.
const (
	larch trip.GroupID = iota + 1
	rowan
)

const (
	leaving = 6 // Greta goes down from the hut
	joining = 4 // Pablo comes up from the post office village
)

func crew() []trip.Member {
	list := []trip.Member{
		{
			ID: 1, Name: "Ines", Group: larch, Sex: trip.Female, Age: 34, BodyMass: kilograms(60), Height: 1.68,
			OwnKit: kilograms(7.8), PackRoom: litres(26), Diets: []trip.Diet{trip.Vegan},
			Notes: "Vegan.",
		},
		{
			ID: 2, Name: "Tomas", Group: larch, Sex: trip.Male, Age: 46, BodyMass: kilograms(78), Height: 1.80,
			OwnKit: kilograms(8.6), PackRoom: litres(34), Notes: "Leads the trip.",
		},
		{
			ID: 3, Name: "Marit", Group: larch, Sex: trip.Female, Age: 41, BodyMass: kilograms(63), Height: 1.70,
			OwnKit: kilograms(7.9), PackRoom: litres(28), Allergies: []trip.Allergy{{Allergen: trip.Gluten, Severe: true}},
			Notes: "Coeliac disease: own spoon, own bags, nothing that touched flour.",
		},
		{
			ID: 4, Name: "Olek", Group: larch, Sex: trip.Male, Age: 29, BodyMass: kilograms(102), Height: 1.92, Strength: 1.15,
			OwnKit: kilograms(9.8), PackRoom: litres(48), Notes: "Strong walker, likes to carry.",
		},
		{
			ID: 5, Name: "Ruth", Group: larch, Sex: trip.Female, Age: 68, BodyMass: kilograms(58), Height: 1.62, Strength: 0.8,
			OwnKit: kilograms(6.4), PackRoom: litres(18), LoadLimit: optional.Of(kilograms(9.5)),
			Notes: "Carries 9.5 kg at most, on the advice of her doctor.",
		},
		{
			ID: 6, Name: "Farid", Group: larch, Sex: trip.Male, Age: 38, BodyMass: kilograms(74), Height: 1.76,
			OwnKit: kilograms(8.4), PackRoom: litres(34), Diets: []trip.Diet{trip.NoPork},
		},
		{
			ID: 7, Name: "Lotte", Group: rowan, Sex: trip.Female, Age: 27, BodyMass: kilograms(65), Height: 1.72,
			OwnKit: kilograms(8.0), PackRoom: litres(30), Allergies: []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}},
			Medicine: "Two adrenaline auto-injectors: one in the top pocket of her pack, one in the group's first-aid kit. Plan made with her doctor.",
		},
		{
			ID: 8, Name: "Jonas", Group: rowan, Sex: trip.Male, Age: 15, BodyMass: kilograms(50), Height: 1.67,
			OwnKit: kilograms(5.9), PackRoom: litres(20), LoadLimit: optional.Of(kilograms(10)), Notes: "Anja's son.",
		},
		{
			ID: 9, Name: "Anja", Group: rowan, Sex: trip.Female, Age: 44, BodyMass: kilograms(67), Height: 1.69,
			OwnKit: kilograms(8.1), PackRoom: litres(30),
		},
		{
			ID: 10, Name: "Pablo", Group: rowan, Sex: trip.Male, Age: 52, BodyMass: kilograms(82), Height: 1.78, FirstDay: joining,
			OwnKit: kilograms(8.7), PackRoom: litres(36), Notes: "Joins in Quarry Halt on the evening of day 3, eats from the packs from day 4.",
		},
		{
			ID: 11, Name: "Greta", Group: rowan, Sex: trip.Female, Age: 57, BodyMass: kilograms(70), Height: 1.66, LastDay: leaving,
			OwnKit: kilograms(8.0), PackRoom: litres(28), Notes: "Goes down from the hut on the morning of day 7.",
		},
	}
	for i := range list {
		list[i].Appetite = 1
		if list[i].Strength == 0 {
			list[i].Strength = 1
		}
	}
	return list
}

func kilograms(kg float64) units.Mass { return units.FromKilograms(kg) }

func litres(l float64) units.Volume { return units.FromLitres(l) }

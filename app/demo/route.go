package demo

import "sumpter/domain/trip"

// route is nine days: three in the hot low country, three up through the
// woods, three in the cold among the tarns and down again.
func route() []trip.Day {
	all := []trip.Meal{trip.Breakfast, trip.Lunch, trip.Dinner, trip.Snack}
	return []trip.Day{
		{
			Name: "Saltmarsh Halt to Oleander Ford", Distance: 13000, Ascent: 420, Descent: 180, Terrain: trip.DirtRoad,
			LunchHeight: 310, CampHeight: 460, Low: 17, High: 33, Meals: all[1:],
			Notes: "Start after breakfast from the railway halt.",
		},
		{
			Name: "Oleander Ford to Sallow Well", Distance: 14500, Ascent: 560, Descent: 240, Terrain: trip.Trail,
			LunchHeight: 690, CampHeight: 780, Low: 18, High: 34, NoFlame: true, Meals: all,
			Notes: "Summer fire ban on the heath, stoves included. Ask the ranger on the day.",
		},
		{
			Name: "Sallow Well to Quarry Halt", Distance: 12500, Ascent: 310, Descent: 420, Terrain: trip.Trail,
			LunchHeight: 820, CampHeight: 670, Low: 16, High: 32, Meals: all,
			Notes: "Meadow camp below the village. Post office and a small shop.",
		},
		{
			Name: "Quarry Halt to Chestnut Terrace", Distance: 13000, Ascent: 880, Descent: 160, Terrain: trip.Trail,
			LunchHeight: 1050, CampHeight: 1390, Low: 13, High: 27, Meals: all,
		},
		{
			Name: "Chestnut Terrace to Dry Bench", Distance: 11500, Ascent: 830, Descent: 90, Terrain: trip.Trail,
			LunchHeight: 1760, CampHeight: 2130, Low: 7, High: 21, Meals: all,
			Notes: "Snow-fed spring beside the camp, weak by August: let it run overnight.",
		},
		{
			Name: "Dry Bench to Tarn Hut", Distance: 10500, Ascent: 690, Descent: 110, Terrain: trip.RoughTrail,
			LunchHeight: 2420, CampHeight: 2710, Low: 3, High: 15, Meals: all,
			Notes: "The hut keeps boxes. Tents on the flat beside it.",
		},
		{
			Name: "Tarn Hut to Glass Tarn", Distance: 9000, Ascent: 740, Descent: 170, Terrain: trip.RoughTrail,
			LunchHeight: 3020, CampHeight: 3280, Low: -4, High: 9, Meals: all,
			Notes: "Highest camp. Water from the tarn, treated.",
		},
		{
			Name: "Glass Tarn over Windgap to Scree Basin", Distance: 10000, Ascent: 410, Descent: 640, SteepDescent: 300, Terrain: trip.Scree,
			LunchHeight: 3420, CampHeight: 3050, Low: -3, High: 8, Meals: all,
		},
		{
			Name: "Scree Basin to Millhead", Distance: 15000, Ascent: 120, Descent: 1850, SteepDescent: 900, Terrain: trip.RoughTrail,
			LunchHeight: 2200, CampHeight: 1320, Low: 1, High: 17, Meals: []trip.Meal{trip.Breakfast, trip.Lunch, trip.Snack},
			Notes: "Bus from Millhead in the evening; supper in the village.",
		},
	}
}

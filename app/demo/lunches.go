package demo

// lunches are eaten out of the hand, where crumbs travel: who eats with a
// severe allergy in the group eats as if it were their own.
func lunches() []dish {
	return []dish{
		{
			name: "Alpine cheese, crispbread and carrots", staple: "crispbread", texture: "crunchy",
			parts: parts{
				bowl(crispbread, 75, orAll(seedCrackers, 65)), bowl(gruyere, 60, or(almondButter, 42)), bowl(freshCarrot, 60), bowl(pumpkinSeeds, 20), bowl(dates, 25),
			},
			method: steps{"Cut the cheese in the shade, last of all. Peel the carrots with your fingers out of the way."},
			notes:  "For the first day: cheese and carrots do not last in the heat.",
		},
		{
			name: "Peanut butter and banana wraps", staple: "tortillas", texture: "chewy",
			parts: parts{
				bowl(tortillas, 72, orAll(seedCrackers, 52)), bowl(peanutButter, 48, orAll(almondButter, 48)), bowl(bananaChips, 24), bowl(raisins, 14),
			},
			method: steps{"Spread, scatter banana chips and raisins, roll. A group with a peanut allergy has almond butter for everybody."},
		},
		{
			name: "Tuna and sun-dried tomato wraps", staple: "tortillas", texture: "chewy",
			parts: parts{
				bowl(tortillas, 85, orAll(seedCrackers, 60)), spoon(tuna, 60, or(tahini, 36)), bowl(oliveOil, 8), bowl(sundriedTomato, 12), bowl(cashews, 28),
			},
			method: steps{
				"Open a pouch only when you eat it, and eat all of it.",
				"Snip the tomatoes, mix with fish and oil, fill the wraps. Cashews for the crunch.",
			},
		},
		{
			name: "Sausage sticks and crackers with figs", staple: "crispbread", texture: "crunchy",
			parts: parts{
				bowl(crispbread, 68, orAll(seedCrackers, 58)), spoon(sausage, 40, or(tuna, 60), or(cashews, 36)), bowl(figRolls, 32, orAll(dates, 36)), bowl(almonds, 30),
			},
			method: steps{"Each stick is sealed on its own. Who eats no pork gets a pouch of tuna, who eats no animals cashews."},
		},
		{
			name: "Couscous salad with seeds and cranberries", staple: "couscous", texture: "salad", water: 120, soak: 15, cold: true,
			parts: parts{
				bowl(couscous, 72, orAll(rice, 72)), bowl(sundriedTomato, 10), bowl(cranberries, 18), bowl(pumpkinSeeds, 28), bowl(oliveOil, 14),
				spoon(salt, 0.6), spoon(cumin, 0.4),
			},
			method: steps{
				"Wet the couscous with cold treated water half an hour before the halt, in a closed box in the shade: instant rice takes twice as long.",
				"Stir in oil, seeds and fruit. Eat it at once.",
			},
			notes: "Once wet it is perishable.",
		},
		{
			name: "Tahini crackers with sun-dried tomato", staple: "crackers", texture: "crunchy",
			parts: parts{
				bowl(crispbread, 66, orAll(seedCrackers, 56)), bowl(tahini, 44), bowl(sundriedTomato, 15), bowl(apricots, 20), bowl(pumpkinSeeds, 25),
			},
			method: steps{"Stir the tahini in its jar, spread thickly, lay the tomatoes on. Apricots and seeds after."},
		},
		{
			name: "Miso noodle soup", staple: "rice noodles", texture: "soup", water: 450, soak: 10,
			parts: parts{
				pot(riceNoodles, 65), pot(driedTofu, 22), pot(driedCarrot, 8), pot(shiitake, 3), pot(onionFlakes, 4), pinch(ginger, 0.6), pinch(cayenne, 0.1),
				pot(cashews, 30), spoon(miso, 16),
			},
			method: steps{
				"Put carrots, mushrooms, onion, ginger and crumbled tofu in the cold water, bring it to the boil.",
				"Add noodles and cashews, take off the flame, lid on, wrapped up.",
				"Stir the miso into each bowl: boiling dulls it.",
			},
		},
		{
			name: "Potato soup with cheese", staple: "potato", texture: "soup", water: 420, soak: 8,
			parts: parts{
				pot(potatoFlakes, 60), pot(driedCarrot, 8), pot(onionFlakes, 6), pot(oliveOil, 14), pinch(onionSoup, 4), pinch(pepper, 0.2),
				bowl(parmesan, 25, or(pumpkinSeeds, 22)), bowl(crispbread, 30, orAll(seedCrackers, 26)),
			},
			method: steps{
				"Bring carrots, onion and soup powder to the boil in the water with the oil, leave them lidded.",
				"Whisk in the flakes. Cheese or seeds on top, crispbread beside.",
			},
		},
		{
			name: "Almond butter, dates and crackers", staple: "crackers", texture: "crunchy",
			parts: parts{
				bowl(crispbread, 65, orAll(seedCrackers, 56)), bowl(almondButter, 44), bowl(dates, 30), bowl(pumpkinSeeds, 22),
			},
			method: steps{"Spread, press half a date on each, seeds on top."},
		},
		{
			name: "Red lentil and tomato soup", staple: "lentils", texture: "soup", water: 450, simmer: 14, soak: 2, pulses: true,
			parts: parts{
				pot(redLentils, 60), pot(tomatoPowder, 12), pot(onionFlakes, 6), pot(oliveOil, 16), pinch(cumin, 0.8), pinch(garlic, 0.8), pinch(salt, 1.4),
				bowl(crispbread, 40, orAll(seedCrackers, 35)),
			},
			method: steps{"Simmer everything but the tomato powder until the lentils fall apart, then whisk it in.", "Crispbread beside."},
		},
	}
}

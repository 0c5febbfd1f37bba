package demo

func treats() []dish {
	return []dish{
		{
			name: "Hot cocoa", texture: "drink", water: 220, cold: true,
			parts: parts{spoon(cocoa, 8), spoon(brownSugar, 16), spoon(milkPowder, 22, or(soyaDrink, 22))},
			method: steps{
				"Stir cocoa, sugar and milk powder smooth with a little cold water, fill up with hot water.",
			},
		},
		{
			name: "Ginger tea and shortbread", texture: "drink", water: 250, cold: true,
			parts:  parts{spoon(ginger, 1), spoon(brownSugar, 12), bowl(shortbread, 28, orAll(sesameBrittle, 28))},
			method: steps{"Hot water on ginger and sugar, let it draw. Shortbread, or sesame brittle in a group that eats no gluten."},
		},
		{
			name: "Chocolate pudding", texture: "creamy", water: 170, simmer: 1,
			parts: parts{pot(starch, 10), pot(cocoa, 8), pot(brownSugar, 18), bowl(milkPowder, 18, or(soyaDrink, 18))},
			method: steps{
				"Stir starch, cocoa and sugar smooth in cold water, bring to the boil while you stir, boil up for a minute.",
				"Beat the milk powder into each bowl.",
			},
		},
		{
			name: "Pan apple crumble", texture: "crumble", water: 90, simmer: 3, soak: 3,
			parts: parts{pot(appleRings, 24), pinch(cinnamon, 0.6), pot(brownSugar, 6), pot(almonds, 12), bowl(oats, 14), spoon(milkPowder, 8, or(soyaDrink, 8))},
			method: steps{
				"Simmer the apple rings with sugar and cinnamon until soft.",
				"Chopped almonds in, oats over each bowl, milk powder stirred thick with a spoon of water for a custard.",
			},
		},
		{
			name: "Stewed apricots with cashews", texture: "compote", water: 90, simmer: 3, soak: 5,
			parts:  parts{pot(apricots, 35), pot(brownSugar, 6), pinch(ginger, 0.3), bowl(cashews, 15)},
			method: steps{"Simmer the apricots with sugar and ginger, let them swell, cashews on top."},
		},
		{
			name: "Lemonade", texture: "drink", water: 250, cold: true,
			parts:  parts{spoon(lemonade, 24), spoon(salt, 0.6)},
			method: steps{"Stir powder and salt into a mug of cold treated water."},
		},
		{
			name: "Fresh apple", texture: "fresh",
			parts:  parts{bowl(freshApple, 110)},
			method: steps{"First evening only: an apple each, carried at the top of the pack."},
		},
	}
}

func snacks() []dish {
	return []dish{
		{
			name: "Salted cashew and raisin mix", staple: "nuts", texture: "crunchy",
			parts:  parts{bowl(cashews, 55), bowl(almonds, 30), bowl(raisins, 45), bowl(pumpkinSeeds, 20), spoon(salt, 2)},
			method: steps{"One bag each, for the whole day."},
		},
		{
			name: "Orchard mix", staple: "nuts", texture: "chewy",
			parts:  parts{bowl(almonds, 50), bowl(pumpkinSeeds, 25), bowl(apricots, 35), bowl(dates, 30), bowl(coconut, 14), spoon(salt, 2)},
			method: steps{"One bag each, for the whole day."},
		},
		{
			name: "Peanut and mango mix", staple: "nuts", texture: "crunchy",
			parts:  parts{bowl(peanuts, 72, orAll(cashews, 72)), bowl(mango, 40), bowl(bananaChips, 34)},
			method: steps{"One bag each. In a group with a peanut allergy everybody gets cashews."},
		},
		{
			name: "Granola bar, halva and nuts", staple: "bars", texture: "chewy",
			parts:  parts{spoon(granolaBar, 40, or(sesameBrittle, 40)), bowl(halva, 45), bowl(almonds, 40), bowl(cranberries, 20)},
			method: steps{"Bar by mid-morning, halva by mid-afternoon."},
		},
		{
			name: "Chocolate and nut mix", staple: "nuts", texture: "crunchy",
			parts:  parts{bowl(chocolate, 45), bowl(almonds, 40), bowl(pumpkinSeeds, 32), bowl(cranberries, 26)},
			method: steps{"One bag each, for the whole day."},
			notes:  "For cold days: chocolate melts in the heat.",
		},
		{
			name: "Jerky, seeds and dried fruit", staple: "jerky", texture: "chewy",
			parts:  parts{bowl(jerky, 35, or(cashews, 30)), bowl(pumpkinSeeds, 35), bowl(cashews, 35), bowl(apricots, 40), bowl(sesameBrittle, 20)},
			method: steps{"One bag each; jerky and its stand-in come in their own small bag."},
		},
		{
			name: "Fig rolls and cashews", staple: "biscuits", texture: "soft",
			parts:  parts{bowl(figRolls, 70, orAll(dates, 75)), bowl(cashews, 60), bowl(pumpkinSeeds, 20)},
			method: steps{"Fig rolls at the first long halt, nuts all day."},
		},
	}
}

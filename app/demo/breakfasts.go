package demo

func breakfasts() []dish {
	// Milk goes into each bowl, so that one pot suits everybody.
	milk := bowl(milkPowder, 22, or(soyaDrink, 22))
	return []dish{
		{
			name: "Apple and cinnamon porridge", staple: "oats", texture: "porridge", water: 320, soak: 8,
			parts: parts{
				pot(oats, 85), pot(appleRings, 15), pot(raisins, 15), pot(brownSugar, 8), pot(almonds, 20), pinch(cinnamon, 1), pinch(salt, 1),
				milk,
			},
			method: steps{
				"Cut the apple rings small. Bring the water to the boil with apple, raisins, cinnamon and salt.",
				"Stir in oats and chopped almonds, boil up once, leave it lidded off the flame, wrapped up, until it is thick.",
				"Stir the milk powder with a little cold water in each bowl, add the porridge.",
			},
		},
		{
			name: "Soaked oats with mango and coconut", staple: "oats", texture: "creamy", water: 260, soak: 30, cold: true,
			parts: parts{
				pot(oats, 75), pot(chia, 10), pot(mango, 25), pot(coconut, 16), pinch(salt, 0.8), milk,
			},
			method: steps{
				"Snip the mango into the oats, chia and coconut, stir in cold treated water, close the pot for half an hour.",
				"Stir the milk powder into each bowl.",
			},
			notes: "Not overnight: wet food is perishable, within two hours where it is warm.",
		},
		{
			name: "Seed and cranberry muesli", staple: "oats", texture: "crunchy", water: 180, soak: 5, cold: true,
			parts: parts{
				bowl(oats, 75), bowl(pumpkinSeeds, 18), bowl(almonds, 14), bowl(cranberries, 22), spoon(salt, 0.6), milk,
			},
			method: steps{
				"Give everybody their bag of muesli and their milk powder.",
				"Stir in cold treated water, wait five minutes, eat.",
			},
		},
		{
			name: "Golden date polenta", staple: "polenta", texture: "smooth", water: 380, simmer: 4, soak: 4,
			parts: parts{
				pot(grits, 70), pot(dates, 35), pot(almonds, 25), pinch(cinnamon, 0.8), pinch(salt, 1), milk,
			},
			method: steps{
				"Chop dates and almonds. Boil the water with dates, cinnamon and salt.",
				"Rain in the polenta while you stir, simmer gently: it spits.",
				"Stir in the almonds, rest it lidded, serve with milk.",
			},
		},
		{
			name: "Cocoa quinoa with cashews", staple: "quinoa", texture: "porridge", water: 260, simmer: 14, soak: 5,
			parts: parts{
				pot(quinoa, 70), pot(cocoa, 7), pot(brownSugar, 15), pot(raisins, 20), pot(cashews, 25), pinch(salt, 0.7), milk,
			},
			method: steps{
				"Boil the quinoa with raisins and salt until it shows its little tails.",
				"Stir in cashews, and cocoa and sugar mixed with a spoon of water. Rest it lidded.",
				"Serve with milk.",
			},
		},
		{
			name: "Raisin rice with coconut", staple: "rice", texture: "creamy", water: 270, soak: 10,
			parts: parts{
				pot(rice, 75), pot(raisins, 25), pot(coconut, 18), pot(brownSugar, 8), pot(almonds, 12),
				pinch(cinnamon, 0.8), pinch(salt, 0.9), milk,
			},
			method: steps{
				"Boil the water with raisins, coconut, sugar and spices, stir in the rice, boil up once.",
				"Take it off the flame, lid on, until the rice is soft. Almonds in, serve with milk.",
			},
		},
		{
			name: "Potato scramble with tomato", staple: "potato", texture: "mash", water: 330, simmer: 3, soak: 3,
			parts: parts{
				pot(potatoFlakes, 60), pot(eggPowder, 30, orAll(driedTofu, 30)), pot(oliveOil, 12), pot(sundriedTomato, 10), pot(onionFlakes, 5),
				pinch(paprika, 1.5), pinch(salt, 1.4), pinch(pepper, 0.2), bowl(parmesan, 14, or(pumpkinSeeds, 14)),
			},
			method: steps{
				"Stir the egg powder smooth with a third of the cold water, or crumble the tofu into all of it.",
				"Boil the rest with oil, onion, snipped tomato and paprika. Stir in the egg and cook it through: no soft egg on a trip.",
				"Off the flame beat in the potato flakes. Scatter the cheese or seeds.",
			},
		},
		{
			name: "Milky coffee", texture: "drink", water: 180, cold: true,
			parts: parts{spoon(coffee, 2), spoon(brownSugar, 8), spoon(milkPowder, 10, or(soyaDrink, 10))},
			method: steps{
				"Mix powder, sugar and coffee in the mug with a spoon of cold water, pour hot water on. Cold water does where no flame is allowed.",
			},
		},
	}
}

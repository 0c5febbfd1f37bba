package demo

func dinners() []dish {
	return []dish{
		{
			name: "Tomato pasta with soya mince", staple: "pasta", texture: "saucy", water: 330, simmer: 9, soak: 2,
			parts: parts{
				pot(pasta, 88, orAll(cornPasta, 88)), pot(soyaMince, 21), pot(tomatoPowder, 16), pot(onionFlakes, 6), pot(oliveOil, 16),
				pinch(oregano, 0.6), pinch(garlic, 0.8), pinch(salt, 2.3), bowl(parmesan, 16, or(pumpkinSeeds, 16)),
			},
			method: steps{
				"Boil the water with mince, onion, garlic, oregano and salt. Add the pasta and stir until it no longer sticks.",
				"Simmer until nearly soft. Whisk in tomato powder and oil, rest it lidded.",
				"Cheese or pumpkin seeds over each bowl.",
			},
		},
		{
			name: "Red lentil dal with rice", staple: "rice", texture: "stew", water: 430, simmer: 12, soak: 6, pulses: true,
			parts: parts{
				pot(redLentils, 74), pot(rice, 34), pot(oliveOil, 17), pot(onionFlakes, 6), pot(tomatoPowder, 8), pot(raisins, 10),
				pinch(curry, 3), pinch(ginger, 0.5), pinch(garlic, 0.6), pot(cashews, 18), pinch(salt, 2.4),
			},
			method: steps{
				"Warm the oil with curry and ginger until it smells, add water, lentils and onion.",
				"Simmer until the lentils break, stir often: they catch. Stir in rice, raisins, tomato and salt.",
				"Rest it lidded until the rice is soft. Cashews in, for the crunch.",
			},
		},
		{
			name: "Smoky chilli on polenta", staple: "polenta", texture: "stew", water: 450, simmer: 6, soak: 4,
			parts: parts{
				pot(grits, 68), pot(soyaMince, 26), pot(tomatoPowder, 12), pot(onionFlakes, 6), pot(driedCarrot, 6), pot(oliveOil, 20),
				pinch(paprika, 2), pinch(cumin, 0.8), pinch(cayenne, 0.2), pinch(salt, 2.4), bowl(parmesan, 12, or(pumpkinSeeds, 12)),
			},
			method: steps{
				"Boil mince, onion, carrot, spices and salt for three minutes.",
				"Rain in the polenta, stir, simmer gently. Whisk in tomato powder and oil, rest it.",
				"Cheese or seeds over each bowl.",
			},
		},
		{
			name: "Peanut noodles with tofu", staple: "rice noodles", texture: "noodles", water: 320, simmer: 2, soak: 6,
			parts: parts{
				pot(riceNoodles, 78), pot(peanutButter, 38, orAll(almondButter, 38)), pot(driedTofu, 18), pot(driedCarrot, 8), pot(brownSugar, 5),
				pinch(ginger, 0.8), pinch(garlic, 0.8), pinch(cayenne, 0.2), pinch(salt, 2), bowl(peanuts, 14, orAll(cashews, 14)),
			},
			method: steps{
				"Boil carrots and diced tofu for two minutes with ginger, garlic, sugar and salt.",
				"Stir the nut butter smooth in a little of the hot water and pour it in.",
				"Noodles in, flame off, lid on. Nuts over each bowl.",
			},
			notes: "The pot of whoever is allergic to peanuts gets almond butter, and its own spoon.",
		},
		{
			name: "Hill farmer's pie", staple: "potato", texture: "mash", water: 430, simmer: 6, soak: 3,
			parts: parts{
				pot(potatoFlakes, 78), pot(soyaMince, 26), pot(driedCarrot, 10), pot(onionFlakes, 6), pot(oliveOil, 22), pinch(onionSoup, 5), pinch(salt, 0.8), pinch(pepper, 0.3),
				bowl(parmesan, 12, or(pumpkinSeeds, 12)),
			},
			method: steps{
				"Simmer mince, carrots, onion and soup powder in two thirds of the water into a thick gravy.",
				"Take it off the flame, beat in oil, the rest of the hot water and the flakes in streaks: mash and gravy, not one grey paste.",
				"Cheese or seeds on top.",
			},
		},
		{
			name: "Apricot couscous with chicken", staple: "couscous", texture: "fluffy", water: 210, soak: 10,
			parts: parts{
				pot(couscous, 80, orAll(rice, 80)), pot(apricots, 22), pot(driedCarrot, 8), pot(onionFlakes, 5), pot(oliveOil, 12),
				pinch(cumin, 0.8), pinch(cinnamon, 0.4), pinch(onionSoup, 4), pinch(cayenne, 0.1), pot(almonds, 18), spoon(chicken, 60, or(soyaMince, 18)),
			},
			method: steps{
				"Bring snipped apricots, carrots, onion and spices to the boil with the oil.",
				"Take off the flame, stir in couscous or rice and almonds, lid on.",
				"Each opens their chicken at the last moment and eats all of it; soya mince is soaked in a mug of the hot stock first.",
			},
		},
		{
			name: "Mushroom risotto", staple: "rice", texture: "creamy", water: 330, simmer: 6, soak: 6,
			parts: parts{
				pot(rice, 82), pot(shiitake, 8), pot(onionFlakes, 6), pot(oliveOil, 18), pot(soyaMince, 12), pinch(garlic, 0.8), pinch(onionSoup, 5), pinch(salt, 0.8), pinch(pepper, 0.3),
				bowl(parmesan, 24, or(almonds, 24)),
			},
			method: steps{
				"Break the mushrooms small, simmer with mince, onion and garlic until soft.",
				"Stir in rice and oil, boil up, take off the flame, lid on.",
				"Stir until creamy, cheese or chopped almonds into each bowl.",
			},
		},
		{
			name: "Coconut curry with tofu", staple: "rice", texture: "stew", water: 330, simmer: 4, soak: 6,
			parts: parts{
				pot(rice, 75), pot(creamedCoconut, 24), pot(driedTofu, 24), pot(driedCarrot, 10), pot(onionFlakes, 5), pinch(curry, 3), pinch(ginger, 0.6), pot(cashews, 16), pinch(salt, 2.3),
			},
			method: steps{
				"Simmer diced tofu, carrots, onion and curry.",
				"Melt the coconut in it, stir in the rice, off the flame, lid on.",
				"Cashews in, serve.",
			},
			notes: "For cold days: creamed coconut runs in the heat.",
		},
		{
			name: "Cold noodle salad with almond dressing", staple: "rice noodles", texture: "salad", water: 260, soak: 45, cold: true,
			parts: parts{
				pot(riceNoodles, 66), pot(driedTofu, 28), pot(driedCarrot, 10), pot(sundriedTomato, 8), pot(almondButter, 38), pot(cashews, 14),
				pinch(ginger, 0.6), pinch(garlic, 0.6), pinch(cayenne, 0.1), pinch(salt, 2),
			},
			method: steps{
				"Soak thin noodles, carrots, crumbled tofu and tomatoes in cold treated water with the spices, in the shade, until soft.",
				"Stir the almond butter smooth with a little of the water, fold it in with the nuts. Eat at once.",
			},
			notes: "For days without flame. Once wet it is perishable: start it when the tents are up, not at noon.",
		},
		{
			name: "Tuna pasta with tomato", staple: "pasta", texture: "saucy", water: 330, simmer: 9, soak: 2,
			parts: parts{
				pot(pasta, 88, orAll(cornPasta, 88)), pot(sundriedTomato, 12), pot(onionFlakes, 5), pot(oliveOil, 18), pinch(oregano, 0.6), pinch(garlic, 0.8), pinch(salt, 2.2),
				spoon(tuna, 60, or(soyaMince, 18)), bowl(pumpkinSeeds, 12),
			},
			method: steps{
				"Boil pasta, snipped tomatoes, onion and herbs in salted water until soft, stir in the oil.",
				"Each opens their fish at the last moment. Soya mince is soaked in a mug of the hot water.",
			},
		},
		{
			name: "Quinoa with lentils and dates", staple: "quinoa", texture: "fluffy", water: 400, simmer: 15, soak: 5, pulses: true,
			parts: parts{
				pot(quinoa, 50), pot(redLentils, 40), pot(dates, 20), pot(onionFlakes, 6), pot(oliveOil, 18), pinch(cumin, 1), pinch(cinnamon, 0.4), pot(almonds, 20), pinch(salt, 2.3),
			},
			method: steps{
				"Simmer quinoa, lentils, onion and spices until soft.",
				"Chopped dates and oil in, rest it lidded. Almonds in.",
			},
		},
	}
}

package demo

import "sumpter/domain/trip"

// The foods of the demo trip, by ID. Their composition is that of the library.
const (
	oats trip.FoodID = iota + 1
	couscous
	rice
	potatoFlakes
	pasta
	cornPasta
	riceNoodles
	quinoa
	grits
	redLentils
	soyaMince
	driedTofu
	tuna
	chicken
	sausage
	jerky
	parmesan
	gruyere
	eggPowder
	milkPowder
	soyaDrink
	peanutButter
	almondButter
	tahini
	oliveOil
	creamedCoconut
	almonds
	cashews
	pumpkinSeeds
	peanuts
	coconut
	chia
	raisins
	apricots
	dates
	cranberries
	appleRings
	mango
	bananaChips
	chocolate
	crispbread
	tortillas
	seedCrackers
	shortbread
	granolaBar
	figRolls
	sesameBrittle
	halva
	onionFlakes
	tomatoPowder
	driedCarrot
	sundriedTomato
	shiitake
	onionSoup
	miso
	curry
	garlic
	paprika
	cumin
	cayenne
	cinnamon
	oregano
	ginger
	salt
	pepper
	brownSugar
	cocoa
	coffee
	starch
	lemonade
	freshCarrot
	freshApple
)

// origin is what a food is made from, for the diets.
type origin int

const (
	plant origin = iota
	dairyOrEgg
	fish
	poultry
	beef
	pork // and whatever a sausage holds besides
)

// shelfFood is one food as the leader of the demo bought it: where the library
// has it, what its label says, how it is sold. Labels, prices and weights of a
// cupful or of a piece are invented.
type shelfFood struct {
	id       trip.FoodID
	number   string // in the library
	name     string // where the library's own would mislead
	aisle    string
	from     origin
	contains []trip.Allergen
	traces   []trip.Allergen // "may contain" on the label
	loose    bool            // taken out of its package on packing night
	gPerMl   float64         // where the dataset has no measure: weighed by the cupful
	piece    float64         // grams of one, where it is counted out
	halves   bool            // and may be halved
	sold     []trip.Package
}

type allergens = []trip.Allergen

func shelf() []shelfFood {
	return append(append(append(staples(), protein()...), fruitAndNuts()...), flavours()...)
}

func staples() []shelfFood {
	wheat := allergens{trip.Gluten, trip.Wheat}
	return []shelfFood{
		{id: oats, number: "08120", name: "Rolled oats, certified gluten-free", aisle: "grains", sold: packs(byMany(p(1000, 390, wholesaler, 12), 4, 345), p(500, 240, market, 9))},
		{id: couscous, number: "20028", aisle: "grains", contains: wheat, sold: packs(p(500, 155, market, 10), p(1000, 270, wholesaler, 15))},
		{id: rice, number: "20048", name: "Instant rice", aisle: "grains", sold: packs(byMany(p(1000, 420, wholesaler, 15), 5, 380), p(250, 145, market, 8))},
		{id: potatoFlakes, number: "11378", aisle: "grains", contains: allergens{trip.Sulphites}, sold: packs(p(330, 210, market, 25), p(1000, 540, wholesaler, 18))},
		{id: pasta, number: "20120", name: "Pasta, small shells", aisle: "grains", contains: wheat, traces: allergens{trip.Eggs}, sold: packs(p(500, 120, market, 8))},
		{id: cornPasta, number: "20091", aisle: "grains", sold: packs(p(500, 265, market, 9))},
		{id: riceNoodles, number: "20133", name: "Thin rice noodles", aisle: "grains", gPerMl: 0.28, sold: packs(p(250, 175, market, 8), p(1000, 560, wholesaler, 16))},
		{id: quinoa, number: "20035", name: "Quinoa, washed", aisle: "grains", sold: packs(p(500, 390, market, 8))},
		{id: grits, number: "08090", name: "Quick polenta", aisle: "grains", sold: packs(p(500, 165, market, 8))},
		{id: crispbread, number: "18216", aisle: "bread", contains: allergens{trip.Gluten}, traces: allergens{trip.Sesame}, piece: 10, sold: packs(p(250, 165, market, 10))},
		{id: tortillas, number: "18970", aisle: "bread", contains: wheat, gPerMl: 0.62, piece: 62, halves: true, sold: packs(p(372, 195, market, 8))},
		{id: seedCrackers, number: "28345", name: "Gluten-free seed crackers", aisle: "bread", contains: allergens{trip.Sesame}, gPerMl: 0.36, sold: packs(p(200, 285, market, 22))},
		{id: shortbread, number: "18192", aisle: "biscuits", from: dairyOrEgg, contains: allergens{trip.Gluten, trip.Wheat, trip.Milk}, traces: allergens{trip.Nuts}, gPerMl: 0.48, sold: packs(p(200, 180, cornerShop, 14), p(400, 310, market, 20))},
		{id: granolaBar, number: "19015", aisle: "biscuits", from: dairyOrEgg, contains: allergens{trip.Gluten}, traces: allergens{trip.Milk, trip.Nuts, trip.Peanuts}, gPerMl: 0.55, piece: 40, sold: packs(p(40, 60, market, 3))},
		{id: figRolls, number: "18170", aisle: "biscuits", contains: wheat, traces: allergens{trip.Milk}, gPerMl: 0.7, piece: 12.5, sold: packs(p(250, 170, market, 12))},
		{id: starch, number: "20027", aisle: "baking", sold: packs(p(400, 130, market, 6))},
	}
}

func protein() []shelfFood {
	return []shelfFood{
		{id: redLentils, number: "16144", name: "Red lentils, sorted and gluten-free", aisle: "pulses", sold: packs(p(500, 190, market, 8))},
		{id: soyaMince, number: "16121", aisle: "pulses", contains: allergens{trip.Soybeans}, gPerMl: 0.33, sold: packs(p(500, 360, wholesaler, 9), p(200, 185, market, 6))},
		{id: driedTofu, number: "16128", aisle: "pulses", contains: allergens{trip.Soybeans}, gPerMl: 0.3, sold: []trip.Package{{Net: grams(165), Shop: market, Wrapping: grams(9)}}},
		{id: tuna, number: "15119", name: "Tuna in oil, pouch", aisle: "fish and meat", from: fish, contains: allergens{trip.Fish}, piece: 60, sold: packs(p(60, 150, market, 5))},
		{id: chicken, number: "05311", name: "Chicken, pouch", aisle: "fish and meat", from: poultry, piece: 60, sold: packs(p(60, 170, market, 5))},
		{id: sausage, number: "07921", name: "Pork and beef sausage stick, sealed", aisle: "fish and meat", from: pork, traces: allergens{trip.Milk}, gPerMl: 0.8, piece: 40, sold: packs(p(40, 130, market, 2))},
		{id: jerky, number: "19002", aisle: "fish and meat", from: beef, contains: allergens{trip.Soybeans, trip.Gluten, trip.Wheat}, gPerMl: 0.4, sold: packs(p(100, 480, market, 6), p(250, 1090, wholesaler, 9))},
		{id: parmesan, number: "01032", name: "Hard cheese, grated and dried", aisle: "cheese and milk", from: dairyOrEgg, contains: allergens{trip.Milk}, sold: packs(p(250, 440, market, 9))},
		{id: gruyere, number: "01023", name: "Alpine cheese, whole piece", aisle: "cheese and milk", from: dairyOrEgg, contains: allergens{trip.Milk}, sold: packs(p(400, 690, market, 7))},
		{id: eggPowder, number: "01133", aisle: "cheese and milk", from: dairyOrEgg, contains: allergens{trip.Eggs}, sold: packs(p(250, 620, wholesaler, 8), p(125, 420, market, 6))},
		{id: milkPowder, number: "01212", aisle: "cheese and milk", from: dairyOrEgg, contains: allergens{trip.Milk}, sold: packs(byMany(p(500, 640, wholesaler, 10), 4, 595), p(400, 560, market, 40))},
		{id: soyaDrink, number: "14067", name: "Soya drink powder", aisle: "cheese and milk", contains: allergens{trip.Soybeans}, gPerMl: 0.42, sold: packs(p(400, 690, market, 12))},
	}
}

func fruitAndNuts() []shelfFood {
	return []shelfFood{
		{id: peanutButter, number: "16098", aisle: "nuts", contains: allergens{trip.Peanuts}, sold: packs(p(350, 290, market, 22), p(1000, 690, wholesaler, 45))},
		{id: almondButter, number: "12695", aisle: "nuts", contains: allergens{trip.Nuts, trip.Almonds}, sold: packs(p(250, 520, market, 20), p(1000, 1690, wholesaler, 45))},
		{id: tahini, number: "12166", aisle: "nuts", contains: allergens{trip.Sesame}, sold: packs(p(300, 380, market, 20))},
		{id: almonds, number: "12061", aisle: "nuts", contains: allergens{trip.Nuts, trip.Almonds}, sold: packs(p(200, 290, market, 5), byMany(p(1000, 1190, wholesaler, 10), 3, 1090))},
		{id: cashews, number: "12585", aisle: "nuts", contains: allergens{trip.Nuts, trip.Cashews}, sold: packs(p(200, 310, market, 5), byMany(p(1000, 1340, wholesaler, 10), 2, 1250))},
		{id: peanuts, number: "16089", aisle: "nuts", contains: allergens{trip.Peanuts}, traces: allergens{trip.Nuts}, sold: packs(p(250, 150, market, 6))},
		{id: pumpkinSeeds, number: "12014", aisle: "nuts", sold: packs(p(250, 270, market, 5), byMany(p(1000, 890, wholesaler, 10), 3, 830))},
		{id: coconut, number: "12108", aisle: "nuts", gPerMl: 0.35, sold: packs(p(200, 145, market, 4))},
		{id: creamedCoconut, number: "12177", aisle: "nuts", gPerMl: 0.95, sold: packs(p(200, 220, market, 8))},
		{id: chia, number: "12006", aisle: "nuts", gPerMl: 0.7, sold: packs(p(250, 330, market, 6))},
		{id: raisins, number: "09298", aisle: "dried fruit", sold: packs(p(500, 260, market, 6), byMany(p(1000, 470, wholesaler, 9), 3, 425))},
		{id: apricots, number: "09032", aisle: "dried fruit", contains: allergens{trip.Sulphites}, sold: packs(p(250, 320, market, 6), p(1000, 1050, wholesaler, 9))},
		{id: dates, number: "09087", name: "Dates, stoned", aisle: "dried fruit", sold: packs(p(400, 290, market, 8))},
		{id: cranberries, number: "09079", aisle: "dried fruit", sold: packs(p(200, 240, market, 5))},
		{id: appleRings, number: "09011", aisle: "dried fruit", contains: allergens{trip.Sulphites}, sold: packs(p(200, 260, market, 6))},
		{id: mango, number: "09178", aisle: "dried fruit", contains: allergens{trip.Sulphites}, gPerMl: 0.45, sold: packs(p(200, 340, market, 6))},
		{id: bananaChips, number: "19400", aisle: "dried fruit", gPerMl: 0.3, sold: packs(p(250, 210, market, 6))},
		{id: chocolate, number: "19904", name: "Dark chocolate, 70 %, broken", aisle: "sweets", loose: true, contains: allergens{trip.Soybeans}, traces: allergens{trip.Milk, trip.Nuts}, gPerMl: 0.8, sold: packs(p(100, 190, market, 4), p(500, 790, wholesaler, 12))},
		{id: sesameBrittle, number: "19154", aisle: "sweets", contains: allergens{trip.Sesame}, gPerMl: 0.75, piece: 20, sold: packs(p(160, 220, market, 10))},
		{id: halva, number: "19117", aisle: "sweets", contains: allergens{trip.Sesame}, gPerMl: 0.85, sold: packs(p(200, 260, market, 8))},
		{id: freshCarrot, number: "11124", aisle: "vegetables", sold: packs(p(1000, 180, market, 8))},
		{id: freshApple, number: "09003", aisle: "vegetables", piece: 110, sold: packs(p(1000, 290, market, 8))},
	}
}

func flavours() []shelfFood {
	return []shelfFood{
		{id: oliveOil, number: "04053", aisle: "oil", sold: packs(p(458, 590, market, 60), p(916, 1040, wholesaler, 90))},
		{id: onionFlakes, number: "11284", aisle: "dried vegetables", sold: packs(p(100, 190, market, 5))},
		{id: tomatoPowder, number: "11548", aisle: "dried vegetables", gPerMl: 0.6, sold: packs(p(250, 490, wholesaler, 7), p(100, 270, market, 5))},
		{id: driedCarrot, number: "11683", aisle: "dried vegetables", sold: packs(p(200, 340, wholesaler, 6), p(100, 230, market, 5))},
		{id: sundriedTomato, number: "11955", aisle: "dried vegetables", sold: packs(p(200, 330, market, 6))},
		{id: shiitake, number: "11268", aisle: "dried vegetables", gPerMl: 0.12, sold: packs(p(50, 420, market, 6))},
		{id: onionSoup, number: "06094", name: "Onion soup powder, vegan", aisle: "spices", traces: allergens{trip.Celery}, gPerMl: 0.7, sold: packs(p(250, 360, wholesaler, 12), p(75, 165, market, 6))},
		{id: miso, number: "16112", name: "Rice miso", aisle: "spices", contains: allergens{trip.Soybeans}, sold: packs(p(300, 490, market, 12))},
		{id: curry, number: "02015", aisle: "spices", contains: allergens{trip.Mustard}, sold: packs(p(100, 240, market, 6))},
		{id: garlic, number: "02020", aisle: "spices", sold: packs(p(60, 160, market, 5))},
		{id: paprika, number: "02028", aisle: "spices", sold: packs(p(60, 150, market, 5))},
		{id: cumin, number: "02014", aisle: "spices", sold: packs(p(50, 170, market, 5))},
		{id: cayenne, number: "02031", aisle: "spices", sold: packs(p(30, 140, market, 5))},
		{id: cinnamon, number: "02010", aisle: "spices", sold: packs(p(50, 140, market, 5))},
		{id: oregano, number: "02027", aisle: "spices", sold: packs(p(20, 130, market, 5))},
		{id: ginger, number: "02021", aisle: "spices", sold: packs(p(40, 150, market, 5))},
		{id: salt, number: "02047", aisle: "spices", sold: packs(p(500, 60, cornerShop, 8), p(500, 75, market, 8))},
		{id: pepper, number: "02030", aisle: "spices", sold: packs(p(50, 190, market, 5))},
		{id: brownSugar, number: "19334", aisle: "baking", sold: packs(p(500, 160, market, 6))},
		{id: cocoa, number: "19165", aisle: "baking", sold: packs(p(250, 320, market, 14))},
		{id: coffee, number: "14214", aisle: "drinks", sold: packs(p(100, 460, market, 30))},
		{id: lemonade, number: "14287", aisle: "drinks", sold: packs(p(400, 330, cornerShop, 12), p(400, 395, market, 12))},
	}
}

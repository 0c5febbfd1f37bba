package trip

import "sumpter/domain/units"

// The largest trip that is planned. They are far above any club trip and low
// enough that no file can make the planner run for hours.
const (
	MaxGroups   = 50
	MaxMembers  = 200
	MaxDays     = 120
	MaxFoods    = 3000
	MaxRecipes  = 1000
	MaxCells    = MaxDays * 4 * MaxGroups
	MaxGear     = 500
	MaxFuels    = 100
	MaxBagTypes = 100
	MaxPoints   = 60
	MaxShops    = 60
	MaxPins     = 2000

	MaxPurchases = 10_000
	MaxNotedBags = 50_000 // packed, or eaten, thrown away and lost; moved and handed over

	MaxNameRunes = 120    // one line: a name, a shop, a tag
	MaxTextRunes = 10_000 // several lines: notes, an address

	// MaxServings bounds dishes times those who eat them, over the whole menu.
	MaxServings = 200_000
)

// Sizes of the lists within one thing.
const (
	maxPackages    = 20
	maxFacts       = 100 // allergens or diets of one food or member
	maxIngredients = 60
	maxSwaps       = 10
	maxSteps       = 100
	maxDishes      = 12
	maxClosedDates = 400
	maxWeighings   = 200
)

// Ranges of what people can be and carry. They are wide: they catch typing
// errors and mixed-up units, not unusual people (common practice, no source).
const (
	minAge, maxAge                     = 5, 110       // years
	minBodyKilograms, maxBodyKilograms = 15, 300      // kg
	minHeight, maxHeight               = 0.8, 2.6     // m
	minGivenNeed, maxGivenNeed         = 500, 12_000  // kcal a day
	minAppetite, maxAppetite           = 0.3, 3       // factor
	maxStrength                        = 3            // factor
	maxKitKilograms                    = 80           // kg
	maxPackLitres                      = 200          // L
	minProtein, maxProtein             = 0.3, 5       // g per kg body mass
	maxLoadKilograms                   = 120          // kg
	minCelsius, maxCelsius             = -70.0, 70.0  // of air and rooms
	minHeat, maxHeat                   = -50.0, 150.0 // that a food bears
)

// Ranges of a day's walk. The Dead Sea's shore lies below -400 m, the highest
// summit below 8,900 m.
const (
	maxDistance            = 150_000     // m
	maxAscent              = 10_000      // m
	minAltitude, maxAlt    = -500, 8_900 // m
	maxHoursOfDay          = 24
	maxMetresPerMovingHour = 16_000 // a runner
)

// Ranges of foods per 100 g. Pure fat has about 902 kcal; pure salt 39 g of
// sodium. Macronutrients of real table rows sum to 106 g at most (USDA SR28).
const (
	maxKcalPer100g         = 950
	maxMacroSum            = 110
	maxSodiumMilligrams    = 40_000
	minDensity, maxDensity = 0.005, 5 // g/mL
	maxShelfDays           = 36_500
	minQ10, maxQ10         = 1, 10
	maxPackageKilograms    = 100
	maxStockKilograms      = 5_000
	maxInStock             = 1_000_000
	maxManyFrom            = 1_000
	maxPrice               = units.Money(1_000_000_000_000)
)

// Ranges of recipes, for one standard eater.
const (
	maxAmountKilograms = 5
	maxWaterLitres     = 10
	maxSimmerMinutes   = 720
	maxSoakMinutes     = 2_880
	minScale           = 0.05
	maxScale           = 20
)

// Ranges of gear.
const (
	maxGearKilograms   = 200
	maxGearLitres      = 1_000
	minWatts, maxWatts = 50, 50_000
	minEfficiency      = 0.02
	maxHeatCapacity    = 5 // kJ/(kg K); water has 4.2
	maxBagLitres       = 200
	maxTareKilograms   = 10
)

// Ranges of resupply, in days unless said.
const (
	maxTransitDays   = 120
	maxHoldDays      = 730
	maxGirthMetres   = 20
	maxDetourMetres  = 200_000
	maxDetourHours   = 72
	maxDaysBefore    = 730 // from shopping to the start
	shareTolerance   = 0.0005
	maxReserveDays   = 30
	maxMealsOfStore  = 1000
	maxFactorSetting = 3
)

package foodenergy

// Range is a least and a most.
type Range struct{ Least, Most float64 }

// Contains tells whether a value lies within, the ends included.
func (r Range) Contains(value float64) bool { return value >= r.Least && value <= r.Most }

// Shares are the acceptable parts of a day's energy, 0 to 1.
type Shares struct{ Protein, Fat, Carbohydrate Range }

// AcceptableShares returns the acceptable macronutrient distribution ranges.
//
// Source: Institute of Medicine, Dietary Reference Intakes, 2005; those of
// minors (4 to 18 years) from memory. Hikers commonly eat 35 to 45 % fat to
// save weight, so fat above the range is a note, not a fault (common
// practice, no source).
func AcceptableShares(minor bool) Shares {
	shares := Shares{Protein: Range{0.10, 0.35}, Fat: Range{0.20, 0.35}, Carbohydrate: Range{0.45, 0.65}}
	if minor {
		shares.Protein.Most, shares.Fat.Least = 0.30, 0.25
	}
	return shares
}

// Kilocalories per gram by which shares of energy become grams.
const (
	ProteinKcalPerG      = 4.0
	FatKcalPerG          = 9.0
	CarbohydrateKcalPerG = 4.0
)

// Grams returns the grams per day that a range of shares means for a day's
// energy, at kilocalories per gram.
func Grams(shares Range, dayKcal, kcalPerG float64) Range {
	return Range{shares.Least * dayKcal / kcalPerG, shares.Most * dayKcal / kcalPerG}
}

// Grams of protein per kilogram of body mass and day: the recommended
// allowance, and what active people are advised.
//
// Sources: IOM 2005; Academy of Nutrition and Dietetics, Dietitians of Canada
// and American College of Sports Medicine, joint statement 2016, from memory.
const (
	ProteinAllowance   = 0.8
	ActiveProteinLeast = 1.2
	ActiveProteinMost  = 2.0
)

// Grams of carbohydrate per hour of walking, beyond the first hour; up to 90
// beyond two and a half hours of hard effort.
//
// Source: AND/DC/ACSM joint statement 2016, from memory.
const (
	MovingCarbohydrateLeast = 30.0
	MovingCarbohydrateMost  = 60.0
)

// A main meal on the trail should hold at least this much for each eater:
// common practice, no source.
const (
	MainMealKcal     = 500.0
	MainMealProteinG = 20.0
)

// MainMealLacks names what a main meal has too little of: "energy", "protein",
// both, or nothing.
func MainMealLacks(kcal, proteinG float64) []string {
	var lacks []string
	if kcal < MainMealKcal {
		lacks = append(lacks, "energy")
	}
	if proteinG < MainMealProteinG {
		lacks = append(lacks, "protein")
	}
	return lacks
}

// Density returns kilocalories per gram. Mixed dry trail food has 4.0 to 4.5,
// with fresh food 3 to 3.5 (common practice, no source).
func Density(kcal, grams float64) float64 { return kcal / grams }

// GramsFor returns the grams of food of an energy density that meet a need.
func GramsFor(needKcal, kcalPerG float64) float64 { return needKcal / kcalPerG }

// Fibre returns the adequate intake in grams a day by age in years.
//
// Source: Institute of Medicine, Dietary Reference Intakes, 2005; from memory.
func Fibre(ageYears float64) (female, male float64) {
	switch {
	case ageYears < 4:
		return 19, 19
	case ageYears < 9:
		return 25, 25
	case ageYears < 14:
		return 26, 31
	case ageYears < 19:
		return 26, 38
	case ageYears <= 50:
		return 25, 38
	default:
		return 21, 30
	}
}

// Sodium in milligrams: adequate intake a day, and what a litre drunk on the
// move should come with, since sweat takes it away.
//
// Sources: National Academies, Dietary Reference Intakes for Sodium, 2019;
// American College of Sports Medicine, position stand 2007 (20 to 30 mmol/L);
// both from memory.
const (
	SodiumADay            = 1500.0
	SodiumPerLitreOfSweat = 460.0
)

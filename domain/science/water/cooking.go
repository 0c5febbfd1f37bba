package water

// Water in millilitres per gram of dry food: common practice, no source. What
// is poured off again, as with pasta, is in InPot and not in Absorbed.
const (
	Couscous       = 1.75 // also potato flakes, 1.5 to 2
	Oats           = 2.5
	InstantRice    = 1.2
	PastaAbsorbed  = 1.3
	PastaInPot     = 2.5
	LongRice       = 2.0
	Lentils        = 3.0
	DriedMeal      = 2.5 // 2 to 3
	WashPotLitres  = 0.5
	HotDrinkLitres = 0.4 // for each person, 0.3 to 0.5
)

// CookingLoss is the share that boils off or is spilt: common practice, no
// source.
const CookingLoss = 0.10

// CookingLitres returns litres for dry food at millilitres per gram, with a
// share added for what is lost.
func CookingLitres(dryGrams, mLPerGram, lossShare float64) float64 {
	return dryGrams * mLPerGram * (1 + lossShare) / 1000
}
